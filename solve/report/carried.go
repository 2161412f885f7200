package report

import (
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/report/page"
)

// carried says what each anchor and edge carries and when, with its factor, and what
// each hitch and clamp grips. Left out are what carries nothing, and a focal point:
// the anchors of its legs say it.
func carried(res *solve.Result, ratings []solve.Rating, s scale) []fact {
	var all []fact
	for _, p := range res.Rig.Parts {
		text, balance := inPhases(res, p, s)
		switch {
		case anchors(p) && !balance:
			all = append(all, fact{label: page.Clean(p.Name) + " carries", text: "unknown: there is no balance"})
		case text == "":
		case anchors(p):
			all = append(all, factored(page.Clean(p.Name)+" carries", text+": ", ratings[p.Index], s))
		case p.Kind.IsGrip():
			all = append(all, fact{label: page.Clean(p.Name) + " grips", text: text})
		}
	}
	return all
}

// moment is what a part carries in one phase or in several.
type moment struct {
	text  string
	ideal bool
	// open says that there is no upper end: preload comes on top.
	open bool
	when []string
}

// inPhases says what a part carries in each phase whose tensions are known: "1.18 kN
// hauling, 1.77 kN held". Phases in which it carries nothing are left out; balance
// says whether any has tensions.
func inPhases(res *solve.Result, part *model.Part, s scale) (text string, balance bool) {
	var list []moment
	for _, ph := range inOrder(res) {
		l := loadOf(ph, part)
		balance = balance || l.Known()
		if !l.Known() || l.High != nil && l.High.IsZero() {
			continue
		}
		m := moment{text: s.in(ph).sayForce(l.Force), ideal: idealOnly(ph), when: []string{when(res, ph)}}
		if m.open = l.High == nil; m.open {
			m.text = s.in(ph).say(*l.Low)
		}
		if l.AtMost {
			m.text = "at most " + m.text
		}
		list = joined(list, m)
	}
	var said []string
	for _, m := range list {
		words := m.text + " " + page.List(m.when)
		if m.ideal {
			words += " (ideal)"
		}
		if m.open {
			words += ", not counting preload"
		}
		said = append(said, words)
	}
	return strings.Join(said, ", "), balance
}

// joined adds a moment to those of the same force.
func joined(list []moment, m moment) []moment {
	for i := range list {
		if list[i].text == m.text && list[i].ideal == m.ideal && list[i].open == m.open {
			list[i].when = append(list[i].when, m.when...)
			return list
		}
	}
	return append(list, m)
}

// inOrder gives the phases as they are asked for: hauling, held, lowering.
func inOrder(res *solve.Result) []*solve.Phase {
	every := res.Bearing()
	if len(every) == 0 {
		return nil
	}
	n := 1 // hold is the first
	for n < len(every) && !every[n].Lowering {
		n++
	}
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
