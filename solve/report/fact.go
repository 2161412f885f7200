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
	style       page.Style
}

// facts are the answers below the ropes, in the order in which they are asked. What
// says nothing is left out.
func facts(res *solve.Result, s scale) []fact {
	ratings := res.Ratings()
	var all []fact
	all = append(all, stages(res)...)
	all = append(all, carried(res, ratings, s)...)
	all = append(all, atRest(res, s)...)
	all = append(all, weakest(res, ratings, s)...)
	if res.Status != solve.Unsolved {
		all = append(all, fact{label: "hands off", text: released(res, s)})
	}
	all = append(all, lost(res, s)...)
	all = append(all, lowering(res, s)...)
	all = append(all, strokes(res, s)...)
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
	return []fact{{label: "slack hauling", text: strings.Join(names, ", "), style: page.Faint}}
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

// open explains, once, figures that statics leaves open, and shares that cannot be.
func open(res *solve.Result) []fact {
	var all []fact
	if slices.ContainsFunc(res.Every(), func(p *solve.Phase) bool { return p.ShareUnmet }) {
		all = append(all, fact{label: "shares", text: "as stated they balance nothing, so they are passed over"})
	}
	for _, p := range res.Phases {
		if slices.ContainsFunc(p.Strands, func(s solve.Strand) bool { return s.Ranges() }) {
			return append(all, fact{label: "ranges",
				text: "the ropes can share these forces in more than one way"})
		}
	}
	return all
}
