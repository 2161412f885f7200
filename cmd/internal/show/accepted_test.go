package show_test

import (
	"bytes"
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

const claimed = `anchor head
rig one "First day"
load litter mass 180 kg
hauler team
pulley top on head
rope long
reeve long: litter / top \ team
accept no-capture at top because "At knee height, with two people on the rope and a third one beside them."
accept jammed because "Was once."
accept expectation-failed because "x"
expect finding redirect-loads-anchor

rig two
load litter
hauler team
rope long
reeve long: litter / quay \ team
accept no-capture because "Nobody knows."
expect finding jammed
expect finding unused-part
`

func examined(text string) lint.Outcome {
	return lint.Examine([]*load.Loaded{load.Text("yard.rig", text)}, rules.All())
}

func TestAccepted(t *testing.T) {
	var b strings.Builder
	found := examined(claimed)
	require.NoError(t, show.Accepted(&b, found, page.Paint{}))
	assert.Equal(t, `one   First day

·   litter falls when team lets go
    yard.rig, line 7
      reeve long: litter / top [ ] \ team
    no-capture, accepted in line 8: "At knee height, with two people on the rope
    and a third one beside them."

!!  jammed is accepted, but not found
    yard.rig, line 9: "Was once."

!!  expectation-failed cannot be accepted
    yard.rig, line 10: "x"

two

??  no-capture is accepted, but errors of the rig hide whether it is there
    yard.rig, line 18: "Nobody knows."

expected on purpose in one   First day

!   top carries 3.53 kN, twice the pull, at an included angle of 0 deg, and adds
    no advantage; at 120 deg it would carry 1.77 kN less
    yard.rig, line 7
      reeve long: litter / [top] \ team
      litter falls without head
      yard.rig, line 1
        anchor [head]
    redirect-loads-anchor, expected in line 11

expected on purpose in two

??  jammed is expected, but errors of the rig hide whether it is there
    yard.rig, line 19

!!  unused-part is expected, but not found
    yard.rig, line 20

`, b.String())
	assert.Equal(t, "1 finding accepted in 2 rigs; 3 acceptances without a finding; 1 finding expected; "+
		"2 expectations without a finding", show.AcceptedTotal(found, 2))
	assert.Equal(t, "nothing accepted in 1 rig", show.AcceptedTotal(lint.Outcome{}, 1))
}

func TestAcceptedJSON(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, show.AcceptedJSON(&b, examined(claimed)))
	requireValid(t, "accepted", b.Bytes())
	assert.Contains(t, b.String(), `"because": "Was once."`)
	assert.Contains(t, b.String(), `"state": "not-judged"`)
	assert.Contains(t, b.String(), `"part": "top"`)
	b.Reset()
	require.NoError(t, show.AcceptedJSON(&b, lint.Outcome{}))
	assert.JSONEq(t, `{"version":1,"accepted":[],"expected":[]}`, b.String())
}
