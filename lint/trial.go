package lint

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/solve"
)

// Trial is the rig as it would be after some edits.
type Trial struct {
	Rig *model.Rig
	// Result has no figures with friction and no lowering.
	Result *solve.Result

	file *load.Loaded
}

// Try makes edits of the rig's text in memory, reads the text again and solves the
// rig again. ok is false if the text has an error then that it had not before, or
// if no more trials can be afforded.
func (p *Pass) Try(edits ...diag.Edit) (trial *Trial, ok bool) {
	if p.inTrial {
		return nil, false
	}
	alone := p.standAlone()
	text := diag.Draft(p.file.File, append(alone.cuts[:len(alone.cuts):len(alone.cuts)], edits...))
	if !p.Afford(1) || !p.purse().read(text) {
		return nil, false
	}
	file := load.Draft(p.file.File.Name, text)
	if len(file.Model.Rigs) != 1 || file.Model.Rigs[0].Incomplete || newTally(file.Problems).worseThan(alone.faults, diag.Error) {
		return nil, false
	}
	rig := file.Model.Rigs[0]
	return &Trial{Rig: rig, Result: solve.Ideal(rig), file: file}, true
}

// standing is what a rig needs of its file: all of it but the other rigs.
type standing struct {
	// cuts take the other rigs out.
	cuts []diag.Edit
	// faults counts the findings of the text that is left.
	faults *tally
}

// standAlone gives what takes the other rigs out of the file, so that a trial in a
// file of many rigs costs no more than in a file of one.
func (p *Pass) standAlone() *standing {
	if p.alone != nil {
		return p.alone
	}
	file := p.file.File
	p.alone = &standing{cuts: p.others(slices.Index(p.file.Model.Rigs, p.Rig))}
	problems := p.file.Problems
	if len(p.alone.cuts) > 0 {
		problems = load.Draft(file.Name, diag.Draft(file, p.alone.cuts)).Problems
	}
	p.alone.faults = newTally(problems)
	return p.alone
}

// others gives what takes all rigs but one out of the file.
func (e *examination) others(own int) []diag.Edit {
	rigs, file := e.file.Model.Rigs, e.file.File
	if len(rigs) < 2 {
		return nil
	}
	end := len(file.Text)
	if own+1 < len(rigs) {
		end = rigs[own+1].Place.Span.Start
	}
	cuts := e.cut(nil, source.Span{Start: rigs[0].Place.Span.Start, End: rigs[own].Place.Span.Start})
	return e.cut(cuts, source.Span{Start: end, End: len(file.Text)})
}

// cut takes a stretch of other rigs out, but for the statements in it that concern
// the whole file.
func (e *examination) cut(cuts []diag.Edit, other source.Span) []diag.Edit {
	at := other.Start
	take := func(end int) {
		if at < end {
			place := e.file.File.At(source.Span{Start: at, End: end})
			cuts = append(cuts, diag.Edit{Place: place, NewText: "\n"})
		}
	}
	for _, s := range e.ofWholeFile() {
		if other.Contains(s) {
			take(s.Start)
			at = s.End
		}
	}
	take(other.End)
	return cuts
}

// ofWholeFile lists the statements that belong to no rig, wherever they stand.
func (e *examination) ofWholeFile() []source.Span {
	if e.whole == nil {
		e.whole = []source.Span{}
		for _, s := range e.file.Tree.Statements {
			switch s.Body.(type) {
			case *syntax.Use, *syntax.Stock, *syntax.Policy, *syntax.Require, *syntax.RuleSetting:
				e.whole = append(e.whole, s.Span)
			}
		}
	}
	return e.whole
}

// Proves says whether a trial mends a finding of the running rule: the rules do
// not find it any more, and nothing as grave has come. The finding counts at the
// rule's severity, or at its own if that is graver. The trial is solved whole for it:
// claims and rules may ask for friction.
func (p *Pass) Proves(t *Trial, d diag.Diagnostic) bool {
	d.Rule, d.Severity = p.rule.Name, max(d.Severity, p.rule.Severity)
	after := (&examination{file: t.file, House: p.House, rules: p.rules, purses: p.purses, inTrial: true}).pass(t.Rig, solve.Rig(t.Rig))
	left := after.run()
	if p.isDim() {
		left = slices.DeleteFunc(left, func(d diag.Diagnostic) bool { return isLatent(p.rules, d) })
	}
	found := newTally(append(left, t.file.Problems...))
	if found.has(d) {
		return false
	}
	return !found.worseThan(p.withoutTrials(), d.Severity)
}

// isDim says whether rules that are Latent do not see yet what is wrong with the rig.
func (p *Pass) isDim() bool {
	return p.Result.Status != solve.OK || !p.Keeps(p.Result.Released)
}

// isLatent says whether a finding is of a rule that is Latent.
func isLatent(rules []*Rule, d diag.Diagnostic) bool {
	return slices.ContainsFunc(rules, func(r *Rule) bool { return r.Latent && r.Name == d.Rule })
}

// withoutTrials counts what the rules find of the rig as it is when they can make
// no trials: what a trial's findings are compared with.
func (p *Pass) withoutTrials() *tally {
	if p.plain == nil {
		now := (&examination{file: p.file, House: p.House, rules: p.rules, purses: p.purses, inTrial: true}).pass(p.Rig, p.Result)
		p.plain = newTally(now.run())
		p.plain.add(p.standAlone().faults)
	}
	return p.plain
}
