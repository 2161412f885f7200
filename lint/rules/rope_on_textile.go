package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var ropeOnTextile = &lint.Rule{
	Name:     "rope-on-textile",
	Severity: diag.Warning,
	Summary:  "a rope that runs over a sling, cord or rope, with no metal between",
	Latent:   true,
	Check:    checkRopeOnTextile,
}

// checkRopeOnTextile reports each textile part once, with the first rope that runs over
// it while somebody hauls, else while somebody lowers.
func checkRopeOnTextile(p *lint.Pass) {
	if p.Explained() {
		return
	}
	seen := map[*model.Part]bool{}
	for _, ph := range p.Result.Every() {
		for _, r := range p.Rig.Ropes {
			for i, n := range r.Nodes {
				if n.Role != model.Bend || !n.Part.Kind.IsLine() || seen[n.Part] || ph.Runs(r, i).IsZero() {
					continue
				}
				seen[n.Part] = true
				reportTextile(p, ph, r, i)
			}
		}
	}
}

func reportTextile(p *lint.Pass, ph *solve.Phase, r *model.Rope, node int) {
	n := r.Nodes[node]
	d := diag.Diagnostic{Place: n.Place, Subject: n.Part.Name, Also: []string{r.Line.Name}}
	how := p.During(ph)
	if metres := p.Result.RunsPerMetre(ph, r, node); metres != nil {
		way := "rises"
		if ph.Lowering {
			way = "comes down"
		}
		how += ", " + p.Each(*metres) + " that " + lint.NameOf(p.Result.Reference) + " " + way
	}
	loads, ideal := ph.Loads()
	if load := loads[n.Part.Index]; load.Known() {
		how += ", and presses on it with " + p.Force(load.Most())
		if ideal {
			how += p.WithoutFriction()
		}
	}
	d.Message = fmt.Sprintf("%s is textile, and %s runs over it %s: rope on textile melts it; metal belongs between",
		lint.NameOf(n.Part), lint.NameOf(r.Line), how)
	p.Report(d)
}
