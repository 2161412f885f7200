package resolve

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// stage is a rig of three to one, without its name.
const stage = "anchor head\nload litter\nhauler team\npulley top on head holds litter\nhitch grab\npulley runner on grab\nrope long\n" +
	"reeve long: litter / grab / top \\ runner / team\n"

// library are the files that texts of these tests can use.
var library = map[string]*Resolved{
	"stages.rig": inLibraryAs("stages.rig", stocked+"rig stage\n"+stage+"rig copied\ninclude stage as first\nrig double\nanchor head\nload litter\n"+
		"hauler team\npulley low twin on litter\nrope fall\nreeve fall: head \\ low / team\n"),
	"more.rig": inLibraryAs("more.rig", stocked+"rig stage\n"+stage+"rig wrong-alone\n"+stage),
	"faulty.rig": inLibraryAs("faulty.rig", "rig good\n"+stage+"rig bad\n"+strings.Replace(stage, "on grab", "on grub", 1)+
		"pulley low on liter\n"),
	"lacking.rig": inLibraryAs("lacking.rig", "use \"nowhere.rig\"\n"+stage),
}

func inLibraryAs(name, text string) *Resolved {
	return Using(syntax.Parse(source.New(name, text)), nil)
}

func inLibrary(f *source.File) bool {
	for _, of := range library {
		if of.Model.Source == f {
			return true
		}
	}
	return false
}

// openInLibrary opens the files of the library, and gives the faults that lang/load can
// find.
func openInLibrary(use *syntax.Use) (*Resolved, error) {
	switch path := use.Path.Value; path {
	case "yard.rig":
		return nil, Circle{}
	case "round.rig":
		return nil, Circle{Through: []string{"round.rig"}}
	case "far.rig":
		return nil, Circle{Through: []string{"far.rig", "farther.rig", "round.rig"}}
	default:
		if of := library[strings.TrimPrefix(path, "./")]; of != nil {
			return of, nil
		}
		return nil, errors.New("there is no such file")
	}
}

var useCases = []marked{
	{"a rig and a model of another file", "use \"stages.rig\"\n" + basic + "pulley top twin on head\nreeve long: litter / top \\ team\ninclude stage as high\n"},
	{"models of another file keep to their rigs", "use \"stages.rig\"\nstock pulley twin sheaves 1\ninclude double as low\n"},
	{"a rig that includes", "use \"stages.rig\"\ninclude copied as low\nexpect load on low.first.head under 3\n"},
	{"a file that is not there", "use ⟦\"gone.rig\"⟧unusable-file\n"},
	{"nothing between the quotes", "use ⟦\" \"⟧unusable-file\n"},
	{"a path from the root", "use ⟦\"/rigs/stock.rig\"⟧unusable-file\nuse ⟦\"C:/stock.rig\"⟧unusable-file\n"},
	{"the file itself", "use ⟦\"yard.rig\"⟧unusable-file\n" + basic + line},
	{"a circle of two", "use ⟦\"round.rig\"⟧unusable-file\n" + basic + line},
	{"a circle of more", "use ⟦\"far.rig\"⟧unusable-file\n" + basic + line},
	{"a file with errors", "use ⟦\"faulty.rig\"⟧unusable-file\ninclude good as low\n"},
	{"a rig with errors of a file with errors", "use ⟦\"faulty.rig\"⟧unusable-file\ninclude bad as low\nexpect load on low.head under 1\n"},
	{"a file that lacks another", "use ⟦\"lacking.rig\"⟧unusable-file\n"},
	{"twice", "use \"stages.rig\"\nuse ⟦\"./stages.rig\"⟧used-twice\n"},
	{"two files with one model", "use \"stages.rig\"\nuse \"more.rig\"\n" + basic + "pulley top ⟦twin⟧ambiguous-name on head\nreeve long: litter / top \\ team\n"},
	{"two files with one model, and the file's own", "use \"stages.rig\"\nuse \"more.rig\"\nstock pulley twin\n" + basic + "pulley top twin on head\nreeve long: litter / top \\ team\n"},
	{"two files with one rig", "use \"stages.rig\"\nuse \"more.rig\"\nrig both\ninclude ⟦stage⟧ambiguous-name as low\nexpect load on low.head under 1\n"},
	{"two files with one rig, and the file's own", "use \"stages.rig\"\nuse \"more.rig\"\nrig stage\n" + stage + "rig both\ninclude stage as low\n"},
	{"a missing file may have what is named", "use ⟦\"pits.rig\"⟧unusable-file\nrig b\ninclude pit-a as low\nanchor a own-anchor\nrope r\nload litter\nreeve r: litter / a\nexpect load on low.head under 1 kN\n"},
	{"a use that cannot be read", "use ⟦stock⟧syntax\nrig b\ninclude pit-a as low\n"},
	{"a misspelt rig of another file", "use \"stages.rig\"\nrig b\ninclude ⟦stge⟧unknown-rig as low\n"},
	{"a misspelt model of another file", "use \"stages.rig\"\n" + basic + "pulley top ⟦twn⟧unknown-model on head\nreeve long: litter / top \\ team\n"},
}

func TestUseMessages(t *testing.T) {
	for text, want := range map[string]string{
		"use \"yard.rig\"\n":    "yard.rig is this file itself",
		"use \"round.rig\"\n":   "round.rig uses this file in turn, so that nothing is brought in",
		"use \"far.rig\"\n":     "far.rig uses this file in turn by way of farther.rig and round.rig, so that nothing is brought in",
		"use \"gone.rig\"\n":    "gone.rig cannot be read: there is no such file",
		"use \"faulty.rig\"\n":  "faulty.rig has 2 errors, the first on line 16",
		"use \"lacking.rig\"\n": "lacking.rig has an error on line 1",
	} {
		_, found := resolved("yard.rig", text)
		assert.Equal(t, want, message(t, found, "unusable-file"))
	}
	_, found := File(syntax.Parse(source.New("yard.rig", "use \"stages.rig\"\n")))
	assert.Equal(t, "stages.rig is missing: no other file can be read here", message(t, found, "unusable-file"))
	_, found = resolved("yard.rig", "use \"faulty.rig\"\n")
	require.Len(t, found[0].Related, 1)
	assert.Equal(t, "faulty.rig", found[0].Related[0].Place.File.Name)
	assert.Contains(t, found[0].Related[0].Message, "grub is not a part")
}

func TestBackslashesInAPath(t *testing.T) {
	file, found := resolved("yard.rig", "use \".\\\\stages.rig\"\nrig b\ninclude stage as low\n")
	require.Len(t, found, 1)
	assert.Equal(t, "use \"./stages.rig\"\nrig b\ninclude stage as low\n", langtest.Fixed(t, file.Source, found, "write /"))
}

func TestModelOfAUsedFile(t *testing.T) {
	file, found := resolved("yard.rig", "use \"stages.rig\"\n"+basic+"pulley top twin on head\nreeve long: litter / top \\ team\n")
	require.Empty(t, found)
	require.Len(t, file.Uses, 1)
	assert.Equal(t, "stages.rig", file.Uses[0].File.Source.Name)
	top := file.Rigs[0].Part("top")
	require.NotNil(t, top.Stock)
	assert.Equal(t, "stages.rig", top.Stock.Place.File.Name)
	assert.Same(t, top.Stock, top.FromStock("strength"))
	assert.Equal(t, "36000", top.Values.Strength.Low.RatString())
}

func TestModelsOfACopyAreThoseOfItsFile(t *testing.T) {
	file, _ := resolved("yard.rig", "use \"stages.rig\"\nstock pulley twin sheaves 1\ninclude double as low\n")
	low := file.Rigs[0].Part("low.low")
	assert.Equal(t, "2", low.Values.Sheaves.Low.RatString())
}

func TestWhatAUsedFileUsesIsNotPassedOn(t *testing.T) {
	inner := syntax.Parse(source.New("inner.rig", "use \"stages.rig\"\nrig b\ninclude stage as low\n"))
	r := Using(inner, openInLibrary)
	require.Empty(t, r.Problems)
	outer := syntax.Parse(source.New("outer.rig", "use \"inner.rig\"\nrig c\ninclude b as x\ninclude stage as y\n"))
	found := Using(outer, func(*syntax.Use) (*Resolved, error) { return r, nil }).Problems
	require.Len(t, found, 1)
	assert.Equal(t, "stage is not a rig of this file or of one that it uses", found[0].Message)
	assert.Equal(t, diag.Error, found[0].Severity)
}
