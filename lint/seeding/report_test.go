package seeding_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
	"fairlead/lint/seeding"
)

// guide has the report between its two markers.
const (
	guide = "../../DEVELOPERS.md"
	begin = "<!-- generated: seeded faults -->\n"
	end   = "<!-- end -->"
)

// TestReport makes the faults, finds them, and compares the table of the contributor guide
// with what came out; -update writes it. No harmful fault may be missed but those that
// excuses explain.
func TestReport(t *testing.T) {
	if racing || testing.Short() {
		t.Skip("thousands of faults")
	}
	list := trials(t)
	require.NotEmpty(t, list)
	text, err := os.ReadFile(guide)
	require.NoError(t, err)
	head, rest, found := strings.Cut(string(text), begin)
	_, tail, closed := strings.Cut(rest, end)
	require.True(t, found && closed, "%s has no place for the report", guide)
	langtest.Golden(t, guide, head+begin+"\n"+table(list)+"\n"+end+tail)

	used := map[*excuse]bool{}
	for _, tr := range list {
		if !tr.change.Harmful() || len(tr.found) > 0 {
			continue
		}
		if list := excused(tr); list != nil {
			for _, e := range list {
				used[e] = true
			}
			continue
		}
		t.Errorf("missed: %s: %s: %s\n%s", tr.rig, tr.Kind.Name, tr.Done, strings.Join(tr.change.Worse, "; "))
	}
	for _, e := range excuses {
		assert.True(t, used[e], "nothing is missed any more that this explains: %+v", *e)
	}
}

// row counts what came out of the faults of one kind.
type row struct {
	made, harmless, other, claimed, harmful, found, there int
	rules                                                 map[string]int
}

func (r *row) add(tr *trial) {
	r.made++
	switch {
	case tr.change.Harmless():
		r.harmless++
		return
	case !tr.change.Harmful():
		r.other++
		if len(tr.found) > 0 || tr.claims {
			r.claimed++
		}
	default:
		r.harmful++
		if len(tr.found) > 0 {
			r.found++
		}
		if tr.there {
			r.there++
		}
	}
	rules := slices.Clone(tr.found)
	slices.Sort(rules)
	for _, rule := range slices.Compact(rules) {
		r.rules[rule]++
	}
}

func (r *row) String() string {
	return fmt.Sprintf("%d | %d | %d | %d | %d | %d | %d", r.made, r.harmless, r.other, r.claimed, r.harmful, r.found, r.there)
}

// table writes the report as Markdown, a line a kind and one for all.
func table(list []*trial) string {
	rows, all := map[*seeding.Kind]*row{}, &row{rules: map[string]int{}}
	for _, k := range seeding.Kinds() {
		rows[k] = &row{rules: map[string]int{}}
	}
	for _, tr := range list {
		rows[tr.Kind].add(tr)
		all.add(tr)
	}
	var out strings.Builder
	out.WriteString("| fault | made | harmless | another rig | by claims | harmful | found | there | by |\n")
	out.WriteString("| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n")
	for _, k := range seeding.Kinds() {
		fmt.Fprintf(&out, "| %s | %s | %s |\n", k.Summary, rows[k], byRules(rows[k].rules))
	}
	fmt.Fprintf(&out, "| all | %s | %d rules |\n", all, len(all.rules))
	return out.String()
}

// byRules names the rules that find a kind of fault, the one that finds most first.
func byRules(rules map[string]int) string {
	var names []string
	for name := range rules {
		names = append(names, name)
	}
	slices.SortFunc(names, func(a, b string) int {
		if d := rules[b] - rules[a]; d != 0 {
			return d
		}
		return strings.Compare(a, b)
	})
	for i, name := range names {
		names[i] = fmt.Sprintf("`%s` %d", name, rules[name])
	}
	return strings.Join(names, ", ")
}
