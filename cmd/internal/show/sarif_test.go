package show_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/cmd/internal/show"
	"fairlead/lang/load"
	"fairlead/lang/source"
	"fairlead/lint"
	"fairlead/lint/rules"
)

// log is as much of a SARIF log as the tests look at.
type log struct {
	Runs []struct {
		Tool struct {
			Driver struct {
				Rules []struct {
					ID, Name             string
					ShortDescription     struct{ Text string }
					Help                 struct{ Text, Markdown string }
					DefaultConfiguration struct{ Level string }
				}
			}
		}
		Invocations []struct {
			ExecutionSuccessful        bool
			ToolExecutionNotifications []struct{ Message struct{ Text string } }
		}
		OriginalURIBaseIDs map[string]json.RawMessage `json:"originalUriBaseIds"`
		Artifacts          []struct{ Location artifact }
		ColumnKind         string
		Results            []result
	}
}

type artifact struct {
	URI, URIBaseID string
	Index          *int
}

type result struct {
	RuleID, Level       string
	RuleIndex           int
	Message             struct{ Text string }
	Locations           []location
	RelatedLocations    []location
	PartialFingerprints map[string]string
	Fixes               []struct {
		ArtifactChanges []struct {
			ArtifactLocation artifact
			Replacements     []struct {
				DeletedRegion   region
				InsertedContent struct{ Text string }
			}
		}
	}
	Suppressions *[]struct {
		Kind, Justification string
		Location            location
	}
}

type location struct {
	PhysicalLocation struct {
		ArtifactLocation artifact
		Region           region
	}
}

type region struct{ StartLine, StartColumn, EndLine, EndColumn int }

// sarif lints texts by their names and gives what is written, which must fit the
// standard's own schema.
func sarif(t *testing.T, failed error, namesAndTexts ...string) (string, log) {
	t.Helper()
	var files []*load.Loaded
	run := show.Run{Rules: rules.All(), Version: "1", Failed: failed, Page: func(rule string) string {
		text, _ := rules.Page(rule)
		return text
	}}
	for i := 0; i < len(namesAndTexts); i += 2 {
		f := load.Text(namesAndTexts[i], namesAndTexts[i+1])
		files = append(files, f)
		run.Files = append(run.Files, f.File)
	}
	run.Found = lint.Examine(files, rules.All())
	var b bytes.Buffer
	require.NoError(t, show.SARIF(&b, run))
	schema, err := jsonschema.NewCompiler().Compile("testdata/sarif-2.1.0.schema.json")
	require.NoError(t, err)
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(b.Bytes()))
	require.NoError(t, err)
	require.NoError(t, schema.Validate(value))
	var l log
	require.NoError(t, json.Unmarshal(b.Bytes(), &l))
	require.Len(t, l.Runs, 1)
	return b.String(), l
}

const falls = "anchor head\nload 🪢litter\nhauler team\npulley été on head\nrope long\nreeve long: 🪢litter / été \\ team\n"

// litter stands for a load whose name takes letters that UTF-8 and UTF-16 write in
// different lengths: names are words, so the knot is replaced.
var uneven = strings.NewReplacer("🪢", "𝓉")

func TestSARIF(t *testing.T) {
	text := uneven.Replace(falls)
	_, l := sarif(t, nil, "pit one/yard.rig", text)
	run := l.Runs[0]
	assert.Equal(t, "utf16CodeUnits", run.ColumnKind)
	assert.True(t, run.Invocations[0].ExecutionSuccessful)
	assert.Contains(t, run.OriginalURIBaseIDs, "START")
	assert.Equal(t, artifact{URI: "pit%20one/yard.rig", URIBaseID: "START"}, run.Artifacts[0].Location)
	require.NotEmpty(t, run.Results)
	for _, r := range run.Results {
		rule := run.Tool.Driver.Rules[r.RuleIndex]
		assert.Equal(t, rule.ID, r.RuleID)
		page, _ := rules.Page(r.RuleID)
		assert.Equal(t, page, rule.Help.Markdown)
		assert.NotEmpty(t, rule.Help.Text)
		assert.NotEmpty(t, rule.ShortDescription.Text)
		assert.NotEqual(t, rule.ID, rule.Name)
		require.NotNil(t, r.Suppressions, "all results have suppressions, or none")
		assert.Empty(t, *r.Suppressions)
		assert.Zero(t, *r.Locations[0].PhysicalLocation.ArtifactLocation.Index)
	}
	r := run.Results[len(run.Results)-1]
	assert.Equal(t, "no-capture", r.RuleID)
	assert.Equal(t, "note", r.Level)
	line := strings.Split(text, "\n")[5]
	column := utf16Len(line[:strings.Index(line, "été")+len("été")]) + 1
	assert.Equal(t, 27, column, "the letter 𝓉 counts twice, é once")
	assert.Equal(t, region{6, column, 6, column}, r.Locations[0].PhysicalLocation.Region)
	change := r.Fixes[0].ArtifactChanges[0]
	assert.Equal(t, "pit%20one/yard.rig", change.ArtifactLocation.URI)
	assert.Equal(t, region{6, column, 6, column}, change.Replacements[0].DeletedRegion)
	assert.Equal(t, " (holds)", change.Replacements[0].InsertedContent.Text)
}

func utf16Len(text string) int {
	f := source.New("a.rig", text)
	_, n := f.UTF16(len(text))
	return n
}

func TestSARIFHasAcceptedFindingsAsSuppressed(t *testing.T) {
	text := uneven.Replace(falls) + "accept no-capture because \"At knee height {or so}.\"\nexpect  finding redirect-loads-anchor\n"
	_, l := sarif(t, nil, "yard.rig", text)
	reasons := map[string]string{}
	for _, r := range l.Runs[0].Results {
		for _, s := range *r.Suppressions {
			assert.Equal(t, "inSource", s.Kind)
			reasons[r.RuleID] = s.Justification
			assert.Positive(t, s.Location.PhysicalLocation.Region.StartLine-6)
		}
	}
	assert.Equal(t, map[string]string{"no-capture": "At knee height {or so}.", "redirect-loads-anchor": "expect finding redirect-loads-anchor"}, reasons)
}

// What one rig accepts and another has too is reported, once.
func TestSARIFReportsWhatOneRigDoesNotAccept(t *testing.T) {
	const shared = "anchor head\nload litter\nhauler team\npulley top on head\nrope long\nreeve long: litter / top (angle 130 deg) \\ team\n"
	_, l := sarif(t, nil, "yard.rig", shared+"rig a\nunits N m\nrig b\naccept no-capture because \"x\"\n")
	require.Len(t, l.Runs[0].Results, 1)
	assert.NotNil(t, l.Runs[0].Results[0].Suppressions)
	assert.Empty(t, *l.Runs[0].Results[0].Suppressions)
}

func TestSARIFLevelsAndFailures(t *testing.T) {
	failed := errors.Join(errors.New("gone.rig: no such file"), errors.New("{odd}.rig: no such file"))
	_, l := sarif(t, failed, "yard.rig", "pully x\n", "other.rig", "require factor 4\nrequire factor 5\nanchor spare\n")
	run := l.Runs[0]
	assert.False(t, run.Invocations[0].ExecutionSuccessful)
	var said []string
	for _, n := range run.Invocations[0].ToolExecutionNotifications {
		said = append(said, n.Message.Text)
	}
	assert.Equal(t, []string{"gone.rig: no such file", "{{odd}}.rig: no such file"}, said)
	levels := map[string]string{}
	for _, r := range run.Results {
		levels[r.RuleID] = r.Level
	}
	assert.Equal(t, "error", levels["unknown-statement"])
	assert.Equal(t, "warning", levels["duplicate-house-rule"])
	assert.Equal(t, "note", levels["unused-part"])
	assert.Len(t, run.Artifacts, 2)
	_, none := sarif(t, nil)
	assert.NotNil(t, none.Runs[0].Results, "no result is an empty list")
}

// A finding is known again when lines have come before it, figures have changed or
// the line was laid out anew; another one has another fingerprint.
func TestFingerprints(t *testing.T) {
	prints := func(text string) map[string]string {
		_, l := sarif(t, nil, "yard.rig", text)
		list := map[string]string{}
		for _, r := range l.Runs[0].Results {
			require.NotContains(t, list, r.PartialFingerprints["finding/v1"])
			list[r.PartialFingerprints["finding/v1"]] = r.RuleID
		}
		return list
	}
	const text = "anchor head\nload litter mass 100 kg\nhauler team\npulley top on head\nrope long\nreeve long: litter / top \\ team\nanchor spare\n"
	before := prints(text)
	assert.Len(t, before, 3)
	assert.Equal(t, before, prints("# A hundred\n\n"+text))
	assert.Equal(t, before, prints(strings.Replace(text, "100", "200", 1)))
	assert.Equal(t, before, prints(strings.Replace(text, "long: litter", "long:   litter", 1)))
	assert.NotEqual(t, before, prints(strings.Replace(text, "spare", "other", 1)))
	assert.Len(t, prints("rig a\n"+text+"rig b\n"+text), 6, "the same line twice")
}

func TestSARIFIsTheSameEachTime(t *testing.T) {
	text := uneven.Replace(falls)
	one, _ := sarif(t, nil, "b.rig", text, "a.rig", text)
	two, _ := sarif(t, nil, "b.rig", text, "a.rig", text)
	assert.Equal(t, one, two)
	here, err := os.Getwd()
	require.NoError(t, err)
	assert.NotContains(t, one, filepath.ToSlash(here))
}

func TestSARIFPaths(t *testing.T) {
	here, err := os.Getwd()
	require.NoError(t, err)
	for name, want := range map[string]artifact{
		"yard.rig":          {URI: "yard.rig", URIBaseID: "START"},
		"./a/../b/yard.rig": {URI: "b/yard.rig", URIBaseID: "START"},
		"a b/ü#1?%.rig":     {URI: "a%20b/%C3%BC%231%3F%25.rig", URIBaseID: "START"},
		"a:b/yard.rig":      {URI: "./a:b/yard.rig", URIBaseID: "START"},
		"/srv/rigs/a b.rig": {URI: "file:///srv/rigs/a%20b.rig"},
		"../yard.rig":       {URI: "file://" + filepath.ToSlash(filepath.Dir(here)) + "/yard.rig"},
	} {
		_, l := sarif(t, nil, name, "")
		assert.Equal(t, want, l.Runs[0].Artifacts[0].Location, name)
	}
}
