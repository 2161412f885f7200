package watch

import (
	"slices"

	"fairlead/lang/load"
	"fairlead/lint"
)

// state is what was seen at the last look.
type state struct {
	Options
	every []*Linted
	// unread is the last complaint about what could not be read.
	unread string
}

// look reads all files and lints those that differ from the last look. Patient, it
// passes by files that have just become empty, since an editor may empty a file before
// it writes it, and says that it is not sure of them.
func (s *state) look(patient bool) (batch Batch, unsure bool) {
	loaded, err := load.Loader{Policy: s.Policy}.Paths(s.Paths)
	loaded = append(loaded, load.Policies(loaded)...)
	before := map[string]*Linted{}
	for _, l := range s.every {
		before[l.File.File.Name] = l
	}
	for _, now := range loaded {
		old := before[now.File.Name]
		delete(before, now.File.Name)
		switch {
		case old != nil && same(old.File, now):
			batch.Every = append(batch.Every, old)
		case old != nil && patient && now.File.Whole == "" && old.File.File.Whole != "":
			unsure = true
			batch.Every = append(batch.Every, old)
		default:
			l := &Linted{File: now, Outcome: lint.Examine([]*load.Loaded{now}, s.Rules)}
			batch.Every = append(batch.Every, l)
			batch.Changed = append(batch.Changed, l)
			if old == nil || old.File.File.Whole != now.File.Whole {
				batch.Saved = append(batch.Saved, now.File.Name)
			}
		}
	}
	for _, l := range s.every {
		if name := l.File.File.Name; before[name] != nil {
			batch.Gone = append(batch.Gone, name)
		}
	}
	if err == nil {
		s.unread = ""
	} else if err.Error() != s.unread { // once is enough
		s.unread, batch.Unread = err.Error(), err
	}
	s.every = batch.Every
	return batch, unsure
}

// same says whether a file and all that its findings depend on are as they were.
func same(a, b *load.Loaded) bool {
	if a == nil || b == nil {
		return a == b
	}
	alike := func(a, b load.Used) bool {
		return a.File.Name == b.File.Name && a.File.Whole == b.File.Whole && (a.Err == nil) == (b.Err == nil)
	}
	return a.File.Name == b.File.Name && a.File.Whole == b.File.Whole && same(a.Policy, b.Policy) &&
		slices.EqualFunc(a.Uses(), b.Uses(), alike)
}

// names lists the files of the last look, and those that they use.
func (s *state) names() []string {
	var names []string
	for _, l := range s.every {
		names = append(names, l.File.File.Name)
		for _, u := range l.File.Uses() {
			names = append(names, u.File.Name)
		}
	}
	return names
}
