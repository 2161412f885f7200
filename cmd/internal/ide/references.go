package ide

import (
	"fairlead/lang/resolve"
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
	for _, other := range d.all() {
		common = common || other.rig == shared && other.means(m)
	}
	var list []mention
	for _, other := range d.all() {
		if other.means(m) && (other.rig == m.rig || common && m.rig != elsewhere && other.rig != elsewhere) {
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
// model its statement, of a rule its page.
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
		if place, ok := d.modelPlace(m); ok {
			return []source.Place{place}
		}
		return nil
	}
	var list []source.Place
	for _, other := range d.same(m) {
		if other.declares {
			list = append(list, d.File.At(other.span))
		}
	}
	return list
}

// modelPlace gives the name of a model in its stock statement, of the file or of the
// built-in stock.
func (d *Document) modelPlace(m mention) (place source.Place, ok bool) {
	for _, s := range append(d.Model.Stock[:len(d.Model.Stock):len(d.Model.Stock)], resolve.Catalogue()...) {
		if s.Kind.Text == m.kind && s.Model.Text == m.name {
			return s.Place.File.At(s.Model.Span), true
		}
	}
	return source.Place{}, false
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
