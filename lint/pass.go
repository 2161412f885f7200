package lint

import (
	"slices"
	"sort"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/lint/house"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// Pass is one rig under examination: what a rule is given. The rig is solved once
// for all rules.
type Pass struct {
	Rig    *model.Rig
	Result *solve.Result

	*examination
	rule *Rule // the one that runs
	// found are the findings so far, in the order in which they were reported, silent
	// those of rules that the house turned off: claims may still name them.
	found, silent []diag.Diagnostic
	// explained says that it has been reported why the rig does not do its job.
	explained bool
	// alone is what the rig needs of its file, plain the findings of the rig as it is
	// without any trial; both once asked for.
	alone *standing
	plain *tally
	// losses are the telling ones, once asked for; cut says that there may be more.
	losses                 []solve.Loss
	lossesAsked, lossesCut bool
	// verdicts are those on the claims judged so far.
	verdicts map[*model.Claim]Verdict
}

// examination is what the passes of one file share.
type examination struct {
	file *load.Loaded
	// House are the house rules in force.
	House  *house.Rules
	rules  []*Rule
	purses map[*Rule]*purse
	// inTrial says that this is about a trial, in which no further one is made.
	inTrial bool
	// whole are the statements that concern the whole file, wherever they stand, once
	// asked for.
	whole []source.Span
	// memory has what is known of earlier versions of the file; nil without any.
	memory *Memory
	// stop says that nobody wants the findings any more; nil for never. stopped says
	// that it did.
	stop    func() bool
	stopped bool
	// includedBy has the rigs that include a rig, once asked for.
	includedBy map[*model.Rig][]*model.Rig
}

func (e *examination) pass(rig *model.Rig, solved *solve.Result) *Pass {
	return &Pass{Rig: rig, Result: solved, examination: e}
}

// legible says whether a rig is the one that its author means: no error left
// anything out of it, and none is in a reeving line, such as a rope written backward
// or a stroke against the positions of its parts. The problems of its file are in
// file order.
func legible(problems []diag.Diagnostic, rig *model.Rig) bool {
	if rig.Incomplete {
		return false
	}
	for _, r := range rig.Ropes {
		line := r.Place.Home().Span
		first := sort.Search(len(problems), func(i int) bool { return problems[i].Place.Span.Start >= line.Start })
		for _, d := range problems[first:] {
			if d.Place.Span.Start > line.End {
				break
			}
			if d.Severity == diag.Error && line.Contains(d.Place.Span) {
				return false
			}
		}
	}
	return true
}

// run lets every rule look at the rig, if it is legible: what is computed of another
// is not the rig that its author means.
func (p *Pass) run() []diag.Diagnostic {
	if !legible(p.file.Problems, p.Rig) {
		return nil
	}
	for _, r := range p.rules {
		if p.stopped = p.stopped || p.stop != nil && p.stop(); p.stopped {
			break
		}
		if r.Check != nil {
			p.rule = r
			r.Check(p)
		}
	}
	return p.found
}

// Report notes a finding of the running rule at the rule's own severity.
func (p *Pass) Report(d diag.Diagnostic) { p.ReportAs(p.rule.Severity, d) }

// ReportAs notes a finding of the running rule at another severity. A house rule about
// the rule decides in either case.
func (p *Pass) ReportAs(severity diag.Severity, d diag.Diagnostic) {
	d.Rule = p.rule.Name
	d = d.Home()
	var on bool
	if d.Severity, on = p.House.Severity(d.Rule, severity); on {
		p.found = append(p.found, d)
		return
	}
	d.Severity = severity
	p.silent = append(p.silent, d)
}

// Fault gives the status of a rig that does not do its job, as long as no rule
// has said why; empty otherwise. Rules that explain a fault ask it first and
// report with Explain, so that one fault has one finding: that of the first of
// them in the list of rules.
func (p *Pass) Fault() solve.Status {
	switch p.Result.Status {
	case solve.OK, solve.NoHaul, solve.Unsolved:
		return ""
	}
	if p.explained {
		return ""
	}
	return p.Result.Status
}

// Reported says whether a rule has reported something about a part.
func (p *Pass) Reported(rule *Rule, subject string) bool {
	is := func(d diag.Diagnostic) bool { return d.Rule == rule.Name && d.Subject == subject }
	return slices.ContainsFunc(p.found, is) || slices.ContainsFunc(p.silent, is)
}

// ReportedAt says whether a rule has reported something that a claim can name by a part.
func (p *Pass) ReportedAt(rule *Rule, part string) bool {
	is := func(d diag.Diagnostic) bool { return d.Rule == rule.Name && d.Named(part) }
	return slices.ContainsFunc(p.found, is) || slices.ContainsFunc(p.silent, is)
}

// Named says whether the author names a part in a claim about findings of the running
// rule: such a part has a finding of its own.
func (p *Pass) Named(part *model.Part) bool {
	for _, a := range p.Rig.Accepted {
		if a.At == part && a.Rule.Text == p.rule.Name {
			return true
		}
	}
	for _, c := range p.Rig.Claims {
		if c.Subject == syntax.Finding && c.Of == part && c.Rule != nil && c.Rule.Text == p.rule.Name {
			return true
		}
	}
	return false
}

// Explained says whether a rule has said why the rig does not do its job.
func (p *Pass) Explained() bool { return p.explained }

// Explain notes a finding that says why the rig does not do its job.
func (p *Pass) Explain(d diag.Diagnostic) {
	p.Report(d)
	p.explained = true
}

// Judge says whether a claim comes true. It is asked by several rules and answers
// once.
func (p *Pass) Judge(c *model.Claim) Verdict {
	if v, judged := p.verdicts[c]; judged {
		return v
	}
	if p.verdicts == nil {
		p.verdicts = map[*model.Claim]Verdict{}
	}
	v := Verdict{Missing: "the loss of so many parts of so large a rig"}
	if c.Subject != syntax.Held || c.Of == nil || p.AffordLosses(1) {
		v = Judge(p.Result, p.House, c)
	}
	p.verdicts[c] = v
	return v
}

// During says in a message what goes on in a phase: "held", "hauling", "red lowering".
func (p *Pass) During(ph *solve.Phase) string { return phaseName(p.Result, ph) }

// Of names the hauler of a haul where a rig has several: " of red"; it is empty elsewhere.
func (p *Pass) Of(ph *solve.Phase) string {
	if len(p.Result.Hauls()) < 2 {
		return ""
	}
	return " of " + NameOf(ph.Hauler)
}

// OwnText says whether a place is in the text of the rig alone, so that an edit there
// changes no other rig.
func (p *Pass) OwnText(place source.Place) bool {
	rigs := p.file.Model.Rigs
	return place.File == p.file.File && (len(rigs) < 2 || p.Rig.Place.Span.Contains(place.Span))
}

// WithoutRope solves the rig as if one of its ropes were not there; ok is false if
// that cannot be afforded.
func (p *Pass) WithoutRope(gone *model.Rope) (without *solve.Result, ok bool) {
	if !p.Afford(1) {
		return nil, false
	}
	return solve.Ideal(p.Rig.Reeved(gone, nil)), true
}

// WithAngle solves the rig as if some bends, each by its place in Rig.Ropes and its node
// there, had another included angle, in degrees; ok is false if that cannot be afforded.
func (p *Pass) WithAngle(degrees lp.Num, bends map[int][]int) (opened *solve.Result, ok bool) {
	if p.inTrial || !p.Afford(1) {
		return nil, false
	}
	angle := &quantity.Quantity{Low: degrees.Rat(), High: degrees.Rat(), Dimension: quantity.Angle, Unit: "deg"}
	rig := *p.Rig
	rig.Ropes = slices.Clone(rig.Ropes)
	for i, nodes := range bends {
		rope := *rig.Ropes[i]
		rope.Nodes = slices.Clone(rope.Nodes)
		for _, node := range nodes {
			rope.Nodes[node].Angle = angle
		}
		rig.Ropes[i] = &rope
	}
	return solve.Rig(&rig), true
}

// Exchanged solves the rig as if two nodes of a rope changed places; ok is false if that
// cannot be afforded.
func (p *Pass) Exchanged(r *model.Rope, a, b int) (exchanged *solve.Result, ok bool) {
	if !p.Afford(1) {
		return nil, false
	}
	other := *r
	other.Nodes = slices.Clone(r.Nodes)
	other.Nodes[a], other.Nodes[b] = r.Nodes[b], r.Nodes[a]
	rig := *p.Rig
	rig.Ropes = slices.Clone(p.Rig.Ropes)
	rig.Ropes[slices.Index(rig.Ropes, r)] = &other
	return solve.Ideal(&rig), true
}

// HaulWith gives the figures of a haul with friction as they would be with other
// hardware at the bends of some parts; ok is false if they are not known, or if that
// cannot be afforded.
func (p *Pass) HaulWith(ph *solve.Phase, instead map[*model.Part]solve.Hardware) (actual *solve.Actual, ok bool) {
	if !p.Afford(1) {
		return nil, false
	}
	actual = p.Result.HaulWith(ph, instead)
	return actual, actual.Known() && actual.Advantage.Known()
}
