package rules

import (
	"fmt"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
)

var setback = &lint.Rule{
	Name:     "setback",
	Severity: diag.Advice,
	Summary:  "captures and grips that give back too much of each stroke before they hold",
	Check:    checkSetback,
}

func checkSetback(p *lint.Pass) {
	s := strokeOf(p)
	if s == nil {
		return
	}
	whole, back, known := s.GivenBack()
	limit := p.House.Limit(house.Figure{Name: "set-back"})
	if !known || whole.Sign() == 0 || back.Sign() <= 0 || winsTooLittle(p, s) || limit.Allows(back.Quo(whole)) {
		return
	}
	by := givers(s)
	d := diag.Diagnostic{
		Place: p.OnRope(by[0]), Subject: by[0].Name, Also: []string{s.First.Lower.Name, s.First.Upper.Name},
		Message: fmt.Sprintf("%s back %s of each stroke, %s of the %s that %s rises until %s",
			give(by), p.Length(back), lint.Percent(back.Quo(whole)), p.Length(whole), lint.BodyName(s.Load), met(s.First)),
	}
	for _, part := range by {
		if part != by[0] {
			d.Also = append(d.Also, part.Name)
		}
		if part.FromStock("set-back") == nil {
			d.Related = append(d.Related, diag.Related{Place: part.Values.Places["set-back"], Message: "the set-back of " + lint.NameOf(part)})
		}
	}
	d.Related = append(d.Related, limit.Related()...)
	p.Report(d)
}

// givers lists what gives a part of each stroke back, in file order.
func givers(s *solve.Stroke) []*model.Part {
	list := slices.Concat(s.SettingBack, s.Slipping)
	slices.SortFunc(list, func(a, b *model.Part) int { return a.Index - b.Index })
	return slices.Compact(list)
}

// give says that parts give: "top gives", "top and grab give".
func give(parts []*model.Part) string {
	if len(parts) == 1 {
		return names(parts) + " gives"
	}
	return names(parts) + " give"
}

// names lists parts in a sentence.
func names(parts []*model.Part) string {
	var list []string
	for _, part := range parts {
		list = append(list, lint.NameOf(part))
	}
	return lint.List(list)
}
