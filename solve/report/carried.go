package report

import (
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
	"fairlead/solve/report/page"
)

// carried says what each fixed point carries and when, and what each hitch and
// clamp grips, each with its factor.
func carried(res *solve.Result, ratings []solve.Rating, s scale) []fact {
	var all []fact
	for _, p := range res.Rig.Parts {
		r := ratings[p.Index]
		switch {
		case p.Kind.IsFixed() && p.On == nil:
			all = append(all, factored(page.Clean(p.Name)+" carries", inPhases(res, p, s), r, s))
		case p.Kind.IsGrip() && bites(res, p):
			all = append(all, factored(page.Clean(p.Name)+" grips", inPhases(res, p, s), r, s))
		}
	}
	return all
}

// bites says whether a hitch or clamp holds anything in any phase.
func bites(res *solve.Result, p *model.Part) bool {
	for _, ph := range res.Every() {
		if l := loadOf(ph, p); l.Known() && !l.Most().IsZero() {
			return true
		}
	}
	return false
}

// factored adds the factor of a part to what is said of it; a part that bears less
// than it carries stands out.
func factored(label, text string, r solve.Rating, s scale) fact {
	f := fact{label: label, text: text}
	if r.Factor == nil {
		return f
	}
	f.text += ": " + factor(r, s)
	if r.Factor.Cmp(lp.Int(1)) < 0 {
		f.style = page.Strong
	}
	return f
}

// factor says how far a part's worst load is from what it bears: "17 times under its
// strength".
func factor(r solve.Rating, s scale) string {
	words := ""
	switch n := times(*r.Factor); {
	case r.Factor.Cmp(lp.Int(1)) < 0:
		words = "over " + borne(r) + " of " + s.newtons(*r.Strength)
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

// weakest names the part that is nearest to what it bears, unless no other has a
// strength and its own line says it.
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
	if rated == 1 && (p.Kind.IsFixed() || p.Kind.IsGrip()) {
		return nil
	}
	label := "weakest"
	if unrated > 0 {
		label = "weakest known"
	}
	return []fact{factored(label, page.Clean(p.Name), *worst, s).comma()}
}

// comma sets a comma where factored sets a colon.
func (f fact) comma() fact {
	f.text = strings.Replace(f.text, ": ", ", ", 1)
	return f
}

// breakable says whether a part is one that can have a strength.
func breakable(p *model.Part) bool {
	switch p.Kind {
	case model.Load, model.Counterweight, model.Hauler, model.Tender, model.Focal, model.Edge, model.Knot:
		return false
	}
	return true
}

// moment is what a part carries in one phase or in several.
type moment struct {
	text  string
	ideal bool
	when  []string
}

// inPhases says what a part carries in each phase whose tensions are known: "1.18 kN
// hauling, 1.77 kN held". Phases in which it carries nothing are left out.
func inPhases(res *solve.Result, part *model.Part, s scale) string {
	var list []moment
	solved := false
	for _, ph := range inOrder(res) {
		l := loadOf(ph, part)
		solved = solved || l.Known()
		if !l.Known() || l.High != nil && l.High.IsZero() {
			continue
		}
		m := moment{text: s.in(ph).sayForce(l.Force), ideal: idealOnly(ph), when: []string{when(res, ph)}}
		if l.AtMost {
			m.text = "at most " + m.text
		}
		list = joined(list, m)
	}
	switch {
	case !solved:
		return "unknown: there is no balance"
	case len(list) == 0:
		return "nothing"
	}
	var said []string
	for _, m := range list {
		words := m.text + " " + page.List(m.when)
		if m.ideal {
			words += " (ideal)"
		}
		said = append(said, words)
	}
	return strings.Join(said, ", ")
}

// joined adds a moment to those of the same force.
func joined(list []moment, m moment) []moment {
	for i := range list {
		if list[i].text == m.text && list[i].ideal == m.ideal {
			list[i].when = append(list[i].when, m.when...)
			return list
		}
	}
	return append(list, m)
}

// inOrder gives the phases as they are asked for: hauling, held, lowering.
func inOrder(res *solve.Result) []*solve.Phase {
	every := res.Every()
	if len(every) == 0 {
		return nil
	}
	n := len(res.Phases)
	list := append([]*solve.Phase{}, every[1:n]...)
	return append(append(list, every[0]), every[n:]...)
}

// when names a phase in a word.
func when(res *solve.Result, p *solve.Phase) string {
	word := "held"
	switch {
	case p.Lowering:
		word = "lowering"
	case p.Hauler != nil:
		word = "hauling"
	}
	if p.Hauler != nil && len(res.Hauls()) > 1 {
		word = "with " + page.Clean(p.Hauler.Name) + " " + word
	}
	return word
}
