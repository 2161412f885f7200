package lint_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
	"fairlead/lang/langtest"
	"fairlead/lang/load"
	"fairlead/lang/resolve"
	"fairlead/lang/syntax"
	"fairlead/lint"
	"fairlead/lint/rules"
)

// short is the house of the rigs here, which leave the belay out to stay short.
var short = load.Text("policy.rig", "policy drawn-short\nrule no-backup off\n")

// examine lints texts, one file each, with all rules.
func examine(texts ...string) ([]*load.Loaded, []diag.Diagnostic) {
	var files []*load.Loaded
	for _, text := range texts {
		f := load.Text("yard.rig", text)
		f.Policy = short
		files = append(files, f)
	}
	return files, lint.Run(files, rules.All())
}

// examineMarked lints a text whose marks are taken out.
func examineMarked(m langtest.Marked) []diag.Diagnostic {
	tree := syntax.Parse(m.File)
	file, problems := resolve.File(tree)
	return lint.Run([]*load.Loaded{{File: m.File, Tree: tree, Model: file, Problems: problems, Policy: short}}, rules.All())
}

// wrongHitch raises nothing until its hitch is moved.
const wrongHitch = `anchor head
load litter
hauler team
pulley top on head holds litter
hitch grab
pulley runner on grab
rope long
`

func TestClaimsAboutFindings(t *testing.T) {
	const fault = wrongHitch + "reeve long: litter / top \\ grab \\ runner / team\n"
	const right = wrongHitch + "reeve long: litter / grab / top \\ runner / team\n"
	for _, c := range []struct{ name, text string }{
		{"expected", fault + "expect finding hitch-on-wrong-strand\n"},
		{"expected at its part", fault + "expect finding hitch-on-wrong-strand at grab\n"},
		{"expected at another", wrongHitch + "reeve long: litter / top \\ ⟦grab⟧hitch-on-wrong-strand \\ runner / team\n" +
			"⟦expect finding hitch-on-wrong-strand at top⟧expectation-unmet-finding\n"},
		{"accepted", fault + "accept hitch-on-wrong-strand at grab because \"A lesson.\"\n"},
		{"expected and accepted", fault + "expect finding hitch-on-wrong-strand\naccept hitch-on-wrong-strand because \"A lesson.\"\n"},
		{"not there", right + "⟦expect finding jammed⟧expectation-unmet-finding\n⟦accept jammed at grab because \"x\"⟧acceptance-unused\n"},
		{"no rule", right + "expect finding ⟦jamed⟧unknown-rule\naccept ⟦no-captures⟧unknown-rule at top because \"x\"\naccept ⟦q⟧unknown-rule because \"x\"\n"},
		{"of the text", right + "anchor spare\naccept unused-part at spare because \"For the next lesson.\"\n"},
		{"of the text, elsewhere", right + "anchor ⟦spare⟧unused-part\n⟦accept unused-part at top because \"x\"⟧acceptance-unused\n"},
		{"an error of the text", right + "pulley low on hed\nexpect finding unknown-part\n"},
		{"an error of the text, accepted", right + "pulley low on ⟦hed⟧unknown-part\n⟦accept unknown-part because \"x\"⟧claim-not-allowed\n"},
		{"an error of the names at a part, accepted", right + "pulley ⟦grab⟧duplicate-name on head\n⟦accept duplicate-name at grab because \"x\"⟧claim-not-allowed\n"},
		{"advice and an error of one name, accepted", wrongHitch + "reeve long: litter / grab / top \\ runner / team\nreeve spare: litter / runner\n" +
			"sling ⟦loop-a⟧missing-reeve\naccept missing-reeve because \"The other is.\"\n"},
		{"an error of the text that is not there, accepted", right + "⟦accept syntax because \"x\"⟧acceptance-unused\n"},
		{"an error of the rig, accepted", fault + "accept hitch-on-wrong-strand because \"x\"\n"},
		{"a failed claim", right + "⟦expect advantage 4:1⟧expectation-failed\n⟦expect finding expectation-failed⟧claim-not-allowed\n" +
			"⟦accept expectation-failed because \"x\"⟧claim-not-allowed\n"},
		{"claims about claims", right + "⟦accept acceptance-unused because \"x\"⟧claim-not-allowed\n⟦expect finding unknown-rule⟧claim-not-allowed\n" +
			"⟦accept expectation-unmet-finding because \"x\"⟧claim-not-allowed\n⟦accept claim-not-allowed because \"x\"⟧claim-not-allowed\n"},
		{"no reason", fault + "accept hitch-on-wrong-strand because ⟦\" \"⟧syntax\n"},
		{"a part that is unknown", right + "expect finding no-capture at ⟦xyz⟧unknown-part\n"},
		{"while an error hides the mechanics", right + "pulley low on ⟦hed⟧unknown-part\nrope b\nreeve b: litter / low\n" +
			"expect finding jammed\naccept jammed because \"x\"\n⟦expect finding mass-missing⟧expectation-unmet-finding\n"},
		{"house rules", "rule ⟦no-kapture⟧unknown-rule off\nrule jammed warning\n" + right},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := langtest.Read(t, "yard.rig", c.text)
			m.Check(t, examineMarked(m))
		})
	}
}

func TestUnknownRuleHasTheNearestName(t *testing.T) {
	files, found := examine(wrongHitch + "reeve long: litter / grab / top \\ runner / team\naccept no-capture-e because \"x\"\n")
	assert.Equal(t, "no-capture-e is not a rule, did you mean no-capture?", found[0].Message)
	assert.Contains(t, langtest.Fixed(t, files[0].File, found, "write no-capture"), "accept no-capture because")
}

// What stands before the first rig belongs to every rig: each is examined, and what
// is the same in several is said once.
func TestSeveralRigs(t *testing.T) {
	const before = "anchor head\nload litter\nhauler team\npulley top on head holds litter\nhitch grab\npulley runner on grab\nrope long\n"
	const wrong = "reeve long: litter / top \\ ⟦grab⟧hitch-on-wrong-strand \\ runner / team\n"
	const right = "reeve long: litter / grab / top \\ runner / team\n"
	for _, c := range []struct{ name, text string }{
		{"one fault in what is shared", before + wrong + "rig a\nunits N m\nrig b\n"},
		{"a fault of one rig", before + "rig a\n" + right + "rig b\n" + wrong},
		{"a claim of one rig about what is shared", before + "anchor spare\nrig a\n" + right +
			"accept unused-part because \"x\"\nrig b\n" + right},
		{"a claim of another rig", before + "rig a\n" + right + "anchor ⟦spare⟧unused-part\nrig b\n" + right +
			"⟦accept unused-part because \"x\"⟧acceptance-unused\n"},
		{"a shared claim", before + "⟦expect finding hitch-on-wrong-strand⟧expectation-unmet-finding\nrig a\n" + right +
			"rig b\n" + "reeve long: litter / top \\ grab \\ runner / team\n"},
		{"a shared claim about a figure", before + "⟦expect advantage 3:1⟧expectation-failed\nrig a\n" + right +
			"rig b\nreeve long: litter / top \\ team\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := langtest.Read(t, "yard.rig", c.text)
			m.Check(t, examineMarked(m))
		})
	}
}

func TestFilesKeepTheirOrder(t *testing.T) {
	fault := wrongHitch + "reeve long: litter / top \\ grab \\ runner / team\n"
	files, found := examine("anchor a\n", fault, "anchor b\n")
	var order []string
	for _, d := range found {
		order = append(order, d.Rule+" "+d.Subject)
		assert.Contains(t, []*load.Loaded{files[0], files[1], files[2]}[len(order)-1].File.Text, d.Place.Text())
	}
	assert.Equal(t, []string{"unused-part a", "hitch-on-wrong-strand grab", "unused-part b"}, order)
}

// The examples in messages name rules that there are.
func TestExamplesNameRules(t *testing.T) {
	names := lint.Names(rules.All())
	example := regexp.MustCompile(`as in (?:accept|expect finding|rule) (\S+)`)
	for _, text := range []string{"accept\n", "expect finding\n", "rule jammed\n"} {
		_, found := examine(text)
		require.Len(t, found, 1, text)
		m := example.FindStringSubmatch(found[0].Message)
		require.NotNil(t, m, found[0].Message)
		assert.Contains(t, names, m[1])
	}
}

// An acceptance is counted once for each finding that it keeps quiet, an expectation never.
func TestAcceptedFindingsAreCounted(t *testing.T) {
	const right = wrongHitch + "reeve long: litter / grab / top \\ runner / team\n"
	for text, want := range map[string]int{
		right: 0,
		right + "anchor a\nanchor b\naccept unused-part because \"x\"\n":                                       2,
		right + "anchor a\nanchor b\naccept unused-part at a because \"x\"\nexpect finding unused-part at b\n": 1,
		"anchor a\nrig one\n" + right + "accept unused-part because \"x\"\nrig two\n" + right:                  1,
		"anchor a\naccept unused-part because \"x\"\nrig one\n" + right + "rig two\n" + right:                  1,
		right + "pulley low on hed\naccept unknown-part because \"x\"\n":                                       0,
		"pulley low\naccept unused-part because \"x\"\nexpect finding unused-part\nload litter\n":              2,
	} {
		f := load.Text("yard.rig", text)
		assert.Equal(t, want, lint.Examine([]*load.Loaded{f}, rules.All()).Accepted, text)
	}
}

func TestNames(t *testing.T) {
	names := lint.Names(rules.All())
	assert.IsIncreasing(t, names)
	for _, name := range []string{"no-capture", "syntax", "unknown-part", "unknown-rule", "acceptance-unused"} {
		assert.Contains(t, names, name)
	}
	assert.Len(t, names, len(rules.All()), "the list has every rule once")
	assert.Equal(t, lint.Names(nil), lint.Names([]*lint.Rule{}), "the rules of the text are always known")
}
