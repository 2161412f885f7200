package watch

import (
	"context"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/fsnotify/fsnotify"

	"fairlead/lang/load"
	"fairlead/lang/markdown"
)

// bell rings when something may have changed.
type bell struct {
	Options
	// watcher is nil while polling.
	watcher *fsnotify.Watcher
	// rung are the changes seen by either way.
	rung chan struct{}
	stop chan struct{}

	mu sync.Mutex
	// seen are the files of the last look.
	seen []string
}

func newBell(o Options) (*bell, error) {
	b := &bell{Options: o, rung: make(chan struct{}, 1), stop: make(chan struct{})}
	if o.Poll > 0 {
		go b.poll(b.stamp()) // as it is before the first look
		return b, nil
	}
	watcher, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	b.watcher = watcher
	go b.listen()
	return b, nil
}

func (b *bell) close() {
	close(b.stop)
	if b.watcher != nil {
		_ = b.watcher.Close() // nothing was written to it
	}
}

func (b *bell) ring() {
	select {
	case b.rung <- struct{}{}:
	default: // it rings already
	}
}

// listen rings at events about files and folders that may matter.
func (b *bell) listen() {
	for {
		select {
		case e, open := <-b.watcher.Events:
			if !open {
				return
			}
			if b.concerns(e.Name) {
				b.ring()
			}
		case _, open := <-b.watcher.Errors: // too many events: some are lost
			if !open {
				return
			}
			b.ring()
		}
	}
}

// matters says whether a change of this name may change what is linted: it is a rig file,
// notes, or perhaps a folder. The files that editors keep beside the one that they write
// are none.
func matters(name string) bool {
	base := filepath.Base(name)
	if strings.HasPrefix(base, ".") || strings.HasPrefix(base, "#") || strings.HasSuffix(base, "~") {
		return false
	}
	return strings.HasSuffix(base, ".rig") || markdown.Is(base) || filepath.Ext(base) == ""
}

// concerns says whether a change is one of ours: it is within what is watched, leads
// there, or is of house rules above or of a file that was seen. Much else happens in the
// folders above.
func (b *bell) concerns(name string) bool {
	if !matters(name) {
		return false
	}
	abs, err := filepath.Abs(name)
	if err != nil || filepath.Base(abs) == load.PolicyName {
		return true
	}
	for _, p := range append(b.named(), b.known()...) {
		of, err := filepath.Abs(p)
		if err != nil || within(abs, of) || within(of, abs) {
			return true
		}
	}
	return false
}

// within says whether a path is a folder or something in it.
func within(path, folder string) bool {
	return path == folder || strings.HasPrefix(path, strings.TrimSuffix(folder, string(filepath.Separator))+string(filepath.Separator))
}

// attend watches every folder that may hold a file that matters: those of the paths, and
// those of the files that were seen, which may lie behind a link or be named by a file.
// Watching one twice does nothing; one that is gone is not watched any more. It says
// whether other files were seen than the last time.
func (b *bell) attend(seen []string) (others bool) {
	b.mu.Lock()
	others = !slices.Equal(b.seen, seen)
	b.seen = seen
	b.mu.Unlock()
	if b.watcher == nil {
		return others
	}
	for _, folder := range b.folders() {
		_ = b.watcher.Add(folder) // one that has just gone: its parent says so
	}
	return others
}

// poll rings when the sizes or times of the files are other than they were last.
func (b *bell) poll(last string) {
	tick := time.NewTicker(b.Poll)
	defer tick.Stop()
	for {
		select {
		case <-b.stop:
			return
		case <-tick.C:
			if now := b.stamp(); now != last {
				last = now
				b.ring()
			}
		}
	}
}

// wait waits until it rings and the burst is over; false if the context ended.
func (b *bell) wait(ctx context.Context) bool {
	select {
	case <-ctx.Done():
		return false
	case <-b.rung:
	}
	longest := time.After(b.Longest)
	for {
		select {
		case <-ctx.Done():
			return false
		case <-b.rung:
		case <-longest:
			return true
		case <-time.After(b.Quiet):
			return true
		}
	}
}

// pause waits out an editor that has emptied a file; false if the context ended.
func (b *bell) pause(ctx context.Context) bool {
	select {
	case <-ctx.Done():
		return false
	case <-time.After(3 * b.Quiet):
		return true
	}
}
