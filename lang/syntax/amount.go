package syntax

import (
	"fmt"
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"fairlead/lang/quantity"
	"fairlead/lang/source"
)

// amountForm is NUMBER ["to" NUMBER] [UNIT].
type amountForm struct {
	Low  lexer.Token  `parser:"@Number"`
	High *lexer.Token `parser:"( 'to' @Number )?"`
	Unit *lexer.Token `parser:"@Unit?"`
}

func (a amountForm) span() source.Span {
	span := spanOf(a.Low)
	for _, t := range []*lexer.Token{a.High, a.Unit} {
		if t != nil {
			span = span.To(spanOf(*t))
		}
	}
	return span
}

// amount makes the quantity of a form, in one of the dimensions; nil if it has
// another unit, which it then reports. What is the word that the message begins with.
func (r *reporter) amount(form amountForm, what string, dims []quantity.Dimension) *Amount {
	a := &Amount{Span: form.span(), LowSpan: spanOf(form.Low), HighSpan: spanOf(form.Low)}
	high, unit := "", ""
	if form.High != nil {
		high, a.HighSpan = form.High.Value, spanOf(*form.High)
	}
	a.UnitSpan = source.Span{Start: a.Span.End, End: a.Span.End}
	if form.Unit != nil {
		unit, a.UnitSpan = form.Unit.Value, spanOf(*form.Unit)
	}
	q, ok := quantity.New(form.Low.Value, high, unit)
	if ok && slices.Contains(dims, q.Dimension) {
		a.Quantity = q
		return a
	}
	place := a.UnitSpan
	if unit == "" {
		place = spanOf(form.Low).To(a.HighSpan)
	}
	d := r.partFault(RuleBadUnit, place, what+" "+wrongUnit(unit, dims))
	if _, known := quantity.UnitNamed(unit); !known && unit != "" {
		r.offer(d, place, meantUnit(unit, unitsOf(dims)))
	}
	return nil
}

// wrongUnit says what is wrong with a unit where one of the dimensions is wanted.
func wrongUnit(unit string, dims []quantity.Dimension) string {
	wanted := unitsOf(dims)
	plain := slices.Contains(dims, quantity.None)
	u, known := quantity.UnitNamed(unit)
	switch {
	case unit == "":
		return fmt.Sprintf("needs a unit: %s", list(wanted, "or"))
	case len(wanted) == 0:
		return fmt.Sprintf("is a plain number, without %s", clip(unit))
	case !known:
		return fmt.Sprintf("has the unknown unit %s%s", clip(unit), hintOr(meantUnit(unit, wanted), "; it takes "+list(wanted, "or")))
	case plain:
		return fmt.Sprintf("takes %s or a plain number, and %s is a unit of %s",
			list(wanted, "or"), unit, spokenDimension[u.Dimension])
	}
	return fmt.Sprintf("takes %s, and %s is a unit of %s", list(wanted, "or"), unit, spokenDimension[u.Dimension])
}

var spokenDimension = map[quantity.Dimension]string{
	quantity.Mass: "mass", quantity.Force: "force", quantity.Length: "length",
	quantity.Angle: "angle", quantity.Ratio: "proportion",
}

// unitsOf lists the units of some dimensions.
func unitsOf(dims []quantity.Dimension) []string {
	var words []string
	for _, u := range quantity.Units() {
		if slices.Contains(dims, u.Dimension) {
			words = append(words, u.Word)
		}
	}
	return words
}

// meantUnit gives the units of which one was probably meant; empty if none is near.
func meantUnit(word string, among []string) []string {
	if unit := spelledUnits[strings.ToLower(word)]; unit != "" {
		if slices.Contains(among, unit) {
			return []string{unit}
		}
		return nil
	}
	return nearest(word, among)
}

// spelledUnits are units as people spell them out.
var spelledUnits = map[string]string{
	"newton": "N", "newtons": "N", "kilonewton": "kN", "kilonewtons": "kN",
	"gram": "g", "grams": "g", "kilo": "kg", "kilos": "kg", "kgs": "kg",
	"kilogram": "kg", "kilograms": "kg", "ton": "t", "tons": "t", "tonne": "t", "tonnes": "t",
	"pound": "lb", "pounds": "lb", "lbs": "lb", "lbsf": "lbf",
	"meter": "m", "meters": "m", "metre": "m", "metres": "m", "foot": "ft", "feet": "ft",
	"inch": "in", "inches": "in", "degree": "deg", "degrees": "deg", "percent": "%",
}
