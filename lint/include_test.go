package lint_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
)

const (
	// stage holds its load and has a redirect that loads its anchor; open does not hold.
	stage = "anchor head\nload litter\nhauler team\npulley top block on head holds litter\nhitch grab\npulley runner block on grab\n" +
		"pulley corner on head\nrope long\nreeve long: litter / grab / top \\ runner / corner \\ team\n"
	open = "anchor head\nload litter\nhauler team\npulley top on head\nhitch grab\npulley runner on grab\n" +
		"rope long\nreeve long: litter / grab / top \\ runner / team\n"
)

// examineUsing lints a text that can use a file of a model and a stage.
func examineUsing(text string) (*load.Loaded, []diag.Diagnostic) {
	f := load.Loader{Overlay: map[string]string{
		"shelf.rig": "stock pulley block efficiency 90 %  # a trial pull\nrig stage\n" + stage,
	}}.Text("yard.rig", text)
	return f, lint.Run([]*load.Loaded{f}, rules.All())
}

// of gives the finding of a rule about a part.
func of(t *testing.T, found []diag.Diagnostic, rule, subject string) diag.Diagnostic {
	t.Helper()
	for _, d := range found {
		if d.Rule == rule && d.Subject == subject {
			return d
		}
	}
	require.Fail(t, "not found", "%s at %s in %v", rule, subject, found)
	return diag.Diagnostic{}
}

func TestFindingsInACopyStandAtItsName(t *testing.T) {
	f, found := examineUsing("use \"shelf.rig\"\nrig all\ninclude stage as low\ninclude stage as high\njoin low.team to high.litter\n")
	d := of(t, found, "redirect-loads-anchor", "high.corner")
	assert.Equal(t, "high", d.Place.Text())
	assert.Same(t, f.File, d.Place.File)
	require.NotEmpty(t, d.Related)
	assert.Equal(t, "shelf.rig", d.Related[0].Place.File.Name)
	assert.Equal(t, "corner", d.Related[0].Place.Text())
	for _, d := range found {
		assert.Empty(t, d.Fixes, d.Message)
		for _, r := range d.Related {
			assert.False(t, r.Place.IsCopy(), d.Message)
		}
	}
}

// A bend of a copy is taken out as one of the rig's own text is.
func TestRedirectOfACopy(t *testing.T) {
	_, found := examineUsing("use \"shelf.rig\"\nrig a\n" + stage + "rig b\ninclude a as x\n")
	own, copied := of(t, found, "redirect-loads-anchor", "corner"), of(t, found, "redirect-loads-anchor", "x.corner")
	assert.Equal(t, "x."+own.Message, copied.Message)
	assert.Equal(t, own.Severity, copied.Severity)
}

func TestFindingsInACopyCanBeExpectedAndAccepted(t *testing.T) {
	_, found := examineUsing("rig a\n" + open + "accept no-capture because \"A stage.\"\n" +
		"rig b\ninclude a as x\nexpect finding no-capture at x.litter\n" +
		"rig c\ninclude a as x\naccept no-capture at x.litter because \"A stage.\"\n" +
		"rig d\ninclude a as x\n")
	require.Len(t, found, 1, "the acceptance of a is not about its copies")
	assert.Equal(t, "no-capture", found[0].Rule)
	file := found[0].Place.File
	assert.Equal(t, 17, file.Line(found[0].Place.Span.Start), "it is that of d")
}

// A fix in a file that uses another one is proved with what that file says.
func TestFixInAFileWithUse(t *testing.T) {
	_, found := examineUsing("use \"shelf.rig\"\nanchor head\nload litter\nhauler team\npulley top block on head\nrope long\n" +
		"reeve long: litter / top \\ team\nexpect actual advantage over 0.8\n")
	assert.Len(t, of(t, found, "no-capture", "litter").Fixes, 1)
}

// A fix in a rig that others include must do no harm there.
func TestFixInAnIncludedRig(t *testing.T) {
	_, found := examineUsing("rig a\n" + open + "rig b\ninclude a as x\n")
	assert.Len(t, of(t, found, "no-capture", "litter").Fixes, 1)
	assert.Empty(t, of(t, found, "no-capture", "x.litter").Fixes, "the text is another rig's")
	_, found = examineUsing("rig a\n" + open + "rig b\ninclude a as x\nexpect finding no-capture\nrig c\ninclude b as y\nexpect not held when released\n")
	assert.Empty(t, of(t, found, "no-capture", "litter").Fixes, "the claim of c would fail")
	_, found = examineUsing("rig z\n" + open + "rig a\n" + stage + "rig b\ninclude a as x\nexpect held when released\n")
	assert.Len(t, of(t, found, "no-capture", "litter").Fixes, 1, "nothing includes z")
}

// A rig that includes others keeps them in its trials, and the rest of the file is cut out.
func TestFixInARigThatIncludes(t *testing.T) {
	f, found := examineUsing("use \"shelf.rig\"\nrig unrelated\n" + stage + "rig a\n" + open + "rig all\ninclude a as low\njoin low.team to x\n" +
		"anchor rear\nload x\nhauler h\npulley wheel on rear\nrope r\nreeve r: x / wheel \\ h\nrig more\n" + stage)
	d := of(t, found, "held-only-by-jam", "low.litter")
	require.Len(t, d.Fixes, 1)
	assert.Equal(t, "let wheel hold: write wheel (holds)", d.Fixes[0].Title)
	assert.Contains(t, diag.Apply(f.File, d.Fixes[0].Edits), "reeve r: x / wheel (holds) \\ h\n")
}

// An error in an include keeps the rules of the mechanics silent about the rig.
func TestNothingIsSaidOfARigThatLacksACopy(t *testing.T) {
	for _, text := range []string{
		"rig a\n" + stage + "rig b\ninclude a as x without grab\n" + open,
		"rig a\n" + stage + "rig b\ninclude aa as x\n" + open,
		"use \"gone.rig\"\nrig b\ninclude a as x\n" + open,
		"rig a\n" + stage + "rig b\ninclude a as x\njoin x.grab to top\n" + open,
	} {
		_, found := examineUsing(text)
		for _, d := range found {
			assert.NotEqual(t, "no-capture", d.Rule, text)
		}
	}
}
