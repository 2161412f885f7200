package syntax

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
)

// A word of the notation that is misspelt in one way only is mended by its fix.
func TestMisspeltWordsHaveAFix(t *testing.T) {
	for text, want := range map[string]string{
		"pully top on head":                      "pulley top on head",
		"Anchor head":                            "anchor head",
		"LOAD litter mass 3 kg":                  "load litter mass 3 kg",
		"Reeve long: a / b":                      "reeve long: a / b",
		"pulley top on head hold litter":         "pulley top on head holds litter",
		"pulley top hold litter":                 "pulley top holds litter",
		"pulley top ON head":                     "pulley top on head",
		"pulley top no head":                     "pulley top on head",
		"pulley top on head strenght 3 kN":       "pulley top on head strength 3 kN",
		"reeve long: a / top (Holds) \\ b":       "reeve long: a / top (holds) \\ b",
		"expect advantge 3:1":                    "expect advantage 3:1",
		"expect held wen released":               "expect held when released",
		"require factor 4 for hich":              "require factor 4 for hitch",
		"rule jammed of":                         "rule jammed off",
		"stock Pulley twin":                      "stock pulley twin",
		"units KN m":                             "units kN m",
		"load litter mass 3 KG":                  "load litter mass 3 kg",
		"load litter mass 3kgs":                  "load litter mass 3kg",
		"anchor a at 3 meters":                   "anchor a at 3 m",
		"load litter mass 3 kg slop 30 deg":      "load litter mass 3 kg slope 30 deg",
		"accept jammed becuse \"It may be so.\"": "accept jammed because \"It may be so.\"",
	} {
		tree := parse(t, text)
		require.Len(t, tree.Problems, 1, text)
		require.Len(t, tree.Problems[0].Fixes, 1, "%s: %s", text, tree.Problems[0].Message)
		mended := diag.Apply(tree.File, tree.Problems[0].Fixes[0].Edits)
		assert.Equal(t, want, mended)
		assert.Empty(t, parse(t, mended).Problems, mended)
	}
}

// Of several near words none is written, and a far one is not guessed.
func TestOtherWordsHaveNoFix(t *testing.T) {
	for text, message := range map[string]string{
		"leg l from a to b ta 3 m":   "l: a leg has no clause ta, did you mean to or at?",
		"frobnicate x":               "frobnicate begins no statement; a line begins with a kind of part",
		"load litter mass 3 pebbles": "litter: mass has the unknown unit pebbles; it takes kg, g, t or lb",
		"anchor a at 3 kilos":        "a: at has the unknown unit kilos; it takes m, cm, mm, ft or in",
		"load litter mass 3 kN":      "litter: mass takes kg, g, t or lb, and kN is a unit of force",
	} {
		problems := parse(t, text).Problems
		require.Len(t, problems, 1, text)
		assert.Contains(t, problems[0].Message, message)
		assert.Empty(t, problems[0].Fixes, text)
	}
}
