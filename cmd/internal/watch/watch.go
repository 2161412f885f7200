package watch

import (
	"context"
	"time"

	"fairlead/lang/load"
	"fairlead/lint"
)

// Options say what is watched, and how.
type Options struct {
	// Paths are files and folders, as the command line names them.
	Paths []string
	// Policy is the file of house rules for all; empty for the nearest of each.
	Policy string
	Rules  []*lint.Rule
	// Quiet is how long nothing may happen before a burst counts as over, Longest how
	// long a burst may last before what there is of it is looked at all the same.
	Quiet, Longest time.Duration
	// Poll is how often to look where events do not reach; 0 to rely on events.
	Poll time.Duration
}

// The usual waits: shorter than a hand takes from the keyboard to the screen, longer
// than an editor takes to put a file in place.
const (
	Quiet   = 60 * time.Millisecond
	Longest = 500 * time.Millisecond
)

// Linted is one file with what was found in it.
type Linted struct {
	File    *load.Loaded
	Outcome lint.Outcome
}

// Batch is what comes of one look at the files.
type Batch struct {
	// First says that it is the look at the start.
	First bool
	// Changed are the files that are new or differ, themselves or in what they depend
	// on, in the order of Every.
	Changed []*Linted
	// Saved are the names of those that are new or differ themselves.
	Saved []string
	// Gone are the names of files that were there before.
	Gone []string
	// Every are all files as they are now.
	Every []*Linted
	// Unread names what could not be read; nil if all could.
	Unread error
}

// Run lints the files, and again after each save, until the context ends or show
// fails. Show is called at the start and whenever something has changed.
func Run(ctx context.Context, o Options, show func(Batch) error) error {
	bell, err := newBell(o)
	if err != nil {
		return err
	}
	defer bell.close()
	bell.attend(nil) // before the first look, so that nothing is missed after it
	s := &state{Options: o}
	batch, _ := s.look(false)
	batch = s.again(bell, batch)
	batch.First = true
	for {
		if batch.First || batch.news() {
			if err := show(batch); err != nil {
				return err
			}
		}
		if !bell.wait(ctx) {
			return nil
		}
		// Folders first: what is saved in a new one from now on rings again.
		bell.attend(s.names())
		var unsure bool
		if batch, unsure = s.look(true); unsure {
			if !bell.pause(ctx) {
				return nil
			}
			more, _ := s.look(false)
			batch = batch.and(more)
		}
		batch = s.again(bell, batch)
	}
}

// again looks once more if the files use others than before: what was saved in those
// before they were watched did not ring.
func (s *state) again(bell *bell, batch Batch) Batch {
	if !bell.attend(s.names()) {
		return batch
	}
	more, unsure := s.look(true)
	if unsure {
		bell.ring()
	}
	return batch.and(more)
}

// news says whether there is something to show.
func (b Batch) news() bool { return len(b.Changed) > 0 || len(b.Gone) > 0 || b.Unread != nil }

// and adds a later look.
func (b Batch) and(later Batch) Batch {
	later.Gone = append(b.Gone, later.Gone...)
	later.Saved = append(b.Saved, later.Saved...)
	if later.Unread == nil {
		later.Unread = b.Unread
	}
	changed := map[string]bool{}
	for _, list := range [][]*Linted{b.Changed, later.Changed} {
		for _, l := range list {
			changed[l.File.File.Name] = true
		}
	}
	later.Changed = nil
	for _, l := range later.Every {
		if changed[l.File.File.Name] {
			later.Changed = append(later.Changed, l)
		}
	}
	return later
}
