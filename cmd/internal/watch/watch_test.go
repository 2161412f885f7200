package watch_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/cmd/internal/watch"
	"fairlead/lint/rules"
)

const (
	right = "anchor head\nload sack\nhauler team\npulley top on head holds sack\nrope long\nreeve long: sack / top \\ team\n"
	wrong = "load sack\n" + right
)

// soon is how long a machine that is busy may take; much longer than it should.
const soon = 10 * time.Second

// watched is a watch of a folder that is going on.
type watched struct {
	*testing.T
	folder  string
	batches chan watch.Batch
	// findings are the rules found in each file, as far as was said.
	findings map[string][]string
}

// start watches a new folder with some files, and waits for the first look.
func start(t *testing.T, poll time.Duration, files map[string]string) *watched {
	t.Helper()
	w := &watched{T: t, folder: t.TempDir(), batches: make(chan watch.Batch, 1000), findings: map[string][]string{}}
	for name, text := range files {
		w.save(name, text)
	}
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan error)
	o := watch.Options{Paths: []string{w.folder}, Rules: rules.All(), Poll: poll, Quiet: 20 * time.Millisecond, Longest: 200 * time.Millisecond}
	go func() {
		done <- watch.Run(ctx, o, func(b watch.Batch) error { w.batches <- b; return nil })
	}()
	t.Cleanup(func() {
		stop()
		select {
		case err := <-done:
			assert.NoError(t, err)
		case <-time.After(soon):
			t.Error("it does not stop")
		}
	})
	b := <-w.batches
	require.True(t, b.First)
	w.take(b)
	return w
}

func (w *watched) path(name string) string { return filepath.Join(w.folder, name) }

func (w *watched) save(name, text string) {
	w.Helper()
	require.NoError(w, os.MkdirAll(filepath.Dir(w.path(name)), 0o755))
	require.NoError(w, os.WriteFile(w.path(name), []byte(text), 0o644))
}

// take notes what a batch says.
func (w *watched) take(b watch.Batch) {
	for _, l := range b.Changed {
		found := []string{}
		for _, d := range l.Outcome.Findings {
			if d.Rule == "duplicate-name" || d.Rule == "no-capture" { // no matter what else there is to say
				found = append(found, d.Rule)
			}
		}
		w.findings[w.short(l.File.File.Name)] = found
	}
	for _, name := range b.Gone {
		delete(w.findings, w.short(name))
	}
}

func (w *watched) short(name string) string {
	rel, err := filepath.Rel(w.folder, name)
	require.NoError(w, err)
	return filepath.ToSlash(rel)
}

// until waits until the findings are those wanted.
func (w *watched) until(want map[string][]string) {
	w.Helper()
	end := time.After(soon)
	for !assert.ObjectsAreEqual(want, w.findings) {
		select {
		case b := <-w.batches:
			w.take(b)
		case <-end:
			require.Equal(w, want, w.findings)
		}
	}
}

// quiet requires that nothing more is said for a while.
func (w *watched) quiet() {
	w.Helper()
	select {
	case b := <-w.batches:
		w.take(b)
		assert.Fail(w, "something is said", "%v saved, %v gone", b.Saved, b.Gone)
	case <-time.After(400 * time.Millisecond):
	}
}

type found = map[string][]string

var clean, duplicate = []string{}, []string{"duplicate-name"}

// both runs a test with events and with polling.
func both(t *testing.T, files map[string]string, test func(*watched)) {
	t.Run("events", func(t *testing.T) { test(start(t, 0, files)) })
	t.Run("polling", func(t *testing.T) { test(start(t, 20*time.Millisecond, files)) })
}

func TestSaves(t *testing.T) {
	both(t, map[string]string{"a.rig": right, "b.rig": wrong}, func(w *watched) {
		w.until(found{"a.rig": clean, "b.rig": duplicate})

		w.save("a.rig", wrong) // in place
		w.until(found{"a.rig": duplicate, "b.rig": duplicate})

		w.save("a.rig.tmp", right) // by a file beside it
		require.NoError(w, os.Rename(w.path("a.rig.tmp"), w.path("a.rig")))
		w.until(found{"a.rig": clean, "b.rig": duplicate})

		w.save("b.rig", "") // emptied first, then written
		time.Sleep(5 * time.Millisecond)
		w.save("b.rig", right)
		w.until(found{"a.rig": clean, "b.rig": clean})

		require.NoError(w, os.Rename(w.path("b.rig"), w.path("b.rig~"))) // the old one kept beside the new
		w.save("b.rig", wrong)
		w.until(found{"a.rig": clean, "b.rig": duplicate})
		w.save("a.rig", wrong) // and still watched
		w.until(found{"a.rig": duplicate, "b.rig": duplicate})
	})
}

func TestFilesComeAndGo(t *testing.T) {
	both(t, map[string]string{"a.rig": right}, func(w *watched) {
		w.save("new/deep/b.rig", wrong)
		w.until(found{"a.rig": clean, "new/deep/b.rig": duplicate})
		w.save("new/deep/b.rig", right)
		w.until(found{"a.rig": clean, "new/deep/b.rig": clean})
		require.NoError(w, os.Rename(w.path("new"), w.path("old")))
		w.until(found{"a.rig": clean, "old/deep/b.rig": clean})
		w.save("old/deep/b.rig", wrong)
		w.until(found{"a.rig": clean, "old/deep/b.rig": duplicate})
		require.NoError(w, os.RemoveAll(w.path("old")))
		w.until(found{"a.rig": clean})
		w.save("old/deep/b.rig", wrong)
		w.until(found{"a.rig": clean, "old/deep/b.rig": duplicate})
		require.NoError(w, os.Remove(w.path("a.rig")))
		w.until(found{"old/deep/b.rig": duplicate})
		w.save("notes.md", "# Notes\n\n```rig\n"+wrong+"```\n")
		w.until(found{"old/deep/b.rig": duplicate, "notes.md": duplicate})
	})
}

func TestHouseRulesCount(t *testing.T) {
	bare := "anchor head\nload sack\nhauler team\npulley top on head\nrope long\nreeve long: sack / top \\ team\n"
	both(t, map[string]string{"in/a.rig": bare}, func(w *watched) {
		w.until(found{"in/a.rig": {"no-capture"}})
		w.save("policy.rig", "policy p\nrule no-capture off\n")
		w.until(found{"in/a.rig": clean, "policy.rig": clean})
		w.save("in/policy.rig", "policy q\n")
		w.until(found{"in/a.rig": {"no-capture"}, "policy.rig": clean, "in/policy.rig": clean})
		require.NoError(w, os.Remove(w.path("in/policy.rig")))
		w.until(found{"in/a.rig": clean, "policy.rig": clean})
	})
}

func TestWhatEditorsKeepBesideIsPassedBy(t *testing.T) {
	both(t, map[string]string{"a.rig": right}, func(w *watched) {
		for _, name := range []string{".a.rig.swp", ".#a.rig", "#a.rig#", "a.rig~", "a.txt", ".hidden/b.rig"} {
			w.save(name, wrong)
		}
		w.save("4913", "") // the file with which an editor tries whether it may write
		require.NoError(w, os.Remove(w.path("4913")))
		w.save("a.rig", right) // saved as it was
		w.quiet()
	})
}

func TestABurstIsOneBatchOrFew(t *testing.T) {
	files := map[string]string{}
	want := found{}
	for i := range 40 {
		name := fmt.Sprintf("r%02d.rig", i)
		files[name], want[name] = right, duplicate
	}
	both(t, files, func(w *watched) {
		for range 5 {
			for name := range files {
				w.save(name, wrong)
			}
		}
		before := len(w.batches)
		w.until(want)
		assert.Less(w, before+len(w.batches), 20)
	})
}

func TestAnEmptiedFileIsSeenInTheEnd(t *testing.T) {
	both(t, map[string]string{"a.rig": wrong}, func(w *watched) {
		w.save("a.rig", "")
		w.until(found{"a.rig": clean})
	})
}

func TestShowEndsTheWatch(t *testing.T) {
	folder := t.TempDir()
	err := watch.Run(context.Background(), watch.Options{Paths: []string{folder}, Rules: rules.All()},
		func(watch.Batch) error { return os.ErrClosed })
	assert.ErrorIs(t, err, os.ErrClosed)
}

// A file that another one uses is watched too, wherever it lies, and if it is not there
// yet.
func TestUsedFiles(t *testing.T) {
	for _, poll := range []time.Duration{0, 30 * time.Millisecond} {
		outside := t.TempDir()
		used := filepath.Join(outside, "a.rig")
		w := start(t, poll, map[string]string{
			"yard.rig": fmt.Sprintf("use \"../%s/a.rig\"\nrig b\ninclude stage as x\n", filepath.Base(outside)),
		})
		w.until(map[string][]string{"yard.rig": {}})
		open := "anchor head\nload sack\nhauler team\npulley top on head\nrope long\nreeve long: sack / top \\ team\n"
		require.NoError(t, os.WriteFile(used, []byte("rig stage\n"+open), 0o644))
		w.until(map[string][]string{"yard.rig": {"no-capture"}})
		require.NoError(t, os.WriteFile(used, []byte("rig stage\n"+right), 0o644))
		w.until(map[string][]string{"yard.rig": {}})
	}
}
