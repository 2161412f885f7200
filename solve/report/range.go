package report

import "fairlead/lang/source"

// Position is a place in a file as editors count: line and character from 0,
// characters in UTF-16 code units.
type Position struct {
	Line      int `json:"line"`
	Character int `json:"character"`
}

// Range is a part of a file; its end is not in it.
type Range struct {
	Start Position `json:"start"`
	End   Position `json:"end"`
}

// RangeOf gives the range of a place; the zero range for the zero place.
func RangeOf(p source.Place) Range {
	if p.File == nil {
		return Range{}
	}
	at := func(offset int) Position {
		line, character := p.File.UTF16(offset)
		return Position{Line: line, Character: character}
	}
	return Range{Start: at(p.Span.Start), End: at(p.Span.End)}
}

// FileName gives the name of a place's file as machine output writes it.
func FileName(p source.Place) string {
	if p.File == nil {
		return ""
	}
	return p.File.Name
}
