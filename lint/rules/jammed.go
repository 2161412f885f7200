package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var jammed = &lint.Rule{
	Name:     "jammed",
	Severity: diag.Error,
	Summary:  "a hauled end that cannot move, because the rope is fast on both sides",
	Check:    checkJammed,
}

func checkJammed(p *lint.Pass) {
	if p.Fault() != solve.Jammed {
		return
	}
	main := p.Result.Main()
	who := lint.NameOf(main.Hauler)
	jam := main.Jam
	if jam == nil || jam.From < 0 || jam.To < 0 {
		p.Explain(diag.Diagnostic{
			Place: p.OnRope(main.Hauler), Subject: main.Hauler.Name,
			Message: who + " cannot move the rope: it is fast on all sides",
		})
		return
	}
	from, to := jam.Rope.Nodes[jam.From], jam.Rope.Nodes[jam.To]
	line := jam.Rope.Line
	d := diag.Diagnostic{
		Place:   from.NamePlace.File.At(from.NamePlace.Span.To(to.NamePlace.Span)),
		Subject: line.Name,
		Also:    []string{from.Name(), to.Name(), main.Hauler.Name},
		Message: fmt.Sprintf("%s is fast between %s and %s: %s cannot move it",
			lint.NameOf(line), lint.Clipped(from.Name()), lint.Clipped(to.Name()), who),
	}
	if r := holdsAgainst(p, jam.Rope); r != nil {
		name := lint.NameOf(r.Line)
		d.Message += ", for " + name + " holds against it"
		d.Also = append(d.Also, r.Line.Name)
		d.Related = []diag.Related{{Place: r.Place, Message: "without " + name + ", the load rises"}}
	}
	p.Explain(d)
}

// holdsAgainst gives the one rope without which the load rises; nil if there is
// none.
func holdsAgainst(p *lint.Pass, pulled *model.Rope) *model.Rope {
	for _, r := range p.Rig.Ropes {
		if r == pulled {
			continue
		}
		without, ok := p.Look(p.Rig.Reeved(r, nil))
		if !ok {
			return nil
		}
		if without.Status == solve.OK {
			return r
		}
	}
	return nil
}
