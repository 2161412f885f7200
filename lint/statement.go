package lint

import (
	"slices"
	"strconv"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// Unclip gives the edit that takes "on PART" out of a part's statement; ok is false if
// it has none.
func (p *Pass) Unclip(part *model.Part) (edit diag.Edit, ok bool) {
	s := p.statement(part)
	if s == nil || part.On == nil {
		return edit, false
	}
	for _, t := range s.Tokens {
		if t.Text == "on" && t.Span.End <= part.OnPlace.Span.Start {
			span := t.Span.To(part.OnPlace.Span)
			return takeOut(p.file.File, span)[0], true
		}
	}
	return edit, false
}

// Become gives the edits that make a part one of another kind, without the clauses that
// it does not take; ok is false if it has a model, which is one of its kind.
func (p *Pass) Become(part *model.Part, kind model.Kind) (edits []diag.Edit, ok bool) {
	s := p.statement(part)
	if s == nil || part.Model != "" {
		return nil, false
	}
	edits = append(edits, diag.Edit{Place: p.file.File.At(s.Keyword.Span), NewText: string(kind)})
	takes := syntax.ClausesOf(string(kind))
	var drop []source.Span
	for _, c := range s.Body.(*syntax.Part).Clauses {
		if !slices.Contains(takes, c.Word.Text) {
			drop = append(drop, c.Span)
		}
	}
	return append(edits, takeOut(p.file.File, drop...)...), true
}

// TieTo gives the edit that adds a line of its own between a part and people, below the
// last reeving line of the rig, and what it adds in words; ok is false in a rig without
// one.
func (p *Pass) TieTo(part *model.Part, stroke model.Stroke, people *model.Part) (edit diag.Edit, how string, ok bool) {
	if len(p.Rig.Ropes) == 0 {
		return edit, "", false
	}
	name := "strap"
	for n := 2; p.Rig.Part(name) != nil; n++ {
		name = "strap" + strconv.Itoa(n)
	}
	how = "reeve " + name + ": " + part.Name + " " + stroke.String() + " " + people.Name
	file, last := p.file.File, p.Rig.Ropes[len(p.Rig.Ropes)-1].Place
	if !p.OwnText(last) {
		return edit, how, false
	}
	newLine := "\n"
	end := file.LineSpan(file.Line(last.Span.End)).End
	if strings.HasPrefix(file.Text[end:], "\r\n") {
		newLine = "\r\n"
	}
	at := file.At(source.Span{Start: end, End: end})
	return diag.Edit{Place: at, NewText: newLine + "rope " + name + newLine + how}, how, true
}
