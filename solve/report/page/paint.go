package page

import "github.com/fatih/color"

// Style is a way to print a word. Colour only repeats what the words say, so a
// page without colour loses nothing.
type Style int

// The styles.
const (
	// Plain is the text as it is.
	Plain Style = iota
	// Strong is for the answer: the result of a rig, the culprit of a finding.
	Strong
	// Faint is for what carries nothing, and for what is read once.
	Faint
	// Alarm is for the mark of an error.
	Alarm
	// Caution is for the mark of a warning.
	Caution
)

// Paint prints styles, or leaves text as it is. The zero Paint is plain.
type Paint struct {
	styles map[Style]*color.Color
}

// Colours gives a Paint that prints styles as terminal attributes. The caller
// decides from the stream that is written to, so what the colour library finds
// out about standard output does not count.
func Colours() Paint {
	styles := map[Style]*color.Color{
		Strong:  color.New(color.Bold),
		Faint:   color.New(color.Faint),
		Alarm:   color.New(color.Bold, color.FgMagenta),
		Caution: color.New(color.Bold, color.FgCyan),
	}
	for _, c := range styles {
		c.EnableColor()
	}
	return Paint{styles: styles}
}

// Set gives the text in a style.
func (p Paint) Set(style Style, text string) string {
	c, ok := p.styles[style]
	if !ok || text == "" {
		return text
	}
	return c.Sprint(text)
}
