package report

import (
	"encoding/json"

	"fairlead/solve/lp"
)

// exactDigits is how many significant digits a number has in machine output.
const exactDigits = 12

// Num is a number in machine output. A figure that is not known is a nil *Num,
// written as null.
type Num struct {
	// Ratio is the exact value as a fraction in lowest terms, "1/3" or "2"; nil
	// if the value is not exact. Of an advantage it is written "3:1".
	Ratio *string         `json:"ratio"`
	Value json.RawMessage `json:"value"`
	Exact bool            `json:"exact"`
}

// NumOf gives a number for machine output; nil for nil.
func NumOf(n *lp.Num) *Num {
	if n == nil {
		return nil
	}
	out := &Num{Value: json.RawMessage(float(*n).Text('g', exactDigits)), Exact: n.IsExact()}
	if exact := n.Rat(); exact != nil {
		s := exact.RatString()
		out.Ratio = &s
	}
	return out
}

// AdvantageOf gives an advantage for machine output: its ratio is "3:1".
func AdvantageOf(n *lp.Num) *Num {
	out := NumOf(n)
	if out != nil && out.Exact {
		exact := n.Rat()
		s := exact.Num().String() + ":" + exact.Denom().String()
		out.Ratio = &s
	}
	return out
}
