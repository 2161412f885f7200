package report

import (
	"slices"
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
	"fairlead/solve/report/page"
)

// fact is one line that answers what is asked next: a label and its answer.
type fact struct {
	label, text string
	faint       bool
}

// facts are the answers below the ropes, in the order in which they are asked.
func facts(res *solve.Result, s scale) []fact {
	var all []fact
	all = append(all, stages(res)...)
	all = append(all, fixedPoints(res, s)...)
	all = append(all, gripFacts(res, s)...)
	if res.Status != solve.Unsolved {
		all = append(all, fact{label: "hands off", text: released(res)})
	}
	all = append(all, slack(res)...)
	all = append(all, broken(res)...)
	return append(all, open(res)...)
}

// stages says of which advantages a compound rig is made, the hauler's first.
func stages(res *solve.Result) []fact {
	main := res.Main()
	if main == nil || main.Class != solve.Compound || len(main.Stages) < 2 {
		return nil
	}
	var ratios []string
	for i := len(main.Stages) - 1; i >= 0; i-- {
		if one := lp.Int(1); main.Stages[i].Ratio.Cmp(one) != 0 {
			ratios = append(ratios, ratio(main.Stages[i].Ratio))
		}
	}
	return []fact{{label: "stages", text: strings.Join(ratios, " pulling on ")}}
}

// fixedPoints says what each fixed point carries.
func fixedPoints(res *solve.Result, s scale) []fact {
	var all []fact
	for _, p := range res.Rig.Parts {
		if p.Kind.IsFixed() && p.On == nil {
			text := inPhases(res, func(ph *solve.Phase) (solve.Force, bool) {
				l := loadOf(ph, p)
				return l.Force, l.AtMost
			}, s)
			all = append(all, fact{label: page.Clean(p.Name) + " carries", text: text})
		}
	}
	return all
}

// gripFacts says what each hitch, clamp and capture holds.
func gripFacts(res *solve.Result, s scale) []fact {
	if len(res.Phases) == 0 {
		return nil
	}
	byPhase := map[*solve.Phase][]gripping{}
	for _, p := range res.Phases {
		byPhase[p] = grips(p)
	}
	var all []fact
	for i, g := range byPhase[res.Hold()] {
		verb := " grips"
		if g.capture {
			verb = " holds"
		}
		text := inPhases(res, func(ph *solve.Phase) (solve.Force, bool) { return byPhase[ph][i].force, false }, s)
		all = append(all, fact{label: page.Clean(g.part.Name) + verb, text: text})
	}
	return all
}

// inPhases says a force in each phase whose tensions are known: "1.18 kN hauling,
// 1.77 kN held".
func inPhases(res *solve.Result, of func(*solve.Phase) (solve.Force, bool), s scale) string {
	var when, texts []string
	add := func(p *solve.Phase, word string) {
		f, atMost := of(p)
		if !f.Known() {
			return
		}
		text := s.sayForce(f)
		if atMost && !f.Most().IsZero() {
			text = "at most " + text
		}
		if n := len(texts); n > 0 && texts[n-1] == text {
			when[n-1] += " and " + word
			return
		}
		texts, when = append(texts, text), append(when, word)
	}
	hauls := res.Hauls()
	for _, p := range hauls {
		word := "hauling"
		if len(hauls) > 1 && p.Hauler != nil {
			word = "with " + page.Clean(p.Hauler.Name) + " hauling"
		}
		add(p, word)
	}
	if hold := res.Hold(); hold != nil {
		add(hold, "held")
	}
	if len(texts) == 0 {
		return "unknown: there is no balance"
	}
	for i := range texts {
		texts[i] += " " + when[i]
	}
	return strings.Join(texts, ", ")
}

// slack names the strands that carry nothing while the rig is hauled: not those
// that are written as slack, nor a line that someone tends, which should carry
// nothing. With several haulers each leaves others slack, and the rows say so.
func slack(res *solve.Result) []fact {
	if len(res.Hauls()) != 1 {
		return nil
	}
	var names []string
	for _, st := range res.Hauls()[0].Strands {
		if st.Slack && st.Rope.Strokes[st.Index] != model.Slack && !minded(st.Rope) {
			names = append(names, strandName(st))
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []fact{{label: "slack hauling", text: strings.Join(names, ", "), faint: true}}
}

// minded says whether a line has a loose or tended end.
func minded(r *model.Rope) bool {
	return slices.ContainsFunc(r.Nodes, func(n model.Node) bool {
		return n.Role == model.Tended || n.Role == model.Loose
	})
}

// broken names the lines that an error left out.
func broken(res *solve.Result) []fact {
	var names []string
	for _, r := range res.Rig.Ropes {
		if r.Broken {
			names = append(names, page.Clean(r.Line.Name))
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []fact{{label: "left out", text: page.List(names)}}
}

// open explains figures with a range, once.
func open(res *solve.Result) []fact {
	for _, p := range res.Phases {
		for _, st := range p.Strands {
			if st.Ranges() {
				return []fact{{label: "in brackets",
					text: "the least and the most; the ropes can share these forces in more than one way"}}
			}
		}
	}
	return nil
}
