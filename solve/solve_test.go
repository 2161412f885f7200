package solve_test

import (
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/resolve"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/solve"
)

// read resolves the one rig of a text, which must have no errors.
func read(t require.TestingT, text string) *model.Rig {
	file, problems := resolve.File(syntax.Parse(source.New("test.rig", text)))
	for _, p := range problems {
		require.NotEqual(t, diag.Error, p.Severity, "%s: %s in\n%s", p.Rule, p.Message, text)
	}
	require.Len(t, file.Rigs, 1)
	return file.Rigs[0]
}

func solved(t require.TestingT, text string) *solve.Result { return solve.Rig(read(t, text)) }

// haul gives the only haul phase.
func haul(t require.TestingT, res *solve.Result) *solve.Phase {
	require.Len(t, res.Hauls(), 1)
	return res.Hauls()[0]
}

// load gives what a part carries in a phase as text, such as "2/3".
func load(ph *solve.Phase, name string) string {
	for _, p := range ph.Parts {
		if p.Part.Name == name {
			if p.Value == nil {
				return "unknown"
			}
			return p.Value.String()
		}
	}
	return "no part " + name
}
