package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

var pullsItself = &lint.Rule{
	Name:     "pulls-itself",
	Severity: diag.Error,
	Summary:  "people on a part that carries no load, so that they only pull themselves along the rope",
	Check:    checkPullsItself,
}

func checkPullsItself(p *lint.Pass) {
	for _, who := range p.Rig.Parts {
		body := bodyOf(p.Result, who)
		if who.Kind != model.Hauler || who.On == nil || body == nil || len(body.Loads) > 0 || body.Weight.Sign() != 0 {
			continue
		}
		ph := haulOf(p.Result, who)
		d := diag.Diagnostic{Place: who.NamePlace, Subject: who.Name, Also: []string{who.On.Name}}
		fix := standOnGround
		does := "pulls itself along the rope"
		if ph == nil {
			fix, does = tieLine, "holds no rope"
		}
		d.Fixes = fix(p, who, d)
		_, how, _ := p.TieTo(who.On, model.Up, who)
		name, on := lint.NameOf(who), lint.NameOf(who.On)
		d.Message = fmt.Sprintf("%s is on %s, which carries no load, and %s; to pull at %s, tie a line to it: %s",
			name, on, does, on, how)
		if ph != nil && p.Fault() != "" && p.Result.Main() == ph {
			p.Explain(d)
		} else {
			p.Report(d)
		}
	}
}

// bodyOf gives the moving body that a part is of; nil if it is of none.
func bodyOf(res *solve.Result, part *model.Part) *solve.Body {
	for _, b := range res.Bodies {
		if b.Parts[0].Root() == part.Root() {
			return b
		}
	}
	return nil
}

// haulOf gives the haul of a hauler; nil if he holds no rope's end.
func haulOf(res *solve.Result, hauler *model.Part) *solve.Phase {
	for _, ph := range res.Hauls() {
		if ph.Hauler == hauler {
			return ph
		}
	}
	return nil
}

// standOnGround offers to let people stand on the ground.
func standOnGround(p *lint.Pass, who *model.Part, d diag.Diagnostic) []diag.Fix {
	edit, ok := p.Unclip(who)
	if !ok {
		return nil
	}
	t, ok := p.Try(edit)
	if !ok || !t.Mends(p) || !p.Proves(t, d) {
		return nil
	}
	return []diag.Fix{{Title: "let " + lint.NameOf(who) + " stand on the ground: take out on " + lint.NameOf(who.On),
		Gives: t.Rises(), Edits: []diag.Edit{edit}}}
}

// tieLine offers a line between people who hold none and the part that they are on, led
// up or down, as the load rises.
func tieLine(p *lint.Pass, who *model.Part, d diag.Diagnostic) []diag.Fix {
	off, ok := p.Unclip(who)
	if !ok {
		return nil
	}
	for _, stroke := range []model.Stroke{model.Up, model.Down} {
		line, how, ok := p.TieTo(who.On, stroke, who)
		if !ok {
			return nil
		}
		t, ok := p.Try(off, line)
		if ok && t.Mends(p) && p.Proves(t, d) {
			return []diag.Fix{{Title: "tie a line to " + lint.NameOf(who.On) + ": " + how,
				Gives: t.Rises(), Edits: []diag.Edit{off, line}}}
		}
	}
	return nil
}
