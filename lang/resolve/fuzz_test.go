package resolve

import (
	"testing"

	"fairlead/lang/langtest"
)

func FuzzResolve(f *testing.F) {
	for _, c := range allMarked {
		f.Add(langtest.Read(f, c.name, c.text).File.Text)
	}
	f.Add(every)
	f.Add(pair)
	f.Add("reeve long: litter / grab  # why\n  / top\\ team~ tail\r\n")
	f.Fuzz(func(t *testing.T, text string) {
		soundly(t, text)
	})
}
