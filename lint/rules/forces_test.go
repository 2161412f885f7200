package rules

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fairlead/lang/diag"
)

// forced gives what the rules about forces find in a rig, each as "severity rule: sentence".
func forced(t *testing.T, text string) []string {
	t.Helper()
	_, found := examined(text)
	var list []string
	for _, d := range found {
		assert.NotEqual(t, "syntax", d.Rule, d.Message)
		for _, r := range forces {
			if r.Name == d.Rule {
				list = append(list, fmt.Sprintf("%s %s: %s", d.Severity, d.Rule, d.Message))
			}
		}
	}
	return list
}

// put puts words in the places of a text: a name stands there as %NAME%; a name without
// words leaves nothing.
func put(text string, words ...string) string {
	for i := 0; i+1 < len(words); i += 2 {
		text = strings.ReplaceAll(text, "%"+words[i]+"%", words[i+1])
	}
	return gaps.ReplaceAllString(text, "")
}

var gaps = regexp.MustCompile("%[A-Z]+%")

// tub is a load of 3 kN on a three to one: 1 kN at the hand, 2 kN on hitch, runner and top.
const tub = `
anchor  head             %HEAD%
load    tub              weight 3 kN
hauler  team             %TEAM%
pulley  top     on head  %TOP%  holds tub
hitch   grab             %GRAB%
pulley  runner  on grab  %RUNNER%
rope    long             %LONG%

reeve long: tub %KNOT% / grab / top \ runner / team
%MORE%
`

func TestForcesAtTheirThresholds(t *testing.T) {
	cases := []struct {
		name  string
		words []string
		want  []string
	}{
		{"exactly its strength", []string{"LONG", "strength 3 kN", "GRAB", "strength 2 kN"}, nil},
		{"just over", []string{"LONG", "strength 2999 N"},
			[]string{"error part-overloaded: long carries 3 kN held, just over its strength of 2.999 kN"}},
		{"a knot takes the rest", []string{"LONG", "strength 4 kN", "KNOT", "(figure-eight retains 70 %)"},
			[]string{"error part-overloaded: long carries 3 kN held, 1.07 times the 2.8 kN that figure-eight leaves of its strength"}},
		{"no strength, no finding", []string{"MORE", "require factor 100"}, nil},
		{"exactly the factor", []string{"LONG", "strength 30 kN", "MORE", "require factor 10"}, nil},
		{"more than the factor is asked for", []string{"LONG", "strength 30 kN", "MORE", "require factor over 10"},
			[]string{"warning part-overloaded: long has a factor of 10, where the house requires over 10: it carries 3 kN held and bears 30 kN"}},
		{"a factor for one kind beats that for all", []string{"GRAB", "strength 10 kN", "LONG", "strength 30 kN",
			"MORE", "require factor 6 for hitch\nrequire factor 10"},
			[]string{"warning part-overloaded: grab has a factor of 5, where the house requires at least 6 for hitch: it carries 2 kN hauling and bears 10 kN"}},
		{"the lower end of a strength counts", []string{"TOP", "strength 2.5 to 4 kN"},
			[]string{"error part-overloaded: top carries 3 kN held, 1.2 times its strength of 2.5 kN"}},
		{"one person just enough", []string{"TEAM", "people 2 pull 500 N"}, nil},
		{"one newton short", []string{"TEAM", "people 2 pull 499 N"},
			[]string{"warning more-people-needed: team needs 3 people to pull 1 kN at 0.499 kN each, and has 2, who give 0.998 kN"}},
		{"the fewest count, and may be enough", []string{"TEAM", "people 2 to 3 pull 400 N"},
			[]string{"advice more-people-needed: team may need 3 people to pull 1 kN at 0.4 kN each, and has 2 to 3, who give 0.8 to 1.2 kN"}},
		{"nobody says how many", []string{"TEAM", "pull 1 N"}, nil},
		{"the house allows what is pulled", []string{"MORE", "require pull 1 kN"}, nil},
		{"the house wants less; more people are no way out", []string{"TEAM", "people 1", "MORE", "require pull under 1 kN"},
			[]string{"warning pull-over-limit: team has to pull 1 kN, where the house requires under 1 kN"}},
		{"a hitch that breaks before it slips", []string{"GRAB", "strength 1.5 kN slips 4 kN"},
			[]string{"error part-overloaded: grab carries 2 kN hauling, 1.33 times its strength of 1.5 kN"}},
		{"one that slips before it breaks", []string{"GRAB", "strength 1.8 kN slips 1.5 to 1.6 kN", "MORE", "require factor 2 for hitch"},
			[]string{"warning hitch-slips: grab grips 2 kN hauling, and slips at 1.5 to 1.6 kN"}},
		{"one that may slip", []string{"GRAB", "slips 1.5 to 2.5 kN"},
			[]string{"warning hitch-slips: grab grips 2 kN hauling, and may slip, which it does at 1.5 to 2.5 kN"}},
		{"people times advantage at the limit", []string{"TEAM", "people 6 pull 1 kN"}, nil},
		{"in a house with twelve", []string{"TEAM", "people 6 pull 1 kN", "MORE", "require people times advantage under 12"},
			[]string{"warning people-times-advantage: team has 6 people at 3:1, which makes 18, where the house requires under 12; 3 would keep to it"}},
		{"what they can overload is known", []string{"TEAM", "people 7 pull 1 kN", "LONG", "strength 20 kN"},
			[]string{"warning team-can-overload: team can pull 7 kN (7 people at 1 kN each), which puts up to 21 kN on long once tub is stuck, 1.05 times what it bears"}},
		{"just what it bears", []string{"TEAM", "people 6 pull 1 kN", "LONG", "strength 18 kN"}, nil},
		{"what is broken anyway is not said twice", []string{"TEAM", "people 6 pull 1 kN", "LONG", "strength 2 kN"},
			[]string{"error part-overloaded: long carries 3 kN held, 1.5 times its strength of 2 kN"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, forced(t, put(tub, c.words...))) })
	}
}

// Every weak part is in the one finding, though its sentence names no more than a few; one
// that the author names has its own.
func TestManyWeakParts(t *testing.T) {
	var parts, line strings.Builder
	// thirteen strands: 1/13 kN in each, twice that on every pulley
	parts.WriteString("require factor 10\nanchor head\nload tub weight 1 kN\nhauler team\nrope long strength 50 kN\n")
	line.WriteString("reeve long: tub")
	for i := range 6 {
		fmt.Fprintf(&parts, "pulley up%d on head strength %d kN\npulley down%d on tub strength 1 kN\n", i, i+1, i)
		fmt.Fprintf(&line, " / up%d \\ down%d", i, i)
	}
	text := parts.String() + line.String() + " / team\n"
	_, found := examined(text)
	weak := only(partOverloaded.Name, found)
	if assert.Len(t, weak, 1) {
		names := append([]string{weak[0].Subject}, weak[0].Also...)
		slices.Sort(names)
		assert.Equal(t, []string{"down0", "down1", "down2", "down3", "down4", "down5", "up0"}, names)
		assert.Contains(t, weak[0].Message, "under it too: ")
	}
	_, found = examined(text + "accept part-overloaded at down3 because \"It is new.\"\n")
	weak = only(partOverloaded.Name, found)
	if assert.Len(t, weak, 1) {
		assert.NotContains(t, append(weak[0].Also, weak[0].Subject), "down3")
		assert.NotContains(t, weak[0].Message, "down3")
	}
}

// All that each rule finds is about a part that the rig has, at a place in the text.
func TestForcesNameTheirParts(t *testing.T) {
	for name, words := range map[string][]string{
		"overload": {"LONG", "strength 2 kN"}, "slip": {"GRAB", "slips 1 kN"}, "people": {"TEAM", "people 1"},
	} {
		f, found := examined(put(tub, words...))
		found = slices.DeleteFunc(found, func(d diag.Diagnostic) bool { return d.Severity < diag.Advice })
		assert.NotEmpty(t, found, name)
		for _, d := range found {
			assert.NotNil(t, f.Model.Rigs[0].Part(d.Subject), d.Message)
			assert.NotZero(t, d.Place.Span.End, d.Message)
		}
	}
}

// The rope's own way of being shared is told by a share; where statics leaves it open the
// rule speaks for the part, and part-overloaded does not.
func TestOpenSharesAreSaidOnce(t *testing.T) {
	const twin = `
anchor  head
load    tub            weight 3 kN
hauler  team
pulley  left   on head  strength 5 kN
pulley  right  on head  strength 7 kN
rope    one
rope    two

reeve one: tub / left \ team %SHARE%
reeve two: tub / right \ team

rule redirect-loads-anchor off
`
	assert.Equal(t, []string{"warning load-shared-unknown: left carries 0 to 6 kN hauling, as one and two happen to share the load, and bears 5 kN"},
		forced(t, put(twin)))
	assert.Empty(t, forced(t, put(twin, "SHARE", "(share 20 to 80 %)")))
	assert.Equal(t, []string{"warning part-overloaded: left can carry up to 5.4 kN hauling, 1.08 times its strength of 5 kN"},
		forced(t, put(twin, "SHARE", "(share 20 to 90 %)")))
}
