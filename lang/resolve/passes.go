package resolve

import (
	"slices"

	"fairlead/lang/model"
)

// checkPasses judges the clauses "holds" on parts in each run of the line: one
// that would act at several passes does not say which of them it means.
func (l *ropeWork) checkPasses() {
	for _, r := range l.runs {
		passes := map[*model.Part][]int{}
		var order []*model.Part
		for _, i := range r.nodes {
			p := l.rope.Nodes[i].Part
			if p == nil || !p.Values.Holds || !l.passes(i) {
				continue
			}
			if passes[p] == nil {
				order = append(order, p)
			}
			passes[p] = append(passes[p], i)
		}
		for _, p := range order {
			l.judgePasses(r, p, passes[p])
		}
	}
}

// passes says whether the rope runs on past the node: no end is made fast there.
func (l *ropeWork) passes(i int) bool {
	switch l.rope.Nodes[i].Role {
	case model.Bend, model.Capture, model.Grip:
		return true
	}
	return false
}

// judgePasses judges the clause "holds" of one part at its passes in one run.
func (l *ropeWork) judgePasses(r run, p *model.Part, at []int) {
	unsaid := slices.DeleteFunc(slices.Clone(at), func(i int) bool { return l.nodeClause(i, "holds") != nil })
	if len(unsaid) == 0 {
		return
	}
	if w := l.work(p); p.Values.HoldsEnd != nil && len(l.sidesOf(at[0], p.Values.HoldsEnd)) == 0 {
		w.vague = w.vague || !l.endsKnown(r)
		w.missed = append(w.missed, l.ends(r)...)
		w.idle = true
		return
	}
	if len(at) == 1 {
		return
	}
	d := l.reportAt(holdAmbiguous, l.saidAt(p, "holds"), p.Name,
		"%s is passed %d times by one run of %s; write holds at the node where it holds", p.Name, len(at), l.line.Name)
	for _, i := range at[:min(len(at), maxRelated)] {
		related(d, l.rope.Nodes[i].Place, "%s passes %s here", l.line.Name, p.Name)
	}
	l.rig.Incomplete = true
}

// checkHeldEnds reports each part whose "holds NAME" acts nowhere, since no run
// over it ends at NAME.
func (r *rigWork) checkHeldEnds() {
	for _, p := range r.order {
		if !p.idle || p.acted || p.vague {
			continue
		}
		for _, of := range p.clauses() {
			for _, c := range of.clauses {
				if c.Word.Text == "holds" && c.Name != nil {
					r.file = of.file
					r.reportNoEnd(p.Part, p.Values.HoldsEnd, *c.Name, uniqueEnds(p.missed))
					r.rig.Incomplete = true
				}
			}
		}
	}
}

func uniqueEnds(names []string) []string {
	var once []string
	for _, name := range names {
		if !slices.Contains(once, name) && len(once) < 4 {
			once = append(once, name)
		}
	}
	return once
}
