package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var loadSharedUnknown = &lint.Rule{
	Name:     "load-shared-unknown",
	Severity: diag.Warning,
	Summary:  "ropes that share a load in a way nobody knows, where a part would be too weak for the worst of it",
	Check:    checkLoadSharedUnknown,
}

// checkLoadSharedUnknown reports the part that stands worst at the upper end of an open
// share, and names the others.
func checkLoadSharedUnknown(p *lint.Pass) {
	var list []burden
	worst := 0
	for _, b := range burdens(p) {
		if !b.byShare() {
			continue
		}
		list = append(list, b)
		if b.excess().Cmp(list[worst].excess()) > 0 {
			worst = len(list) - 1
		}
	}
	if len(list) == 0 {
		return
	}
	var others []*model.Part
	for i, b := range list {
		if i != worst {
			others = append(others, b.Part)
		}
	}
	list[worst].reportShare(p, others)
}

// excess is the upper end of an open share over what the part bears.
func (b burden) excess() lp.Num { return b.Open.High.Quo(*b.Strength) }

func (b burden) reportShare(p *lint.Pass, others []*model.Part) {
	var ropes []string
	for _, r := range b.Open.Ropes {
		ropes = append(ropes, lint.NameOf(r.Line))
	}
	d := diag.Diagnostic{Place: p.OnRope(b.Part), Subject: b.Part.Name}
	d.Message = fmt.Sprintf("%s carries %s %s%s, as %s happen to share the load, and %s", lint.NameOf(b.Part),
		p.Between(b.Open.Low, b.Open.High), p.During(b.Open.Phase), p.Frictionless(b.Open.Phase), lint.List(ropes), b.bears(p))
	if factor := b.Strength.Quo(b.Open.High); b.under(b.Open.High) == weak {
		d.Message += fmt.Sprintf(": that can be a factor of %s, where %s%s", lint.From(factor, lp.FromRat(b.limit.Low)),
			required(b.limit), forKind(b.limit))
		d.Related = b.limit.Related()
	}
	var names []string
	for _, o := range others {
		d.Also = append(d.Also, o.Name)
		names = append(names, lint.NameOf(o))
	}
	if len(names) > 0 {
		d.Message += "; the same goes for " + lint.List(shortened(names))
	}
	if at := sharedAt(b.Open); at != nil {
		d.Related = append(d.Related, diag.Related{Place: p.OnRope(at), Message: "a share can be stated at " + lint.NameOf(at)})
	}
	p.Report(d)
}

// sharedAt finds the part at which two of the ropes that share end, and where a share
// could be stated: people before others.
func sharedAt(open *solve.OpenShare) *model.Part {
	ends := map[*model.Part]int{}
	var found *model.Part
	for _, r := range open.Ropes {
		for _, n := range r.Nodes {
			if n.Part == nil || n.Role != model.Tied && n.Role != model.Hauled || n.Part.Fixed() {
				continue
			}
			ends[n.Part]++
			if ends[n.Part] == 2 && (found == nil || n.Role == model.Hauled) {
				found = n.Part
			}
		}
	}
	return found
}
