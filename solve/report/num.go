package report

import (
	"encoding/json"

	"fairlead/solve"
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

// figure is a plain number in machine output, with the digits of a Num. A figure that
// is not known is a nil *figure, written as null.
type figure struct{ value json.RawMessage }

// MarshalJSON writes the number.
func (f figure) MarshalJSON() ([]byte, error) { return f.value, nil }

// figureOf gives a plain number for machine output; nil for nil.
func figureOf(n *lp.Num) *figure {
	if n == nil {
		return nil
	}
	return &figure{json.RawMessage(float(*n).Text('g', exactDigits))}
}

// figures is a number with its range. High is nil where there is no upper limit.
type figures struct {
	Value *figure `json:"value"`
	Low   *figure `json:"low"`
	High  *figure `json:"high"`
}

// figuresOf gives a number with its range for machine output; nil if it is not known.
func figuresOf(f solve.Force) *figures {
	if !f.Known() {
		return nil
	}
	return &figures{figureOf(f.Value), figureOf(f.Low), figureOf(f.High)}
}
