package report_test

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/solve"
	"fairlead/solve/report"
	"fairlead/solve/report/page"
)

// solved reads and solves every rig of a file.
func solved(t *testing.T, path string) []*solve.Result {
	t.Helper()
	loaded, err := load.Paths([]string{path}, nil, "")
	require.NoError(t, err)
	var results []*solve.Result
	for _, l := range loaded {
		for _, r := range l.Model.Rigs {
			results = append(results, solve.Rig(r))
		}
	}
	require.NotEmpty(t, results)
	return results
}

func counts(results []*solve.Result) []report.Counted {
	var list []report.Counted
	for _, r := range results {
		list = append(list, report.CountOf(r))
	}
	return list
}

// Each rig file has its texts beside it, to be read as a user reads them.
func TestTexts(t *testing.T) {
	paths, err := filepath.Glob("testdata/*.rig")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		name := strings.TrimSuffix(path, ".rig")
		t.Run(filepath.Base(name), func(t *testing.T) {
			results := solved(t, path)
			var text, counted bytes.Buffer
			require.NoError(t, report.Text(&text, results, false, page.Paint{}))
			langtest.Golden(t, name+".solve.txt", text.String())
			require.NoError(t, report.CountText(&counted, counts(results), false, page.Paint{}))
			langtest.Golden(t, name+".count.txt", counted.String())
			for _, line := range strings.Split(text.String()+counted.String(), "\n") {
				assert.LessOrEqual(t, page.Width(line), page.Columns, line)
				assert.Equal(t, strings.TrimRight(line, " "), line, "no blanks at the end")
			}
		})
	}
}

func TestMachineOutputs(t *testing.T) {
	for _, name := range []string{"three", "slant", "held", "friction", "reach"} {
		results := solved(t, "testdata/"+name+".rig")
		var text, counted bytes.Buffer
		require.NoError(t, report.JSON(&text, results))
		langtest.Golden(t, "testdata/"+name+".solve.json", text.String())
		require.NoError(t, report.CountJSON(&counted, counts(results)))
		langtest.Golden(t, "testdata/"+name+".count.json", counted.String())
	}
}

// Friction that is not known is never taken for none: the result says so, and every
// force that would have it in it is marked.
func TestUnknownFrictionIsSaid(t *testing.T) {
	unknown := 0
	for _, folder := range []string{"testdata", "../../examples"} {
		for _, res := range solved(t, folder) {
			var text bytes.Buffer
			require.NoError(t, report.Text(&text, []*solve.Result{res}, false, page.Paint{}))
			for _, p := range res.Hauls() {
				if p.Status != solve.OK || p.Actual == nil {
					continue
				}
				if p.Actual.Known() {
					assert.NotContains(t, text.String(), "(ideal)", res.Rig.Name)
					continue
				}
				unknown++
				assert.Contains(t, text.String(), "friction unknown: no efficiency for", res.Rig.Name)
				for _, part := range p.Actual.Unknown {
					assert.Contains(t, text.String(), part.Name)
				}
				words := strings.Join(strings.Fields(text.String()), " ")
				assert.Equal(t, strings.Count(words, " hauling"), strings.Count(words, "hauling (ideal)")+
					strings.Count(words, "hauling and lowering (ideal)")+strings.Count(words, "slack hauling"), words)
			}
		}
	}
	assert.Greater(t, unknown, 10)
}

// What is printed fits the schema that users get, for every rig there is here.
func TestMachineOutputFitsItsSchema(t *testing.T) {
	compiler := jsonschema.NewCompiler()
	solving, err := compiler.Compile("../../lang/reference/schema/solve.schema.json")
	require.NoError(t, err)
	counting, err := compiler.Compile("../../lang/reference/schema/count.schema.json")
	require.NoError(t, err)
	for _, folder := range []string{"testdata", "../../examples"} {
		results := solved(t, folder)
		var text, counted bytes.Buffer
		require.NoError(t, report.JSON(&text, results))
		requireValid(t, solving, text.Bytes())
		require.NoError(t, report.CountJSON(&counted, counts(results)))
		requireValid(t, counting, counted.Bytes())
	}
}

func requireValid(t *testing.T, schema *jsonschema.Schema, text []byte) {
	t.Helper()
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	require.NoError(t, schema.Validate(value))
}
