package report

import (
	"fmt"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
	"fairlead/solve/report/page"
)

// mostNamed is how many parts are named where friction is unknown.
const mostNamed = 3

// rubbed says whether the forces of a phase have friction in them.
func rubbed(p *solve.Phase) bool { return p.Actual.Known() && !frictionless(p.Actual) }

// frictionless says whether friction is known and takes nothing: no rope runs over
// anything, or whatever it runs over has an efficiency of 1.
func frictionless(a *solve.Actual) bool {
	e := a.Efficiency
	return e.Known() && !e.Ranges() && e.Value.Cmp(lp.Int(1)) == 0
}

// idealOnly says whether the forces of a phase are those without friction though
// there may be some. Where nothing is pulled no rope runs under load, and the
// forces are those of a rig that is held.
func idealOnly(p *solve.Phase) bool {
	return p.Hauler != nil && !p.Actual.Known() && p.Pull != nil && !p.Pull.IsZero()
}

// strandsOf gives what the strands carry in a phase: with friction where that is
// known.
func strandsOf(p *solve.Phase) []solve.Strand {
	if p.Actual.Known() {
		return p.Actual.Strands
	}
	return p.Strands
}

// loadOf gives what a part carries in a phase: with friction where that is known. A
// phase lists the parts in file order.
func loadOf(p *solve.Phase, part *model.Part) solve.PartLoad {
	all, _ := p.Loads()
	return all[part.Index]
}

// actual says what friction leaves of the advantage: "2.77 with friction". Empty
// where nothing is pulled.
func actual(p *solve.Phase) string {
	a := p.Actual
	switch {
	case a == nil:
		return ""
	case len(a.Unknown) > 0:
		return "friction unknown: no efficiency for " + some(a.Unknown)
	case a.Stuck:
		return "with friction no forces balance"
	case frictionless(a):
		return "no friction"
	case a.Advantage.Known():
		return span(a.Advantage, rounded) + " with friction"
	}
	hundred := lp.Int(100)
	return span(a.Efficiency, func(n lp.Num) string { return rounded(n.Mul(hundred)) }) + " % of it with friction"
}

// some names the first few of many parts.
func some(parts []*model.Part) string {
	var names []string
	for i, p := range parts {
		if i == mostNamed && len(parts) > mostNamed+1 {
			names = append(names, fmt.Sprint(len(parts)-i, " more"))
			break
		}
		names = append(names, page.Clean(p.Name))
	}
	return page.List(names)
}
