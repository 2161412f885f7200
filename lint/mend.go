package lint

import (
	"cmp"
	"slices"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/source"
)

// Mending is what comes of mending one file in memory.
type Mending struct {
	// File is the file as it is then: the one that was given if nothing was mended.
	File *load.Loaded
	// Before and Left are what is found in the file as it was, and as it is then.
	Before, Left Outcome
	// Steps are the fixes made, in the order in which they were.
	Steps []Step
	// Refused are the fixes that could have been made and were not, by place.
	Refused []Refusal
	// Stopped says that the file was too much to try every fix: there may be more to
	// mend.
	Stopped bool
	// Mended is how many of the findings of the file as it was are gone.
	Mended int
}

// Step is one fix that was made.
type Step struct {
	// Finding is what it mends, as it was found in the text before this step.
	Finding diag.Diagnostic
	Fix     diag.Fix
	// Now is the place of the first words that the fix writes, in the text after this
	// step and those beside it; of the culprit if it writes blanks only, and the zero
	// Place if it only takes out.
	Now source.Place
}

// Refusal is one fix that was not made.
type Refusal struct {
	Finding diag.Diagnostic
	// Why says what would be after it: "then top lets the load fall".
	Why string
}

// Mend makes every fix of a file that is proved: after it the finding is gone and
// nothing as grave has come, the rig can be judged, nothing that was reported is
// accepted or expected, no claim is lost, and the house rules are what they were. Of
// fixes that overlap the first is made, and the file is examined again until nothing
// more can be mended. Where a finding has several fixes, the choice is not Mend's.
//
// A fix that writes the nearest name is a guess until it is proved so: while an error
// hides what the rig does, no fix in that rig is.
func Mend(f *load.Loaded, rules []*Rule) *Mending {
	m := &mender{rules: rules, trials: mostTrials, text: mostMended}
	m.now = m.examine(f)
	all := &Mending{Before: m.now.Outcome}
	was := m.now
	for {
		steps := m.round()
		all.Steps = append(all.Steps, steps...)
		if len(steps) == 0 || m.stopped {
			break
		}
	}
	all.File, all.Left, all.Stopped = m.now.file, m.now.Outcome, m.stopped
	if len(m.made) == 0 { // else they are about the text before
		all.Refused = m.refused
	}
	all.Mended = was.gone(m.now)
	return all
}

// What mending one file may cost: examinations, and bytes of text examined.
const (
	mostTrials = 100
	mostMended = 2 << 20
)

// mender is one file being mended.
type mender struct {
	rules []*Rule
	// now is the file with the fixes made so far.
	now *examined
	// base is the file as it was at the beginning of the round, and made the fixes of
	// the round that were made: their edits are in its text.
	base *examined
	made []candidate
	// refused are those of the round that were not made.
	refused []Refusal
	// trials and text are what may still be spent.
	trials, text int
	stopped      bool
}

// round makes fixes that do not overlap, and gives the steps.
func (m *mender) round() []Step {
	m.base, m.made, m.refused = m.now, nil, nil
	m.settle(m.now.candidates(), "")
	slices.SortStableFunc(m.made, func(a, b candidate) int { return cmp.Compare(a.Place.Span.Start, b.Place.Span.Start) })
	slices.SortStableFunc(m.refused, func(a, b Refusal) int {
		return cmp.Compare(a.Finding.Place.Span.Start, b.Finding.Place.Span.Start)
	})
	var steps []Step
	for _, c := range m.made {
		steps = append(steps, Step{Finding: c.Diagnostic, Fix: c.fix(), Now: m.written(c)})
	}
	return steps
}

// settle makes the fixes together if that is proved, else as many of them as are.
// worse is what would be found if they were made together with others.
func (m *mender) settle(list []candidate, worse string) {
	if len(list) == 0 || m.stopped {
		return
	}
	against := m.try(list)
	switch {
	case against == nil, m.stopped:
		return
	case len(list) > 1:
		if against.worse != "" {
			worse = against.worse
		}
		for _, part := range split(list) {
			m.settle(part, worse)
		}
		return
	}
	why := against.String()
	if against.other == stillHidden && worse != "" {
		why += "; mended with others, " + worse
	}
	m.refused = append(m.refused, Refusal{list[0].Diagnostic, why})
}

// split parts candidates: rig from rig, else the graver ones from the others, else
// into halves.
func split(list []candidate) [][]candidate {
	if parts := groups(list, func(c candidate) string { return c.rig }); len(parts) > 1 {
		return parts
	}
	byGravity := slices.Clone(list)
	slices.SortStableFunc(byGravity, func(a, b candidate) int { return cmp.Compare(b.Severity, a.Severity) })
	if parts := groups(byGravity, func(c candidate) diag.Severity { return c.Severity }); len(parts) > 1 {
		return parts
	}
	half := len(list) / 2
	return [][]candidate{list[:half], list[half:]}
}

// groups parts a list by a key, each part where its key first stands.
func groups[K comparable](list []candidate, key func(candidate) K) [][]candidate {
	var parts [][]candidate
	index := map[K]int{}
	for _, c := range list {
		k := key(c)
		if _, known := index[k]; !known {
			index[k] = len(parts)
			parts = append(parts, nil)
		}
		parts[index[k]] = append(parts[index[k]], c)
	}
	return parts
}

// try makes fixes in memory beside those made already, and keeps them if nothing is
// against them.
func (m *mender) try(list []candidate) *objection {
	var edits []diag.Edit
	for _, c := range slices.Concat(m.made, list) {
		edits = append(edits, c.fix().Edits...)
	}
	text := diag.Apply(m.base.file.File, edits)
	m.trials--
	m.text -= len(text)
	if m.trials < 0 || m.text < 0 {
		m.stopped = true
		return &objection{other: "it was not tried"}
	}
	after := m.examine(m.base.file.With(text))
	if against := m.now.against(after, list, m.rules); against != nil {
		return against
	}
	m.now, m.made = after, append(m.made, list...)
	return nil
}

// written gives the place, after the round, of the first words that the fix of a finding
// writes, from the first to the last of the edits that it takes to have words; of the
// culprit where it writes blanks only.
func (m *mender) written(c candidate) source.Place {
	now := m.now.file.File
	start := -1
	for _, e := range slices.SortedStableFunc(slices.Values(c.fix().Edits), byStart) {
		if e.NewText == "" {
			continue
		}
		at := e.Place.Span.Start
		at += m.shift(at - 1)
		if start < 0 {
			start = at
		}
		text := now.Slice(source.Span{Start: start, End: at + len(e.NewText)})
		if word := strings.TrimSpace(text); word != "" {
			start += strings.Index(text, word)
			return now.At(source.Span{Start: start, End: start + len(word)})
		}
	}
	if start < 0 {
		return source.Place{}
	}
	was := c.Place.Span
	start = was.Start + m.shift(was.Start)
	return now.At(source.Span{Start: start, End: max(start, was.End+m.shift(was.End-1))})
}

// shift gives how far the edits of the round that begin up to an offset move what
// follows.
func (m *mender) shift(upTo int) int {
	bytes := 0
	for _, c := range m.made {
		for _, e := range c.fix().Edits {
			if e.Place.Span.Start <= upTo {
				bytes += len(e.NewText) - e.Place.Span.Len()
			}
		}
	}
	return bytes
}

func byStart(a, b diag.Edit) int { return cmp.Compare(a.Place.Span.Start, b.Place.Span.Start) }
