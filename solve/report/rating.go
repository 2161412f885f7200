package report

import (
	"slices"
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
	"fairlead/solve/report/page"
)

// factored gives a fact that ends in the factor of a part, if it has one. A part that
// bears less than it carries stands out.
func factored(label, text string, r solve.Rating, s scale) fact {
	if r.Factor == nil {
		return fact{label: label, text: strings.TrimRight(text, ":, ")}
	}
	f := fact{label: label, text: text + factor(r, s)}
	if r.Factor.Cmp(lp.Int(1)) < 0 {
		f.style = page.Strong
	}
	return f
}

// factor says how far a part's worst load is from what it bears: "17 times under its
// strength", or beyond it: "1.2 times its strength: 10 kN".
func factor(r solve.Rating, s scale) string {
	words := ""
	switch n := times(*r.Factor); {
	case r.Factor.Cmp(lp.Int(1)) < 0:
		words = excess(*r.Factor) + " " + borne(r) + ": " + s.newtons(*r.Strength)
	case n == "1":
		words = "just under " + borne(r)
	default:
		words = n + " times under " + borne(r)
	}
	if idealOnly(r.Phase) {
		words += " (ideal)"
	}
	return words
}

// excess says how many times what it bears a part carries, whose factor is under 1.
func excess(factor lp.Num) string {
	if words := rounded(factor.Inv()); words != "1" {
		return words + " times"
	}
	return "just over"
}

// borne names what limits a part.
func borne(r solve.Rating) string {
	switch {
	case r.Knot != "":
		return "its strength at " + page.Clean(r.Knot)
	case r.Limit == solve.Slips:
		return "its slip"
	case r.Limit == solve.Damages:
		return "what harms its rope"
	}
	return "its strength"
}

// weakest names the part that is nearest to what it bears, or all that carry more, the
// worst first; unless no other has a strength and its own line says it.
func weakest(res *solve.Result, ratings []solve.Rating, s scale) []fact {
	worst := res.Weakest()
	if worst == nil {
		return nil
	}
	rated, unrated := 0, 0
	for _, r := range ratings {
		switch {
		case r.Factor != nil:
			rated++
		case r.Load != nil && r.Load.Sign() > 0 && breakable(r.Part):
			unrated++
		}
	}
	p := worst.Part
	if rated == 1 && p.Kind.IsFixed() {
		return nil
	}
	if worst.Factor.Cmp(lp.Int(1)) < 0 {
		return []fact{overloaded(ratings, s)}
	}
	label := "weakest"
	if unrated > 0 {
		label = "weakest known"
	}
	return []fact{factored(label, page.Clean(p.Name)+", ", *worst, s)}
}

// overloaded names all parts that carry more than they bear, the worst first.
func overloaded(ratings []solve.Rating, s scale) fact {
	var over []solve.Rating
	for _, r := range ratings {
		if r.Factor != nil && r.Factor.Cmp(lp.Int(1)) < 0 {
			over = append(over, r)
		}
	}
	slices.SortStableFunc(over, func(a, b solve.Rating) int { return a.Factor.Cmp(*b.Factor) })
	var said []string
	for _, r := range over {
		said = append(said, page.Clean(r.Part.Name)+" "+factor(r, s))
	}
	return fact{label: "overloaded", text: strings.Join(said, "; "), style: page.Strong}
}

// breakable says whether a part is one that can have a strength.
func breakable(p *model.Part) bool {
	switch p.Kind {
	case model.Load, model.Counterweight, model.Hauler, model.Tender, model.Focal, model.Edge, model.Knot:
		return false
	}
	return true
}
