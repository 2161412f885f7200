package rigfmt

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/source"
)

// formatCase is a text and its standard style, to the byte.
type formatCase struct{ name, in, want string }

func runCases(t *testing.T, cases []formatCase) {
	t.Helper()
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, formatted(t, c.in)) })
	}
}

// fileCases are point 1: the file as a whole.
var fileCases = []formatCase{
	{"empty", "", ""},
	{"blank", " \t\n\n", ""},
	{"only comments", "# a\n\n\n\n# b", "# a\n\n# b\n"},
	{"byte order mark", "\uFEFFanchor a\n", "anchor  a\n"},
	{"tabs", "anchor\ta\t\tstrength\t3 kN\t\n", "anchor  a  strength 3 kN\n"},
	{"indented", "   anchor a\n  # note\n\tanchor b\n", "anchor  a\n# note\nanchor  b\n"},
	{"no final newline", "anchor a", "anchor  a\n"},
	{"blank lines at the ends", "\n\n# x\nanchor a\n\n \n", "# x\nanchor  a\n"},
	{"blank lines in a row", "anchor a\n\n \n\t\nanchor b\n", "anchor  a\n\nanchor  b\n"},
	{"trailing blanks of comments", "# x \t\nanchor a # y  \n", "# x\nanchor  a  # y\n"},
	{"line ends of the first line", "anchor a\r\nanchor b\nanchor c", "anchor  a\r\nanchor  b\r\nanchor  c\r\n"},
	{"line feeds of the first line", "anchor a\nanchor b\r\n\r\n# c\r\n", "anchor  a\nanchor  b\n\n# c\n"},
	{"a first line that is blank", "\r\nanchor a\n", "anchor  a\r\n"},
	{"tabs in comments and texts stay", "rig a \"b\tc\" #\td\n", "rig a \"b\tc\"  #\td\n"},
}

func TestPoint1File(t *testing.T) { runCases(t, fileCases) }

// groupCases are point 2: what is aligned with what.
var groupCases = []formatCase{
	{
		"a blank line ends a group",
		"anchor a strength 1 kN\npulley long-name strength 1 kN\n\nanchor b strength 1 kN\n",
		"anchor  a          strength 1 kN\npulley  long-name  strength 1 kN\n\nanchor  b  strength 1 kN\n",
	},
	{
		"another class ends a group",
		"anchor a strength 1 kN\nreeve r: a / b\npulley long-name strength 1 kN\nexpect held # x\nreeve long: a / b # y\n",
		"anchor  a  strength 1 kN\nreeve r: a / b\npulley  long-name  strength 1 kN\nexpect held  # x\nreeve long: a / b  # y\n",
	},
	{
		"comment lines do not",
		"anchor a strength 1 kN\n   # between\npulley long-name strength 1 kN\n",
		"anchor  a          strength 1 kN\n# between\npulley  long-name  strength 1 kN\n",
	},
	{
		"claims, house rules and rigs are one class",
		"rig r # 1\nexpect held # 2\nrequire factor 10 # 3\n",
		"rig r              # 1\nexpect held        # 2\nrequire factor 10  # 3\n",
	},
}

func TestPoint2Groups(t *testing.T) { runCases(t, groupCases) }

// spacingCases are point 5: the space between tokens.
var spacingCases = []formatCase{
	{"units", "anchor a strength 30kN friction 0.40", "anchor  a  strength 30 kN  friction 0.40\n"},
	{"per cent", "pulley a efficiency 85   to 95%", "pulley  a  efficiency 85 to 95 %\n"},
	{"ratio", "expect advantage 3 : 1\nexpect advantage 2.50: 1", "expect advantage 3:1\nexpect advantage 2.50:1\n"},
	{"colon of a reeving line", "reeve r  :a/b", "reeve r: a / b\n"},
	{"parentheses", "reeve r: a( figure-eight )/ b (angle 90deg  holds a)\\c", "reeve r: a (figure-eight) / b (angle 90 deg holds a) \\ c\n"},
	{"texts", `rig  a   "B \"c\"  \\ d"`, `rig a "B \"c\"  \\ d"` + "\n"},
	{"numbers keep their spelling", "load a mass 080.50 kg slope -0.0 deg", "load  a  mass 080.50 kg  slope -0.0 deg\n"},
	{"claims", "expect   travel 3m per 1m\nexpect load  on a under 2.5", "expect travel 3 m per 1 m\nexpect load on a under 2.5\n"},
	{"libraries", "use\t\"s.rig\"\ninclude a as b   with c mass 9kg raise 1 m without d", "use \"s.rig\"\ninclude a as b with c mass 9 kg raise 1 m without d\n"},
}

func TestPoint5Spacing(t *testing.T) { runCases(t, spacingCases) }

// commentCases are point 8: comments after statements.
var commentCases = []formatCase{
	{
		"two spaces after the longest commented line",
		"anchor a # one\nanchor b strength 30 kN #two\nanchor c strength 30 kN friction 0.4\n",
		"anchor  a                  # one\nanchor  b  strength 30 kN  #two\nanchor  c  strength 30 kN  friction 0.4\n",
	},
	{
		"each group by itself",
		"expect held # one\n\nexpect held when released # two\n",
		"expect held  # one\n\nexpect held when released  # two\n",
	},
	{"text untouched", "rig a #  two   spaces\t# and more", "rig a  #  two   spaces\t# and more\n"},
	{"touching", "rig a# b", "rig a  # b\n"},
}

func TestPoint8Comments(t *testing.T) { runCases(t, commentCases) }

// widthCases are point 9: width is counted in code points.
var widthCases = []formatCase{
	{
		"cells",
		"anchor größe strength 1 kN\nanchor tree-a strength 1 kN\n",
		"anchor  größe   strength 1 kN\nanchor  tree-a  strength 1 kN\n",
	},
	{
		"marks count too",
		"anchor e\u0301 strength 1 kN # x\nanchor ee strength 1 kN # y\n",
		"anchor  e\u0301  strength 1 kN  # x\nanchor  ee  strength 1 kN  # y\n",
	},
}

func TestPoint9Width(t *testing.T) { runCases(t, widthCases) }

func TestErrorsLeaveTheFile(t *testing.T) {
	for _, text := range []string{
		"anchor   a\npuley b", "reeve r: a /", "anchor a  strength 3 kg", "\uFEFFanchor \x01", "anchor a\ranchor b", "anchor a holds",
	} {
		out, problems := Format(source.New("case.rig", text))
		assert.Equal(t, text, out)
		assert.NotEmpty(t, problems)
		formatted(t, text)
	}
}

func TestAdviceDoesNotStopFormatting(t *testing.T) {
	out, problems := Format(source.New("case.rig", "reeve r: a/b"))
	assert.Empty(t, problems)
	assert.Equal(t, "reeve r: a / b\n", out)
}

// shaft is a whole file in the standard style.
const shaft = `# Raise the litter on one rope; the top pulley keeps what the team has won.
rig shaft-raise "Three to one at the shaft head"

anchor  head    strength 30 kN
load    litter  mass 180 kg
hauler  team    people 3

pulley  top     on head  efficiency 92 %  strength 36 kN  holds litter
hitch   grab    prusik   cord 8 mm
pulley  runner  on grab  efficiency 92 %  strength 36 kN
rope    long             diameter 11 mm  length 60 m  strength 30 kN

reeve long: litter / grab / top \ runner / team

expect advantage 3:1
expect held when released
expect load on head under 3 kN
`

func TestStandardStyleStays(t *testing.T) {
	require.Equal(t, shaft, formatted(t, shaft))
	squeezed := strings.Join(strings.FieldsFunc(shaft, func(r rune) bool { return r == '\n' }), "\n")
	for strings.Contains(squeezed, "  ") {
		squeezed = strings.ReplaceAll(squeezed, "  ", " ")
	}
	formatted(t, squeezed)
	formatted(t, strings.ReplaceAll(shaft, "\n", "\r\n"))
}
