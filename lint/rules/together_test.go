package rules

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
)

// together writes a file of drawn rigs and of rigs put together from them, by joins of
// which many are of no use.
func together(d langtest.Dice) string {
	var b strings.Builder
	parts := map[string][]string{} // by rig
	var names []string
	for i := range 2 {
		name := fmt.Sprintf("base%d", i)
		text := langtest.RandomRig(d)
		for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
			if words := strings.Fields(line); words[0] != "reeve" {
				parts[name] = append(parts[name], words[1])
			}
		}
		names = append(names, name)
		fmt.Fprintf(&b, "rig %s\n%s", name, text)
	}
	for i := range 3 {
		name := fmt.Sprintf("made%d", i)
		fmt.Fprintf(&b, "rig %s\n", name)
		for k, n := 0, 1+d.UpTo(3); k < n; k++ {
			of, as := names[d.UpTo(len(names))], fmt.Sprintf("c%d", k)
			fmt.Fprintf(&b, "include %s as %s%s\n", of, as, changes(d, parts[of]))
			for _, p := range parts[of] {
				parts[name] = append(parts[name], as+"."+p)
			}
		}
		own := parts[name]
		for range d.UpTo(3) {
			fmt.Fprintf(&b, "join %s to %s\n", end(d, own, "team0"), end(d, own, "litter"))
		}
		if d.UpTo(3) == 0 {
			fmt.Fprintf(&b, "hitch grip on %s\nanchor stake at %d m\nrope mine\nreeve mine: %s / grip / %s \\ stake\n",
				own[d.UpTo(len(own))], d.UpTo(9), end(d, own, "litter"), own[d.UpTo(len(own))])
			parts[name] = append(own, "grip", "stake", "mine")
		}
		fmt.Fprintf(&b, "expect held without %s\n", own[d.UpTo(len(own))])
		names = append(names, name)
	}
	return b.String()
}

// end draws a name that is most often that of a hauler or a load.
func end(d langtest.Dice, parts []string, like string) string {
	for range 20 {
		if name := parts[d.UpTo(len(parts))]; strings.HasSuffix(name, like) {
			return name
		}
	}
	return parts[d.UpTo(len(parts))]
}

// changes draws what an include changes.
func changes(d langtest.Dice, parts []string) string {
	part := func() string { return parts[d.UpTo(len(parts))] }
	switch d.UpTo(5) {
	case 0:
		return " without " + part()
	case 1:
		return fmt.Sprintf(" with %s at %d m with %s at %d m", part(), d.UpTo(20), part(), d.UpTo(20))
	case 2:
		return " with " + part() + " mass 40 kg without " + part()
	}
	return ""
}

// count counts the findings of a rule about a part: rigs of one file may each have one.
func count(list []diag.Diagnostic, like diag.Diagnostic) int {
	n := 0
	for _, d := range list {
		if d.Rule == like.Rule && d.Subject == like.Subject {
			n++
		}
	}
	return n
}

// Whatever is put together, findings stand in the file, fixes change only its text, and
// what a fix of a solved rig leaves behind does not have the finding any more.
func TestRigsPutTogether(t *testing.T) {
	random := langtest.Seeded(3)
	proved := checked()
	rules, sound, copied := map[string]int{}, 0, 0
	for range 300 {
		text := together(random)
		file, found := examined(text)
		for _, d := range found {
			rules[d.Rule]++
			assert.Same(t, file.File, d.Place.File, text)
			for _, r := range d.Related {
				assert.Same(t, file.File, r.Place.File, text)
			}
			for _, fix := range d.Fixes {
				for _, e := range fix.Edits {
					assert.Same(t, file.File, e.Place.File, text)
				}
				if proved[d.Rule] {
					_, left := examined(diag.Apply(file.File, fix.Edits))
					assert.Less(t, count(left, d), count(found, d), "%s in\n%s", fix.Title, text)
				}
			}
			if d.Related != nil && d.Related[0].Message == "written here" {
				copied++
			}
		}
		for _, rig := range file.Model.Rigs[2:] {
			if !rig.Incomplete {
				sound++
			}
		}
		if t.Failed() {
			return
		}
	}
	t.Log(rules, "sound:", sound, "in copies:", copied)
	assert.Greater(t, sound, 60)
	assert.Greater(t, copied, 100)
	for _, rule := range []string{"wrong-join", "left-out-needed", "no-capture", "jammed"} {
		assert.Greater(t, rules[rule], 5, rule)
	}
}
