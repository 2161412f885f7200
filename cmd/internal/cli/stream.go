package cli

import (
	"bufio"
	"errors"
	"io"
	"os"

	"github.com/mattn/go-isatty"
	"golang.org/x/term"

	"fairlead/solve/report/page"
)

// stream is a buffered standard stream that knows whether it is a terminal.
type stream struct {
	*bufio.Writer
	terminal bool
	file     *os.File
}

// size gives the columns and rows of the terminal; an error if it is none.
func (s *stream) size() (columns, rows int, err error) {
	if !s.terminal {
		return 0, 0, errors.New("no terminal")
	}
	return term.GetSize(int(s.file.Fd()))
}

func newStream(w io.Writer) *stream {
	s := &stream{Writer: bufio.NewWriter(w)}
	if f, ok := w.(*os.File); ok {
		s.file = f
		s.terminal = isatty.IsTerminal(f.Fd()) || isatty.IsCygwinTerminal(f.Fd())
	}
	return s
}

// The ways to colour.
const (
	colorAuto   = "auto"
	colorAlways = "always"
	colorNever  = "never"
)

func colorChoice() *choice { return newChoice(colorAuto, colorAlways, colorNever) }

// paint decides for one stream whether it is coloured: as --color says, else only
// a terminal that can, and never with NO_COLOR set (no-color.org).
func (t *tool) paint(s *stream) page.Paint {
	switch t.color.value {
	case colorAlways:
		return page.Colours()
	case colorNever:
		return page.Paint{}
	}
	if s.terminal && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb" {
		return page.Colours()
	}
	return page.Paint{}
}
