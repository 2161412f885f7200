package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/solve"
)

var cannotReset = &lint.Rule{
	Name:     "cannot-reset",
	Severity: diag.Error,
	Summary:  "parts that meet before the load is as high as asked, and that no reset can draw apart",
	Check:    checkCannotReset,
}

func checkCannotReset(p *lint.Pass) {
	s, pair, how := raiseEnd(p)
	why := "and no reset draws them apart while the load is held"
	switch {
	case how == atNoRoom:
		why = "and no room is left to draw them apart"
	case how != atNoReset:
		return
	case p.Result.Released.Answer != solve.Held:
		why = "and cannot be reset: hands off, " + lint.Fall(p.Rig, p.Result.Released, "")
	}
	d := endsBy(p, s, pair, met(pair), why)
	if load := bodyOf(p.Result, pair.Lower); load == s.Load && pair.Upper.Fixed() {
		d.Message = fmt.Sprintf("%s is up after %s of the %s that it is to be raised: %s",
			lint.BodyName(load), p.LengthBeside(s.Raise.Reached, s.Raise.Height), p.LengthBeside(s.Raise.Height, s.Raise.Reached), met(pair))
	}
	p.Report(d)
}
