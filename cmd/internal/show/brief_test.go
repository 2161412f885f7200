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
