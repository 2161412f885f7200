package show

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

func TestBrief(t *testing.T) {
	f := source.New("a.rig", "load 🪢x\nanchor é y")
	var out strings.Builder
	require.NoError(t, Brief(&out, []diag.Diagnostic{{
		Rule: "unused-part", Severity: diag.Warning, Message: "y touches no rope",
		Place: f.At(source.Span{Start: strings.Index(f.Text, "y"), End: len(f.Text)}),
	}}))
	assert.Equal(t, "a.rig:2:10: warning: y touches no rope [unused-part]\n", out.String())
}

// A finding is one line, whatever its file is called.
func TestBriefKeepsToOneLine(t *testing.T) {
	for name, want := range map[string]string{
		"C:/rigs/yard.rig": "C:/rigs/yard.rig:1:1: advice: a\ufffdb [r]\n",
		"odd\nname\t.rig":  "odd\ufffdname .rig:1:1: advice: a\ufffdb [r]\n",
	} {
		f := source.New(name, "\ufeffanchor head")
		var out strings.Builder
		d := diag.Diagnostic{Rule: "r", Message: "a\nb", Place: f.At(source.Span{Start: 3, End: 9})}
		require.NoError(t, Brief(&out, []diag.Diagnostic{d}))
		assert.Equal(t, want, out.String())
	}
}
