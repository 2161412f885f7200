package ide

import (
	"fmt"
	"strings"

	"golang.org/x/text/unicode/norm"

	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// Renamable gives the name at a place and its span, or why it cannot be renamed.
func (d *Document) Renamable(offset int) (name string, span source.Span, err error) {
	m, ok := d.mentionAt(offset)
	switch {
	case !ok:
		return "", span, fmt.Errorf("there is no name here")
	case m.sort == ruleName:
		return "", span, fmt.Errorf("%s is the name of a rule, which cannot be changed", m.name)
	case m.sort == fileName:
		return "", span, fmt.Errorf("%s is the name of a file", m.name)
	case m.rig == elsewhere:
		return "", span, fmt.Errorf("%s is a part of a rig in another file", m.name)
	}
	if m.sort != partName {
		declared := false
		for _, other := range d.same(m) {
			declared = declared || other.declares
		}
		if !declared {
			return "", span, fmt.Errorf("%s is not defined in this file", m.name)
		}
	}
	return m.name, m.span, nil
}

// Rename gives the edits that write another name wherever the name at a place is
// written, or why that cannot be.
func (d *Document) Rename(offset int, name string) ([]diag.Edit, error) {
	old, _, err := d.Renamable(offset)
	if err != nil {
		return nil, err
	}
	name = norm.NFC.String(name)
	if err := goodName(name); err != nil {
		return nil, err
	}
	if name == old {
		return nil, nil
	}
	m, _ := d.mentionAt(offset)
	same := d.same(m)
	if other, taken := d.taken(same, name); taken {
		return nil, fmt.Errorf("%s is taken: it is the name of %s already", name, other)
	}
	var edits []diag.Edit
	for _, other := range same {
		edits = append(edits, diag.Edit{Place: d.File.At(other.span), NewText: name})
	}
	return edits, nil
}

// goodName says why a word cannot be a name.
func goodName(name string) error {
	if syntax.Reserved(name) {
		return fmt.Errorf("%s is a word of the notation, which cannot be a name", name)
	}
	tree := syntax.Parse(source.New("", "anchor "+name))
	if !strings.Contains(name, ".") && len(tree.Statements) == 1 && len(tree.Problems) == 0 {
		if p, ok := tree.Statements[0].Body.(*syntax.Part); ok && p.Name.Text == name && p.Model == nil && p.On == nil {
			return nil
		}
	}
	return fmt.Errorf("%q is no name: a name is a letter, then letters, digits, - or _, and does not end in -", name)
}

// taken says what has a name already where some mentions would get it.
func (d *Document) taken(same []mention, name string) (what string, taken bool) {
	rigs := map[int]bool{}
	for _, m := range same {
		rigs[m.rig] = true
	}
	for _, other := range d.all() {
		if other.name != name || other.vague || other.kind != same[0].kind {
			continue
		}
		names := func(s sort) bool { return s == partName || s == copyName }
		if other.sort == same[0].sort || names(other.sort) && names(same[0].sort) {
			if rigs[other.rig] || rigs[shared] || other.rig == shared {
				return describe(other), true
			}
		}
	}
	return "", false
}

func describe(m mention) string {
	return map[sort]string{
		partName: "a part", rigName: "a rig", copyName: "a copy", modelName: "a model", policyName: "house rules", fileName: "a file",
	}[m.sort]
}
