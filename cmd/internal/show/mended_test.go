package show_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/cmd/internal/show"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
	"fairlead/solve/report/page"
)

const (
	haul = "anchor head\nload litter\nhauler team\npulley top on head holds litter\nhitch grab\npulley runner on grab\nrope long\n"
	slip = haul + "reeve long: litter / top \\ grab \\ runner/team\naccept jammed because \"Once.\"\n"
	// blind has a misspelt name behind which a fault is hidden.
	blind = haul + "reeve long: litter / top \\ grb \\ runner / team\n"
)

// mended mends rigs that leave the belay out, in a house that allows it.
func mended(texts ...string) []*lint.Mending {
	var list []*lint.Mending
	for i := 0; i < len(texts); i += 2 {
		f := load.Text(texts[i], texts[i+1])
		f.Policy = load.Text("policy.rig", "rule no-backup off\n")
		list = append(list, lint.Mend(f, rules.All()))
	}
	return list
}

func TestMended(t *testing.T) {
	var b strings.Builder
	list := mended("slip.rig", slip, "blind.rig", blind)
	require.NoError(t, show.Mended(&b, list, page.Paint{}))
	assert.Equal(t, `ok  grab grips the rope between top and runner: team raises nothing; on litter /
    top it is 3:1
    slip.rig, line 8
      was  reeve long: litter / top \ [grab] \ runner/team
      now  reeve long: litter [/ grab] / top \ runner / team
    hitch-on-wrong-strand. Mended: set grab on litter / top; it is 3:1 there

ok  the stroke / reads better with a space on both sides
    slip.rig, line 8
      was  reeve long: litter / top \ grab \ runner[/]team
      now  reeve long: litter / grab / top \ runner [/] team
    glued-stroke. Mended: put spaces around the stroke

ok  jammed is accepted, but not found
    slip.rig, line 9
      was  [accept jammed because "Once."]
    acceptance-unused. Mended: take the line out

!!  grb is not a part of this rig, did you mean grab?
    blind.rig, line 8
      reeve long: litter / top \ [grb] \ runner / team
    unknown-part. Fix: write grab
    Not mended: then grab grips the rope between top and runner: team raises
    nothing; on litter / top it is 3:1

`, b.String())
	assert.Equal(t, "3 fixes made; still 1 error in 2 rigs", show.MendedTotal(list))
	assert.Equal(t, "no fix made; still 1 error in 1 rig", show.MendedTotal(list[1:]))
	assert.Equal(t, "3 fixes made; nothing found in 1 rig", show.MendedTotal(list[:1]))
	assert.Equal(t, "1 fix made; nothing found in 1 rig but 1 that is accepted",
		show.MendedTotal(mended("a.rig", haul+"anchor spare\naccept unused-part because \"x\"\nreeve long: litter / grab / top \\ runner/ team\n")))
	stopped := *list[1]
	stopped.Stopped = true
	assert.Equal(t, "no fix made; still 1 error in 1 rig; there may be more to mend", show.MendedTotal([]*lint.Mending{&stopped}))
}

func TestMendedJSON(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, show.MendedJSON(&b, mended("slip.rig", slip, "blind.rig", blind)))
	requireValid(t, "lint", b.Bytes())
	var out struct {
		Findings []struct{ Rule string }
		Mended   []struct {
			Rule  string
			Fixes []struct{ Title string }
		}
	}
	require.NoError(t, json.Unmarshal(b.Bytes(), &out))
	require.Len(t, out.Findings, 1)
	require.Len(t, out.Mended, 3)
	assert.Equal(t, "hitch-on-wrong-strand", out.Mended[0].Rule)
	require.Len(t, out.Mended[0].Fixes, 1)
	assert.Equal(t, "set grab on litter / top", out.Mended[0].Fixes[0].Title)
	b.Reset()
	require.NoError(t, show.MendedJSON(&b, nil))
	assert.JSONEq(t, `{"version":1,"findings":[],"mended":[]}`, b.String())
}
