package solve_test

import (
	"testing"

	"fairlead/lang/langtest"
	"fairlead/lang/resolve"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/solve"
)

// FuzzRig solves whatever can be read of any text: no panic, no hang.
func FuzzRig(f *testing.F) {
	random := langtest.Seeded(2)
	for range 40 {
		f.Add(langtest.RandomRig(random))
	}
	for _, row := range append(append([]published{}, tackles...), textbook...) {
		f.Add(row.text)
	}
	f.Add(langtest.Usual)
	f.Add(langtest.Tackle(9))
	f.Add(langtest.Chain(6))
	f.Add("load l\nhauler h\nanchor a\npulley p on a\nhitch g\nrope r\nreeve r: p / g / a \\ loop\n")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 4000 {
			return // size is the business of the benchmarks
		}
		file, _ := resolve.File(syntax.Parse(source.New("fuzz.rig", text)))
		for _, rig := range file.Rigs {
			res := solve.Rig(rig)
			for _, p := range rig.Parts {
				if len(rig.Parts) < 20 {
					res.Without(p)
				}
			}
		}
	})
}
