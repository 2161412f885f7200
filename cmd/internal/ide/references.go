package ide

import (
	"fairlead/lang/source"
	"fairlead/lint/rules"
)

// Reference is one place where a name is written.
type Reference struct {
	Place source.Place
	// Declares says that the name is given here.
	Declares bool
}

// References gives every place in the document where the name at a place is written,
// in file order; nil where there is no name.
func (d *Document) References(offset int) []Reference {
	m, ok := d.mentionAt(offset)
	if !ok {
		return nil
	}
	var list []Reference
	for _, other := range d.same(m) {
		list = append(list, Reference{d.File.At(other.span), other.declares})
	}
	return list
}

// same gives the mentions of the same thing. What stands before the first rig belongs
// to every rig: a name that is written there means one thing in all of them.
func (d *Document) same(m mention) []mention {
	common := false
	if m.rig == elsewhere {
		return d.sameElsewhere(m)
	}
	for _, other := range d.all() {
		common = common || other.rig == shared && other.means(m)
	}
	var list []mention
	for _, other := range d.all() {
		if other.means(m) && (other.rig == m.rig || common && other.rig != elsewhere) {
			list = append(list, other)
		}
	}
	return list
}

// sameElsewhere is same for a part of a rig of another file.
func (d *Document) sameElsewhere(m mention) []mention {
	var list []mention
	for _, other := range d.all() {
		if other.rig == elsewhere && other.means(m) && other.whole == m.whole && other.in == m.in {
			list = append(list, other)
		}
	}
	return list
}

// means says whether two mentions in one rig mean the same thing. A part may not have
// the name of a copy, so that these two are one sort.
func (m mention) means(other mention) bool {
	return m.name == other.name && m.sort == other.sort && m.kind == other.kind
}

// Definition gives the places where the name at a place is given: of a part, a rig or a
// model its statement, of a rule its page, of a file its start.
func (d *Document) Definition(offset int) []source.Place {
	m, ok := d.mentionAt(offset)
	if !ok {
		return nil
	}
	switch m.sort {
	case ruleName:
		if page, ok := PageOf(m.name); ok {
			return []source.Place{page.At(source.Span{})}
		}
		return nil
	case modelName:
		if s := d.model(m.kind, m.name); s != nil {
			return []source.Place{s.Place.File.At(s.Model.Span)}
		}
		return nil
	case fileName:
		if used := d.used(m.name); used != nil {
			return []source.Place{used.Source.At(source.Span{})}
		}
		return nil
	}
	var list []source.Place
	for _, other := range d.same(m) {
		if other.declares {
			list = append(list, d.File.At(other.span))
		}
	}
	if len(list) == 0 {
		list = d.definedElsewhere(m)
	}
	return list
}

// definedElsewhere gives the place in a used file where a rig, or a part of one, is named.
func (d *Document) definedElsewhere(m mention) []source.Place {
	switch m.sort {
	case rigName:
		if r := d.rigNamed(m.name); r != nil {
			return []source.Place{r.NamePlace}
		}
	case partName:
		for _, r := range d.rigsIn(m.in) {
			if p := r.Part(m.whole); p != nil {
				return []source.Place{p.NamePlace.Original()}
			}
		}
	}
	return nil
}

// pageFolder is where the pages of rules seem to stand. No file of a user is there.
const pageFolder = "built-in/rules/"

// PageOf gives the page of a rule as a file; ok is false if there is no such rule.
func PageOf(rule string) (page *source.File, ok bool) {
	text, ok := rules.Page(rule)
	if !ok {
		return nil, false
	}
	return source.New(pageFolder+rule+".md", text), true
}
