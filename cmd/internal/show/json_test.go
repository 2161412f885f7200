package show_test

import (
	"bytes"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/cmd/internal/show"
	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// findingJSON is the machine output of one finding. The knot takes two UTF-16 units.
const findingJSON = `{
  "version": 1,
  "findings": [
    {
      "rule": "unknown-part",
      "severity": "warning",
      "file": "a.rig",
      "range": {
        "start": {
          "line": 0,
          "character": 7
        },
        "end": {
          "line": 0,
          "character": 8
        }
      },
      "message": "no part is named <x>",
      "related": [
        {
          "file": "a.rig",
          "range": {
            "start": {
              "line": 1,
              "character": 0
            },
            "end": {
              "line": 1,
              "character": 8
            }
          },
          "message": "here"
        }
      ],
      "fixes": [
        {
          "title": "write y",
          "gives": "",
          "edits": [
            {
              "file": "a.rig",
              "range": {
                "start": {
                  "line": 1,
                  "character": 7
                },
                "end": {
                  "line": 1,
                  "character": 8
                }
              },
              "newText": "y"
            }
          ]
        }
      ]
    }
  ]
}
`

func TestJSONCountsAsEditorsDo(t *testing.T) {
	f := source.New("a.rig", "load 🪢x\nanchor é")
	at := func(start, end int) source.Place { return f.At(source.Span{Start: start, End: end}) }
	list := []diag.Diagnostic{{
		Rule: "unknown-part", Severity: diag.Warning, Message: "no part is named <x>", Place: at(9, 10),
		Related: []diag.Related{{Place: at(11, 20), Message: "here"}},
		Fixes:   []diag.Fix{{Title: "write y", Gives: "", Edits: []diag.Edit{{Place: at(18, 20), NewText: "y"}}}},
	}}
	var b bytes.Buffer
	require.NoError(t, show.JSON(&b, list))
	assert.Equal(t, findingJSON, b.String())
	requireValid(t, "lint", b.Bytes())
}

func TestJSONOfNothing(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, show.JSON(&b, nil))
	assert.JSONEq(t, `{"version":1,"findings":[]}`, b.String())
	requireValid(t, "lint", b.Bytes())
}

// requireValid checks machine output against the schema that users get.
func requireValid(t *testing.T, form string, text []byte) {
	t.Helper()
	schema, err := jsonschema.NewCompiler().Compile("../../../lang/reference/schema/" + form + ".schema.json")
	require.NoError(t, err)
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	require.NoError(t, schema.Validate(value))
}
