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

const uncaptured = `anchor head
load litter mass 100 kg
hauler team
pulley top on head
rope long
reeve long: litter / top \ team
`

// severities gives the severity of each finding of a rule under a policy.
func severities(t *testing.T, rule, policy, text string) []string {
	t.Helper()
	f := load.Text("yard.rig", text)
	f.Policy = load.Text("policy.rig", policy)
	var list []string
	for _, d := range lint.Run([]*load.Loaded{f}, rules.All()) {
		if d.Rule == rule {
			list = append(list, d.Severity.String())
		}
	}
	return list
}

func TestHouseRulesDecideTheSeverity(t *testing.T) {
	assert.Equal(t, []string{"advice"}, severities(t, "no-capture", "policy p\n", uncaptured))
	assert.Equal(t, []string{"error"}, severities(t, "no-capture", "policy p\nrule no-capture error\n", uncaptured))
	assert.Empty(t, severities(t, "no-capture", "policy p\nrule no-capture off\n", uncaptured))
	assert.Equal(t, []string{"warning"}, severities(t, "no-capture", "policy p\nrule no-capture off\n",
		"rule no-capture warning\n"+uncaptured), "the file's own line is nearer")
}

func TestAClaimMayNameWhatTheHouseTurnedOff(t *testing.T) {
	for _, claim := range []string{"expect finding no-capture\n", "accept no-capture because \"a drill\"\n"} {
		f := load.Text("yard.rig", uncaptured+claim)
		f.Policy = load.Text("policy.rig", "policy p\nrule no-capture off\n")
		for _, d := range lint.Run([]*load.Loaded{f}, rules.All()) {
			assert.Less(t, d.Severity, diag.Error, "%s", d.Message)
		}
	}
}

func TestNoHouseRuleChangesAnErrorOfTheText(t *testing.T) {
	f := load.Text("policy.rig", "policy p\nrule unknown-part off\nrule jammed warning\n")
	found := lint.Run([]*load.Loaded{f}, rules.All())
	require.Len(t, found, 1)
	assert.Equal(t, "claim-not-allowed", found[0].Rule)
}
