package rules

import (
	"fmt"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var teamCanOverload = &lint.Rule{
	Name:     "team-can-overload",
	Severity: diag.Warning,
	Summary:  "people who can pull more than a part bears, once the load is stuck",
	Check:    checkTeamCanOverload,
}

// checkTeamCanOverload lets the team pull with all that it gives while the load does not
// move.
func checkTeamCanOverload(p *lint.Pass) {
	if !slices.ContainsFunc(burdens(p), func(b burden) bool { return b.Limit != solve.Slips && b.grade() != broken }) {
		return
	}
	for _, haul := range p.Result.Hauls() {
		t, ok := teamOf(p, haul)
		if !ok {
			continue
		}
		if stuck := p.Result.Stuck(haul, t.gives()); stuck != nil {
			t.reportStuck(p, stuck)
		}
	}
}

// strained is a part that carries more than it bears once the load is stuck.
type strained struct {
	burden
	load lp.Num
}

// over is its load over what it bears.
func (s strained) over() lp.Num { return s.load.Quo(*s.Strength) }

// reportStuck reports the part that a team overloads most, with the others, and what a
// fuse protects. What slips at its limit is a fuse and not overloaded; what the haul alone
// overloads has a finding of its own.
func (t team) reportStuck(p *lint.Pass, stuck *solve.Stuck) {
	var list []strained
	var protected []string
	for _, b := range burdens(p) {
		if b.Limit == solve.Slips || b.grade() == broken {
			continue
		}
		i := b.Part.Index
		switch until, full := loadOf(p, stuck.Until[i]), loadOf(p, stuck.Parts[i]); {
		case until.Cmp(*b.Strength) > 0:
			list = append(list, strained{b, until})
		case full.Cmp(*b.Strength) > 0:
			protected = append(protected, lint.NameOf(b.Part))
		}
	}
	if len(list) == 0 {
		return
	}
	slices.SortStableFunc(list, func(a, b strained) int { return b.over().Cmp(a.over()) })
	who, worst := t.haul.Hauler, list[0]
	d := diag.Diagnostic{Place: p.OnRope(who), Subject: who.Name}
	d.Message = fmt.Sprintf("%s can pull %s (%s at %s), which puts up to %s%s on %s once %s is stuck, %s what it bears", lint.NameOf(who),
		p.Newtons(stuck.Pull), counted(who), t.each(p), p.NewtonsFrom(worst.load, *worst.Strength), friction(p, stuck),
		lint.NameOf(worst.Part), stuckLoad(p, t.haul), ratio(worst.over()))
	var others []string
	for i, s := range list {
		d.Also = append(d.Also, s.Part.Name)
		d.Related = append(d.Related, diag.Related{Place: s.Part.NamePlace, Message: lint.NameOf(s.Part) + " " + s.bears(p)})
		if i > 0 {
			others = append(others, lint.NameOf(s.Part))
		}
	}
	if len(others) > 0 {
		d.Message += "; " + lint.List(shortened(others)) + " would be overloaded too"
	}
	d.Message += fuseWords(p, stuck, protected)
	p.Report(d)
}

// fuseWords says what slips first, and what that protects.
func fuseWords(p *lint.Pass, stuck *solve.Stuck, protected []string) string {
	if len(stuck.Fuses) == 0 || len(protected) == 0 {
		return ""
	}
	var names []string
	for _, f := range stuck.Fuses {
		names = append(names, lint.NameOf(f))
	}
	slip := "slips"
	if len(names) > 1 {
		slip = "slip"
	}
	return fmt.Sprintf("; %s %s at a pull of %s and so protects %s", lint.List(names), slip, p.Newtons(stuck.SlipsAt), lint.List(shortened(protected)))
}

// loadOf gives the most that a part carries, in newtons.
func loadOf(p *lint.Pass, load solve.PartLoad) lp.Num {
	return load.Most().Mul(*p.Result.WeightNewtons)
}

// friction says that friction is left out of the forces of a stuck load.
func friction(p *lint.Pass, stuck *solve.Stuck) string {
	if stuck.Ideal {
		return p.WithoutFriction()
	}
	return ""
}

// counted gives the people of a hauler in words: "5 people", "1 person".
func counted(hauler *model.Part) string {
	if n := hauler.Values.People.String(); n != "1" {
		return n + " people"
	}
	return "1 person"
}

// stuckLoad names the loads that a haul raises.
func stuckLoad(p *lint.Pass, haul *solve.Phase) string {
	var up []*solve.Body
	for _, m := range haul.Motion {
		if m.Rise.Sign() > 0 && len(m.Body.Loads) > 0 {
			up = append(up, m.Body)
		}
	}
	if len(up) == 1 {
		return lint.BodyName(up[0])
	}
	return "the load"
}

// shortened leaves out names beyond those that a message lists.
func shortened(names []string) []string {
	if len(names) <= mostWeak {
		return names
	}
	return append(names[:mostWeak:mostWeak], fmt.Sprint(len(names)-mostWeak, " more"))
}
