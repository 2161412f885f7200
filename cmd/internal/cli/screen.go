package cli

import (
	"fmt"
	"io"
	"regexp"
	"strings"

	"fairlead/solve/report/page"
)

// colours are the commands with which a terminal changes colour.
var colours = regexp.MustCompile("\x1b\\[[0-9;]*m")

// screen writes texts one in place of the other, as long as that clears nothing else.
type screen struct {
	out io.Writer
	// size gives the columns and rows of the terminal; an error if it is none.
	size func() (columns, rows int, err error)
	// lines is how many lines of the screen the last text took.
	lines int
}

// show writes a text over the last one. What has scrolled off the screen stays.
func (s *screen) show(text string) error {
	if columns, rows, err := s.size(); err == nil {
		if 0 < s.lines && s.lines < rows {
			fmt.Fprintf(s.out, "\x1b[%dA\x1b[J", s.lines) // up so many lines, and clear from there
		}
		s.lines = 0
		for _, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
			s.lines += 1 + max(0, page.Width(colours.ReplaceAllString(line, ""))-1)/max(columns, 1)
		}
	}
	_, err := io.WriteString(s.out, text)
	return err
}
