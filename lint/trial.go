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
	*Outlook
	Rig *model.Rig
	// Result has no figures with friction and no lowering; Whole has them, and Actual
	// what friction does to a haul.
	Result *solve.Result

	file  *load.Loaded
	whole *solve.Result
}

// Whole gives everything that can be computed of a trial, friction and lowering too. ok
// is false if that cannot be afforded.
func (t *Trial) Whole(p *Pass) (whole *solve.Result, ok bool) {
	if t.whole == nil && !p.AffordWhole() {
		return nil, false
	}
	return t.entire(), true
}

// Actual gives the figures with friction of the same hauler's haul in a trial, which
// costs no more than the trial did; ok is false if there are none, or if that cannot be
// afforded.
func (t *Trial) Actual(p *Pass, hauler *model.Part) (actual *solve.Actual, ok bool) {
	ph := t.Haul(hauler)
	if ph == nil || !p.Afford(1) {
		return nil, false
	}
	actual = t.Result.HaulWith(ph, nil)
	return actual, actual.Known() && actual.Advantage.Known()
}

// entire solves a trial whole, once.
func (t *Trial) entire() *solve.Result {
	if t.whole == nil {
		t.whole = solve.Rig(t.Rig)
	}
	return t.whole
}

// Try makes edits of the rig's text in memory, reads the text again and solves the
// rig again. ok is false if the text has an error then that it had not before, if an
// edit is not of the rig's own text, or if no more trials can be afforded.
func (p *Pass) Try(edits ...diag.Edit) (trial *Trial, ok bool) {
	if p.inTrial || slices.ContainsFunc(edits, func(e diag.Edit) bool { return e.Place.File != p.file.File }) {
		return nil, false
	}
	alone := p.standAlone()
	text := diag.Draft(p.file.File, append(alone.cuts[:len(alone.cuts):len(alone.cuts)], edits...))
	if !p.Afford(1) || !p.purse().read(text) {
		return nil, false
	}
	file := p.file.Draft(text)
	rigs := file.Model.Rigs
	if len(rigs) != len(alone.rigs) || rigs[alone.own].Incomplete || newTally(file.Problems).worseThan(alone.faults, diag.Error, nil) {
		return nil, false
	}
	rig := rigs[alone.own]
	solved := solve.Ideal(rig)
	return &Trial{Outlook: outlookOf(solved), Rig: rig, Result: solved, file: file}, true
}

// standing is what a rig needs of its file: all of it but the rigs that have nothing to
// do with it.
type standing struct {
	// rigs are those that stay: the rig itself, those that include it and what these
	// include. own is which of them the rig is.
	rigs []*model.Rig
	own  int
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
	index := slices.Index(p.file.Model.Rigs, p.Rig)
	p.alone = p.standing(index)
	p.alone.faults = newTally(p.file.Problems)
	if len(p.alone.cuts) > 0 {
		p.alone.faults = newTally(p.file.Draft(diag.Draft(p.file.File, p.alone.cuts)).Problems)
	}
	return p.alone
}

// standing gives what a rig needs of its file, its faults not counted.
func (e *examination) standing(index int) *standing {
	alone := &standing{}
	rigs, file := e.file.Model.Rigs, e.file.File
	needed := withIncluded(append(e.includers(rigs[index]), rigs[index]))
	var from int // where the stretch begins that is cut next
	for i, rig := range rigs {
		at := rig.Place.Span.Start
		if i == 0 {
			from = at
		}
		if !needed[rig] {
			continue
		}
		alone.cuts = e.cut(alone.cuts, source.Span{Start: from, End: at})
		from = len(file.Text)
		if i+1 < len(rigs) {
			from = rigs[i+1].Place.Span.Start
		}
		if i == index {
			alone.own = len(alone.rigs)
		}
		alone.rigs = append(alone.rigs, rig)
	}
	alone.cuts = e.cut(alone.cuts, source.Span{Start: from, End: len(file.Text)})
	return alone
}

// includers lists the rigs of the file that include a rig, or one that does.
func (e *examination) includers(rig *model.Rig) []*model.Rig {
	if e.includedBy == nil {
		e.includedBy = map[*model.Rig][]*model.Rig{}
		for _, by := range e.file.Model.Rigs {
			for _, in := range by.Includes {
				e.includedBy[in.Of] = append(e.includedBy[in.Of], by)
			}
		}
	}
	met := map[*model.Rig]bool{rig: true}
	var list []*model.Rig
	for queue := []*model.Rig{rig}; len(queue) > 0; queue = queue[1:] {
		for _, by := range e.includedBy[queue[0]] {
			if !met[by] {
				met[by] = true
				list, queue = append(list, by), append(queue, by)
			}
		}
	}
	return list
}

// withIncluded gives some rigs with all that they include.
func withIncluded(rigs []*model.Rig) map[*model.Rig]bool {
	all := map[*model.Rig]bool{}
	for len(rigs) > 0 {
		rig := rigs[0]
		rigs = rigs[1:]
		if all[rig] {
			continue
		}
		all[rig] = true
		for _, in := range rig.Includes {
			if in.Of != nil {
				rigs = append(rigs, in.Of)
			}
		}
	}
	return all
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
// not find it any more, and nothing as grave has come, neither in the rig nor in those of
// the file that include it. The finding counts at the rule's severity, or at its own if
// that is graver. The trial is solved whole for it: claims and rules may ask for friction.
func (p *Pass) Proves(t *Trial, d diag.Diagnostic) bool { return p.proves(t, d, nil) }

// ProvesExchange is Proves for a trial in which two parts have each other's hardware:
// what was found of the one may be found of the other then.
func (p *Pass) ProvesExchange(t *Trial, d diag.Diagnostic, a, b *model.Part) bool {
	return p.proves(t, d, map[string]string{a.Name: b.Name, b.Name: a.Name})
}

func (p *Pass) proves(t *Trial, d diag.Diagnostic, moved map[string]string) bool {
	d.Rule, d.Severity = p.rule.Name, max(d.Severity, p.rule.Severity)
	if t.file == nil { // it is not one of the text
		return false
	}
	found := p.after(t, t.Rig, t.entire())
	found.add(newTally(t.file.Problems))
	if found.has(d) || found.worseThan(p.withoutTrials(), d.Severity, moved) {
		return false
	}
	for _, by := range p.includers(p.Rig) {
		if !p.Afford(2) || !p.sparesIncluder(t, by, d.Severity) {
			return false
		}
	}
	return true
}

// sparesIncluder says whether a trial makes nothing as grave as a severity be found in
// another rig, which includes this one.
func (p *Pass) sparesIncluder(t *Trial, by *model.Rig, severity diag.Severity) bool {
	then := t.file.Model.Rigs[slices.Index(p.standAlone().rigs, by)]
	now := p.untried(p.file, by, solve.Rig(by))
	before := newTally(now.run())
	return !now.after(t, then, solve.Rig(then)).worseThan(before, severity, nil)
}

// after counts what the rules find of a rig as a trial has it, without those that did
// not see before what is wrong with it.
func (p *Pass) after(t *Trial, rig *model.Rig, solved *solve.Result) *tally {
	left := p.untried(t.file, rig, solved).run()
	if p.isDim() {
		left = slices.DeleteFunc(left, func(d diag.Diagnostic) bool { return isLatent(p.rules, d) })
	}
	return newTally(left)
}

// untried gives a rig to the rules when they can make no trials.
func (p *Pass) untried(file *load.Loaded, rig *model.Rig, solved *solve.Result) *Pass {
	of := &examination{file: file, House: p.House, rules: p.rules, purses: p.purses, inTrial: true}
	return of.pass(rig, solved)
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
		p.plain = newTally(p.untried(p.file, p.Rig, p.Result).run())
		p.plain.add(p.standAlone().faults)
	}
	return p.plain
}
