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
	Summary:  "a loaded rope over an edge that is neither padded nor a roller",
	Latent:   true,
	Check:    checkBareEdge,
}

// checkBareEdge reports each edge once, with the rope that carries most over it. One with
// an efficiency is a roller: bare ground has a friction.
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

// pass is a rope over an edge in a phase, with its larger tension there.
type pass struct {
	rope    *model.Rope
	node    int
	phase   *solve.Phase
	tension lp.Num
	// spare says that it carries nothing as long as another line does: a belay.
	spare, ideal bool
}

func heaviestOver(p *lint.Pass, edge *model.Part) *pass {
	var worst *pass
	for _, ph := range p.Result.Every() {
		strands, ideal := ph.Tensions()
		for _, s := range strands {
			for _, node := range []int{s.Index, s.Rope.After(s.Index)} {
				n := s.Rope.Nodes[node]
				if n.Part != edge || n.Role != model.Bend || n.Efficiency != nil || !s.Known() {
					continue
				}
				one := &pass{s.Rope, node, ph, s.Most(), s.Value.Sign() <= 0, ideal}
				if one.tension.Sign() > 0 && one.worse(worst) {
					worst = one
				}
			}
		}
	}
	return worst
}

// worse says whether a pass is to be reported in place of another: what carries comes
// before a belay, then the larger tension.
func (w *pass) worse(than *pass) bool {
	if than == nil || w.spare != than.spare {
		return than == nil || than.spare
	}
	return w.tension.Cmp(than.tension) > 0
}

func (w *pass) report(p *lint.Pass) {
	n := w.rope.Nodes[w.node]
	friction := ""
	if w.ideal {
		friction = p.WithoutFriction()
	}
	lies := " lies over it with "
	if w.spare {
		lies = " lies over it, which may have to carry "
	}
	p.Report(diag.Diagnostic{
		Place: n.Place, Subject: n.Part.Name, Also: []string{w.rope.Line.Name},
		Message: lint.NameOf(n.Part) + " is not padded, and " + lint.NameOf(w.rope.Line) + lies +
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
	return "while it runs, the tension past " + lint.NameOf(n.Part) + " is " + lint.Multiple(grows) + " that before"
}
