package resolve

import (
	"maps"
	"math/big"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// bounds are the values that a clause accepts, in SI units; an empty end is open.
type bounds struct {
	least, most string
	// above says that the least itself is too small.
	above bool
	// text says the same in words.
	text phrase
}

var (
	positive = bounds{least: "0", above: true, text: "more than 0"}
	notUnder = bounds{least: "0", text: "0 or more"}
	counted  = bounds{least: "1", text: "1 or more"}
	portion  = bounds{least: "0", above: true, most: "1", text: "more than 0 and at most 100 %"}
)

// accepted says what each clause with a quantity accepts; "at" and angles have
// no bounds of their own here.
var accepted = map[string]bounds{
	"strength": positive, "mass": positive, "weight": positive, "raise": positive, "pull": positive,
	"slips": positive, "damages": positive, "takes": positive, "cord": positive,
	"diameter": positive, "length": positive, "turns": positive,
	"friction": notUnder, "set-back": notUnder,
	"people": counted, "sheaves": counted, "wraps": counted,
	"efficiency": portion, "lowering": portion, "share": portion, "retains": portion,
	"slope": {least: "0", most: "90", text: "within 0 deg and 90 deg"},
}

// angleBounds are the angles of a part's own "angle" clause, by its kind: of a
// leg from the haul line, else the included angle between the rope's legs.
var angleBounds = map[string]bounds{
	string(model.Leg): {least: "-90", most: "90", text: "within -90 deg and 90 deg of the haul line"},
	"":                {least: "0", most: "180", text: "from 0 deg to 180 deg"},
}

// slots gives the place of each clause's quantity among the values.
var slots = map[string]func(*model.Values) **quantity.Quantity{
	"strength":   func(v *model.Values) **quantity.Quantity { return &v.Strength },
	"efficiency": func(v *model.Values) **quantity.Quantity { return &v.Efficiency },
	"lowering":   func(v *model.Values) **quantity.Quantity { return &v.Lowering },
	"friction":   func(v *model.Values) **quantity.Quantity { return &v.Friction },
	"turns":      func(v *model.Values) **quantity.Quantity { return &v.Turns },
	"mass":       func(v *model.Values) **quantity.Quantity { return &v.Mass },
	"weight":     func(v *model.Values) **quantity.Quantity { return &v.Weight },
	"slope":      func(v *model.Values) **quantity.Quantity { return &v.Slope },
	"raise":      func(v *model.Values) **quantity.Quantity { return &v.Raise },
	"people":     func(v *model.Values) **quantity.Quantity { return &v.People },
	"pull":       func(v *model.Values) **quantity.Quantity { return &v.Pull },
	"share":      func(v *model.Values) **quantity.Quantity { return &v.Share },
	"sheaves":    func(v *model.Values) **quantity.Quantity { return &v.Sheaves },
	"wraps":      func(v *model.Values) **quantity.Quantity { return &v.Wraps },
	"cord":       func(v *model.Values) **quantity.Quantity { return &v.Cord },
	"slips":      func(v *model.Values) **quantity.Quantity { return &v.Slips },
	"damages":    func(v *model.Values) **quantity.Quantity { return &v.Damages },
	"takes":      func(v *model.Values) **quantity.Quantity { return &v.Takes },
	"set-back":   func(v *model.Values) **quantity.Quantity { return &v.SetBack },
	"retains":    func(v *model.Values) **quantity.Quantity { return &v.Retains },
	"diameter":   func(v *model.Values) **quantity.Quantity { return &v.Diameter },
	"length":     func(v *model.Values) **quantity.Quantity { return &v.Length },
	"at":         func(v *model.Values) **quantity.Quantity { return &v.At },
	"angle":      func(v *model.Values) **quantity.Quantity { return &v.Angle },
}

// flag gives the place of a clause without a value; nil if the word is none.
func flag(v *model.Values, word string) *bool {
	switch word {
	case "strut":
		return &v.Strut
	case "padded":
		return &v.Padded
	case "locking":
		return &v.Locking
	case "plain":
		return &v.Plain
	case "sideways":
		return &v.Sideways
	case "releasable":
		return &v.Releasable
	case "holds":
		return &v.Holds
	}
	return nil
}

// readClause puts one clause into the values, all but a part's name in it. ok is
// false if its value is one that cannot be and was left out.
func (f *findings) readClause(owner, kind string, v *model.Values, c syntax.ClauseUse) (ok bool) {
	word := c.Word.Text
	if v.Places == nil {
		v.Places = map[string]source.Place{}
	}
	v.Places[word] = f.file.At(c.Span)
	if set := flag(v, word); set != nil {
		*set = true
		return true
	}
	if word == "material" && c.Name != nil {
		v.Material = c.Name.Text
		return true
	}
	ok = f.readAmount(owner, kind, v, word, c.Amount)
	if c.Second != nil {
		table, _ := syntax.ClauseNamed(word)
		v.Places[table.Second] = f.file.At(c.Second.Span)
		ok = f.readAmount(owner, kind, v, table.Second, c.Second) && ok
	}
	return ok
}

// readAmount judges one quantity and puts it into the values.
func (f *findings) readAmount(owner, kind string, v *model.Values, word string, a *syntax.Amount) bool {
	into := slots[word]
	if into == nil || a == nil || a.Low == nil || a.High == nil {
		return true
	}
	q := a.Quantity
	if !f.judge(owner, kind, word, a) {
		return false
	}
	if q.Low.Cmp(q.High) > 0 {
		f.reportBackward(owner, word, a)
		q.Low, q.High = q.High, q.Low
	}
	*into(v) = &q
	return true
}

// judge reports a quantity out of the bounds of its clause.
func (f *findings) judge(owner, kind, word string, a *syntax.Amount) bool {
	b, bounded := accepted[word]
	rule := badValue
	if word == "angle" {
		rule, bounded = wrongAngle, true
		if b = angleBounds[kind]; b.text == "" {
			b = angleBounds[""]
		}
	}
	if !bounded || b.accepts(a.Low) && b.accepts(a.High) {
		return true
	}
	d := f.report(rule, a.Span, owner, "%s has %s %s; it must be %s", owner, word, a.String(), b.text)
	if perCent(word) && a.Unit == "" && asPerCent(a.Low) && asPerCent(a.High) {
		offer(d, "write "+a.String()+" %", f.insert(a.Span.End, " %"))
	}
	return false
}

// perCent says whether a clause is usually written in per cent.
func perCent(word string) bool { return accepted[word] == portion }

// asPerCent says whether a plain number makes sense with "%" after it.
func asPerCent(n *big.Rat) bool {
	return n.Cmp(big.NewRat(10, 1)) >= 0 && n.Cmp(big.NewRat(100, 1)) <= 0
}

// accepts says whether a number lies within the bounds.
func (b bounds) accepts(n *big.Rat) bool {
	if b.least != "" {
		least := n.Cmp(rational(b.least))
		if least < 0 || least == 0 && b.above {
			return false
		}
	}
	return b.most == "" || n.Cmp(rational(b.most)) <= 0
}

func rational(s string) *big.Rat {
	r, _ := new(big.Rat).SetString(s)
	return r
}

// reportBackward reports a range whose larger end comes first.
func (f *findings) reportBackward(owner, word string, a *syntax.Amount) {
	d := f.report(badValue, a.LowSpan.To(a.HighSpan), owner,
		"%s has %s %s, a range written backward", owner, word, a.String())
	offer(d, "write the smaller end first",
		f.replace(a.LowSpan, f.file.Slice(a.HighSpan)), f.replace(a.HighSpan, f.file.Slice(a.LowSpan)))
}

// copied gives values that can be changed without changing the original.
func copied(v model.Values) model.Values {
	v.Places = maps.Clone(v.Places)
	return v
}
