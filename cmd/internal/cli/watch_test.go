package cli

import (
	"bufio"
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// started is the program running by itself.
type started struct {
	*exec.Cmd
	lines chan string
}

// start runs the program with its standard output at hand.
func start(t *testing.T, args ...string) *started {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	s := &started{Cmd: exec.Command(self), lines: make(chan string, 100)}
	s.Args = append([]string{"fairlead"}, args...)
	out, err := s.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, s.Start())
	t.Cleanup(func() { _ = s.Process.Kill() })
	go func() {
		for in := bufio.NewScanner(out); in.Scan(); {
			s.lines <- in.Text()
		}
		close(s.lines)
	}()
	return s
}

func (s *started) line(t *testing.T) string {
	t.Helper()
	select {
	case line := <-s.lines:
		return line
	case <-time.After(10 * time.Second):
		require.Fail(t, "nothing is said")
		return ""
	}
}

// published is the part of a line that the test reads.
type published struct {
	URI         string
	Diagnostics []struct {
		Code, Source, Message string
		Severity              int
		Range                 struct{ Start, End struct{ Line, Character int } }
	}
}

func TestWatchAsOneObjectALine(t *testing.T) {
	folder := t.TempDir()
	file := filepath.Join(folder, "a é.rig")
	save := func(text string) { require.NoError(t, os.WriteFile(file, []byte(text), 0o644)) }
	save("anchor head\n")
	s := start(t, "watch", "--format", "jsonl", folder)
	read := func() published {
		var p published
		line := json.NewDecoder(strings.NewReader(s.line(t)))
		require.NoError(t, line.Decode(&p))
		assert.Equal(t, "file://"+filepath.ToSlash(filepath.Join(folder, "a%20%C3%A9.rig")), p.URI)
		return p
	}
	assert.Len(t, read().Diagnostics, 1, "it touches no rope")
	save("# é 🪢\nanchor head\nload 🪢 head\n")
	p := read()
	var bad bool
	for _, d := range p.Diagnostics {
		if d.Code == "bad-character" {
			bad = true
			assert.Equal(t, 1, d.Severity)
			assert.Equal(t, "fairlead", d.Source)
			assert.Equal(t, []int{2, 5, 2, 7}, []int{d.Range.Start.Line, d.Range.Start.Character, d.Range.End.Line, d.Range.End.Character})
		}
	}
	assert.True(t, bad)
	require.NoError(t, os.Remove(file))
	assert.Empty(t, read().Diagnostics, "what is gone has no findings")
	if runtime.GOOS == "windows" {
		return // no signal asks a program there to end
	}
	require.NoError(t, s.Process.Signal(os.Interrupt))
	for range s.lines {
	}
	assert.NoError(t, s.Wait(), "it ends cleanly")
}

func TestScreenClearsOnlyWhatItWrote(t *testing.T) {
	var out strings.Builder
	s := &screen{out: &out, size: func() (int, int, error) { return 10, 5, nil }}
	require.NoError(t, s.show("one\ntwo\n"))
	assert.Equal(t, "one\ntwo\n", out.String(), "the first text clears nothing")
	out.Reset()
	require.NoError(t, s.show("\x1b[1mtwelve chars\x1b[0m\n"))
	assert.Equal(t, "\x1b[2A\x1b[J\x1b[1mtwelve chars\x1b[0m\n", out.String())
	out.Reset()
	require.NoError(t, s.show("x\n"))
	assert.True(t, strings.HasPrefix(out.String(), "\x1b[2A\x1b[J"), "it took two lines of the screen: %q", out.String())
	require.NoError(t, s.show(strings.Repeat("y\n", 5)))
	out.Reset()
	require.NoError(t, s.show("z\n"))
	assert.Equal(t, "z\n", out.String(), "what has scrolled off cannot be cleared")
}

func TestScreenThatIsNoTerminal(t *testing.T) {
	var out strings.Builder
	s := &screen{out: &out, size: func() (int, int, error) { return 0, 0, errors.New("none") }}
	require.NoError(t, s.show("one\n"))
	require.NoError(t, s.show("two\n"))
	assert.Equal(t, "one\ntwo\n", out.String())
}
