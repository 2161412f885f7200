package rules

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var bareEdge = &lint.Rule{
	Name:     "bare-edge",
	Severity: diag.Warning,
	Summary:  "a loaded rope over an edge that is not padded",
	Check:    checkBareEdge,
}

// checkBareEdge reports each edge once, with the rope that carries most over it.
func checkBareEdge(p *lint.Pass) {
	if p.Explained() {
		return
	}
	for _, part := range p.Rig.Parts {
		if part.Kind != model.Edge || part.Values.Padded {
			continue
		}
		if worst := heaviestOver(p, part); worst != nil {
			worst.report(p)
		}
	}
}

// pass is a rope over an edge in a phase, with its larger tension there as shown: where
// statics leaves it open whether a belay carries anything, it carries nothing.
type pass struct {
	rope    *model.Rope
	node    int
	phase   *solve.Phase
	tension lp.Num
	ideal   bool
}

func heaviestOver(p *lint.Pass, edge *model.Part) *pass {
	var worst *pass
	for _, ph := range p.Result.Every() {
		strands, ideal := ph.Tensions()
		for _, s := range strands {
			for _, node := range []int{s.Index, s.Rope.After(s.Index)} {
				n := s.Rope.Nodes[node]
				if n.Part != edge || n.Role != model.Bend || !s.Known() {
					continue
				}
				if t := *s.Value; t.Sign() > 0 && (worst == nil || t.Cmp(worst.tension) > 0) {
					worst = &pass{s.Rope, node, ph, t, ideal}
				}
			}
		}
	}
	return worst
}

func (w *pass) report(p *lint.Pass) {
	n := w.rope.Nodes[w.node]
	friction := ""
	if w.ideal {
		friction = p.WithoutFriction()
	}
	p.Report(diag.Diagnostic{
		Place: n.Place, Subject: n.Part.Name, Also: []string{w.rope.Line.Name},
		Message: lint.NameOf(n.Part) + " is not padded, and " + lint.NameOf(w.rope.Line) + " lies over it with " +
			p.Force(w.tension) + friction + ", " + p.During(w.phase) + "; " + w.cost(),
	})
}

// cost says what the friction of an edge does to the tension of rope that runs over it.
func (w *pass) cost() string {
	n := w.rope.Nodes[w.node]
	grows := solve.Growth(w.rope, w.node)
	switch {
	case n.Angle == nil && w.rope.RunsOn(w.node):
		return "what that costs of the pull is unknown: " + lint.NameOf(n.Part) + " has no angle"
	case !grows.Known():
		return "what that costs of the pull is unknown: " + lint.NameOf(n.Part) + " has no friction"
	}
	return "rope that runs over it has " + lint.Multiple(grows) + " the tension behind it"
}
