package ide

import (
	"path"
	"slices"
	"strings"

	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/lint/rules"
)

// Hover is what is said of the thing at a place.
type Hover struct {
	// Text is Markdown; names in it stand between backticks.
	Text string
	Span source.Span
}

// Hover says what stands at a place: of a part what it carries, of a stroke its
// tension, of a rule its page, of a word of the notation what the manual says. Ok is
// false where there is nothing to say.
func (d *Document) Hover(offset int) (h Hover, ok bool) {
	token, ok := d.tokenAt(offset)
	st := d.statementAt(offset)
	if !ok || st == nil || token.Kind == syntax.CommentToken {
		return Hover{}, false
	}
	text, span := "", token.Span
	switch m, named := d.mentionAt(offset); {
	case token.Kind == syntax.StrokeToken:
		text = d.strokeHover(token.Span)
	case named && !m.vague:
		text, span = d.nameHover(m), m.span
	case token.Kind == syntax.WordToken || token.Kind == syntax.UnitToken:
		text = d.wordHover(st, token)
	}
	return Hover{Text: text, Span: span}, text != ""
}

// nameHover says what a name is the name of.
func (d *Document) nameHover(m mention) string {
	switch m.sort {
	case partName:
		return d.partHover(m)
	case rigName:
		return d.rigHover(m)
	case modelName:
		if s := d.model(m.kind, m.name); s != nil {
			return modelText(s)
		}
	case copyName:
		return d.copyHover(m)
	case fileName:
		return d.fileHover(m)
	case ruleName:
		page, _ := rules.Page(m.name)
		return page
	}
	return ""
}

// mostRigs is how many rigs a hover tells of where one place is in several.
const mostRigs = 5

// partHover says what a part carries, then what it is.
func (d *Document) partHover(m mention) string {
	var paragraphs []string
	var what string
	for _, r := range d.rigsOf(m) {
		p := d.Model.Rigs[r].Part(m.whole)
		if p == nil {
			continue
		}
		if len(paragraphs) == mostRigs {
			paragraphs = append(paragraphs, "…")
			break
		}
		in := ""
		if m.in == shared && len(d.Model.Rigs) > 1 {
			in = "in " + code(d.Model.Rigs[r].Name) + " "
		}
		paragraphs = append(paragraphs, in+d.partFigures(r, p))
		what = partText(p)
	}
	if what == "" {
		return ""
	}
	return strings.Join(append(paragraphs, what), "\n\n")
}

// rigsOf lists the rigs in which a mention names a part.
func (d *Document) rigsOf(m mention) []int {
	if m.in >= 0 && m.in < len(d.Model.Rigs) {
		return []int{m.in}
	}
	var list []int
	if m.in == shared {
		for i := range d.Model.Rigs {
			list = append(list, i)
		}
	}
	return list
}

// partFigures says what a part carries, and what becomes of the rig without it.
func (d *Document) partFigures(rig int, p *model.Part) string {
	f := d.figures(rig)
	if f == nil {
		return code(p.Name)
	}
	said := code(p.Name) + " " + f.Part(f.part(p))
	if lost := f.Without(f.part(p)); lost != "" {
		said += "; " + lost
	}
	if d.Model.Rigs[rig].Incomplete {
		said += " (not the whole rig: an error left something out)"
	}
	return said
}

// partText says what a part is: its statement, its comment, what its model gives it.
func partText(p *model.Part) string {
	kind, _ := syntax.KindNamed(string(p.Kind))
	paragraphs := []string{code(strings.Join(strings.Fields(p.Place.Text()), " ")) + ": " + kind.Meaning}
	if len(p.Doc) > 0 {
		paragraphs = append(paragraphs, escape(strings.Join(p.Doc, " ")))
	}
	if p.Stock != nil {
		paragraphs = append(paragraphs, modelText(p.Stock))
	}
	return strings.Join(paragraphs, "\n\n")
}

// modelText says the values of a model, what it is and where they come from.
func modelText(s *model.Stock) string {
	var values []string
	for _, c := range s.Clauses {
		values = append(values, s.Place.File.Slice(c.Span))
	}
	text := code(s.Model.Text) + ", a model of " + s.Kind.Text
	if len(values) > 0 {
		text += ": " + strings.Join(values, ", ")
	}
	if doc := strings.Join(s.Doc, " "); doc != "" && doc != s.Source {
		text += ". " + escape(doc)
	}
	if s.Source != "" {
		text += "\n\nSource: " + escape(s.Source)
	}
	return text
}

// rigHover says what a rig does; of a used file's rig, which is solved there, what it is.
func (d *Document) rigHover(m mention) string {
	r := d.rigNamed(m.name)
	if r == nil {
		return ""
	}
	text := code(r.Name)
	if i := slices.Index(d.Model.Rigs, r); i < 0 {
		text += ", a rig of " + code(path.Base(r.Place.File.Name))
	} else if f := d.figures(i); f != nil {
		text += ": " + f.Line()
	}
	if r.Title != "" {
		text += "\n\n" + escape(r.Title)
	}
	return text
}

// copyHover says of what a copy is one.
func (d *Document) copyHover(m mention) string {
	for _, r := range d.rigsIn(m.rig) {
		for _, in := range r.Includes {
			if in.As.Text == m.name {
				text := code(m.name) + ": a copy of " + code(in.Rig.Text)
				if in.Of != nil && in.Of.Title != "" {
					text += "\n\n" + escape(in.Of.Title)
				}
				return text
			}
		}
	}
	return ""
}

// fileHover says what a used file brings in.
func (d *Document) fileHover(m mention) string {
	used := d.used(m.name)
	if used == nil {
		return ""
	}
	var rigs, models []string
	for _, r := range used.Rigs {
		rigs = append(rigs, code(r.Name))
	}
	for _, s := range used.Stock {
		models = append(models, s.Kind.Text+" "+code(s.Model.Text))
	}
	var brought []string
	if len(rigs) > 0 {
		brought = append(brought, "rigs: "+strings.Join(rigs, ", "))
	}
	if len(models) > 0 {
		brought = append(brought, "models: "+strings.Join(models, ", "))
	}
	if len(brought) == 0 {
		return code(m.name) + " has neither rigs nor models"
	}
	return code(m.name) + " brings in\n\n" + strings.Join(brought, "\n\n")
}

// strokeHover says what a stroke carries in each phase.
func (d *Document) strokeHover(span source.Span) string {
	var paragraphs []string
	for i, r := range d.Model.Rigs {
		for _, rope := range r.Ropes {
			for k, place := range rope.StrokePlaces {
				if place.File != d.File || place.Span != span || len(paragraphs) > mostRigs {
					continue
				}
				in := ""
				if len(d.rigsAt(span.Start)) > 1 {
					in = "in " + code(r.Name) + " "
				}
				f := d.figures(i)
				if f == nil {
					return ""
				}
				strand := rope.Nodes[k].Name() + " " + rope.Strokes[k].String() + " " + rope.Nodes[rope.After(k)].Name()
				paragraphs = append(paragraphs, in+code(strand)+": "+f.StrandInPhases(f.rope(rope), k))
			}
		}
	}
	return strings.Join(paragraphs, "\n\n")
}

// code sets a piece of notation between backticks.
func code(text string) string {
	return "`" + strings.ReplaceAll(text, "`", "'") + "`"
}

// escape keeps a text that an author wrote from being read as Markdown.
func escape(text string) string {
	return markdown.Replace(text)
}

var markdown = strings.NewReplacer(`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`, "<", "&lt;", ">", "&gt;", "#", `\#`)
