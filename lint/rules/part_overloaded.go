package rules

import (
	"fmt"
	"slices"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lint"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var partOverloaded = &lint.Rule{
	Name:     "part-overloaded",
	Severity: diag.Error,
	Summary:  "a part that carries more than it bears; a warning where only its factor is under the house's",
	Check:    checkPartOverloaded,
}

// checkPartOverloaded reports each part that carries more than it bears, and of those
// whose factor is too small the weakest, with the others named beside it: one finding for
// each factor that the house requires.
func checkPartOverloaded(p *lint.Pass) {
	weaklings := map[*house.Line][]burden{}
	var lines []*house.Line
	for _, b := range burdens(p) {
		switch {
		case b.byShare(), slips(p, b.Part) != nil, damages(b):
			continue // load-shared-unknown, hitch-slips and clamp-damages-rope say it
		case b.grade() == broken && b.Limit == solve.Breaks:
			reportBroken(p, b)
		case b.limit.Allows(*b.Factor):
		case p.Named(b.Part):
			reportWeak(p, []burden{b})
		default:
			line := b.limit.Line
			if weaklings[line] == nil {
				lines = append(lines, line)
			}
			weaklings[line] = append(weaklings[line], b)
		}
	}
	for _, line := range lines {
		reportWeak(p, weaklings[line])
	}
}

func reportBroken(p *lint.Pass, b burden) {
	strength := "its strength of " + p.NewtonsFrom(*b.Strength, *b.Load)
	if b.Knot != "" {
		strength = "the " + p.NewtonsFrom(*b.Strength, *b.Load) + " that " + lint.Clipped(b.Knot) + " leaves of its strength"
	}
	d := diag.Diagnostic{Place: b.Part.NamePlace, Subject: b.Part.Name,
		Message: fmt.Sprintf("%s %s, %s %s", lint.NameOf(b.Part), b.carries(p, "carries", "carry"),
			ratio(b.Load.Quo(*b.Strength)), strength)}
	d.Severity = diag.Error
	if b.Least.Cmp(*b.Strength) <= 0 { // it need not come to that
		d.Severity = diag.Warning
	}
	p.ReportAs(d.Severity, d)
}

// mostWeak is how many weak parts a message names with their factors.
const mostWeak = 8

// reportWeak reports parts whose factor is under the same one of the house.
func reportWeak(p *lint.Pass, list []burden) {
	slices.SortStableFunc(list, func(a, b burden) int { return a.Factor.Cmp(*b.Factor) })
	b, least := list[0], lp.FromRat(list[0].limit.Low)
	d := diag.Diagnostic{Place: b.Part.NamePlace, Subject: b.Part.Name, Related: b.limit.Related()}
	d.Message = fmt.Sprintf("%s has a factor of %s, where %s%s: it %s and %s", lint.NameOf(b.Part), lint.From(*b.Factor, least),
		required(b.limit), forKind(b.limit), b.carries(p, "carries", "carry"), b.bears(p))
	var others []string
	for i, o := range list[1:] {
		d.Also = append(d.Also, o.Part.Name)
		if i < mostWeak {
			others = append(others, lint.NameOf(o.Part)+" "+lint.From(*o.Factor, least))
		}
	}
	if more := len(list) - 1 - mostWeak; more > 0 {
		others = append(others, fmt.Sprint(more, " more"))
	}
	if len(others) > 0 {
		d.Message += "; under it too: " + strings.Join(others, ", ")
	}
	p.ReportAs(diag.Warning, d)
}
