package diag

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/source"
)

func at(f *source.File, start, end int) source.Place {
	return f.At(source.Span{Start: start, End: end})
}

func TestSeverities(t *testing.T) {
	assert.Less(t, Advice, Warning)
	assert.Less(t, Warning, Error)
	for _, s := range []Severity{Advice, Warning, Error} {
		named, ok := SeverityNamed(s.String())
		assert.True(t, ok)
		assert.Equal(t, s, named)
	}
	for _, word := range []string{"", "Error", "off"} {
		_, ok := SeverityNamed(word)
		assert.False(t, ok, word)
	}
}

func TestNamed(t *testing.T) {
	d := Diagnostic{Subject: "top", Also: []string{"head", "long"}}
	for name, want := range map[string]bool{"top": true, "head": true, "long": true, "grab": false, "": false} {
		assert.Equal(t, want, d.Named(name), name)
	}
}

func TestSort(t *testing.T) {
	first, second := source.New("b.rig", "0123456789"), source.New("a.rig", "0123456789")
	sorted := []Diagnostic{
		{Rule: "z", Place: at(first, 1, 9)},
		{Rule: "b", Severity: Error, Place: at(first, 4, 5), Message: "m"},
		{Rule: "a", Severity: Warning, Place: at(first, 4, 9), Message: "m"},
		{Rule: "b", Severity: Warning, Place: at(first, 4, 5), Message: "m"},
		{Rule: "b", Severity: Warning, Place: at(first, 4, 6), Message: "n"},
		{Rule: "a", Severity: Error, Place: at(second, 0, 1)},
	}
	for shift := range sorted {
		list := append(append([]Diagnostic{}, sorted[shift:]...), sorted[:shift]...)
		Sort(list, []*source.File{first, second})
		assert.Equal(t, sorted, list)
	}
}

func TestSortKeepsTheOrderOfEquals(t *testing.T) {
	f := source.New("a.rig", "x")
	list := []Diagnostic{{Subject: "b", Place: at(f, 0, 1)}, {Subject: "a", Place: at(f, 0, 1)}}
	Sort(list, []*source.File{f})
	assert.Equal(t, "b", list[0].Subject)
}

func TestApply(t *testing.T) {
	f, other := source.New("a.rig", "reeve long: a/b"), source.New("b.rig", "xxxxxxxxxxxxxxxx")
	cases := []struct {
		edits []Edit
		want  string
	}{
		{nil, "reeve long: a/b"},
		{[]Edit{{at(f, 14, 14), " "}, {at(f, 13, 13), " "}}, "reeve long: a / b"},
		{[]Edit{{at(f, 6, 10), "main"}, {at(f, 0, 0), "# "}, {at(f, 15, 15), "!"}}, "# reeve main: a/b!"},
		{[]Edit{{at(f, 0, 15), ""}}, ""},
		{[]Edit{{at(other, 0, 5), "y"}}, "reeve long: a/b"},
		{[]Edit{{at(f, 0, 0), "1"}, {at(f, 0, 0), "2"}}, "12reeve long: a/b"},
	}
	for _, c := range cases {
		assert.Equal(t, c.want, Apply(f, c.edits))
	}
	assert.Equal(t, "reeve long: a/b", f.Text, "the file is as it was")
}
