package lsp

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// mustClients is the environment variable under which no client may be missing.
const mustClients = "FAIRLEAD_CLIENTS"

// written is a rig with letters of all widths before what is edited.
const written = `# Größe: 🧗 の
rig shaft "Drei 🧗 zu 𝔢ins"

anchor  𝔞nker    strength 30 kN
load    litter   mass 180 kg
hauler  team     people 3
pulley  top      on 𝔞nker  efficiency 92 %
hitch   grab
pulley  runner   on grab  efficiency 92 %
rope    long

reeve long: litter / grab / top \ runner / team

expect load on 𝔞nker under 1 kN   # 🧗🧗 too little
`

// typedIn are edits of written, in UTF-16: after letters of all widths, over a line end,
// and one that puts letters in. They lead to the text edited.
const typedIn = `[
  {"range": {"start": {"line": 13, "character": 28}, "end": {"line": 13, "character": 29}}, "text": "4"},
  {"range": {"start": {"line": 6, "character": 43}, "end": {"line": 7, "character": 0}}, "text": "  holds  litter\n"},
  {"range": {"start": {"line": 1, "character": 27}, "end": {"line": 1, "character": 27}}, "text": " 🧗 の"},
  {"range": {"start": {"line": 13, "character": 52}, "end": {"line": 13, "character": 52}}, "text": "\nexpect load on ä🧗 1\nexpect load on hed under 2 kN"}
]`

// conversation is what a client writes down.
type conversation struct {
	Error         string
	Encoding      *string
	First, Second []clientFinding
	Text          string
	Hover         struct {
		Contents struct{ Value string }
	}
	Definition         []struct{ URI string }
	Renamed, Formatted string
}

type clientFinding struct {
	Code     string
	Severity int
	Message  string
	Range    struct{ Start, End struct{ Line, Character int } }
}

// fromCommandLine is a finding in the machine output of lint.
type fromCommandLine struct {
	Rule     string `json:"rule"`
	Severity string `json:"severity"`
	Message  string `json:"message"`
	Range    struct{ Start, End struct{ Line, Character int } }
}

// program builds what the clients start.
func program(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "fairlead.exe")
	out, err := exec.Command("go", "build", "-o", path, "fairlead/cmd/fairlead").CombinedOutput()
	require.NoError(t, err, "%s", out)
	return path
}

// needs finds a program, or skips the test where it may be missing.
func needs(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		missing(t, name+" is not installed")
	}
	return path
}

func missing(t *testing.T, why string) {
	t.Helper()
	if os.Getenv(mustClients) == "must" {
		require.Fail(t, why, "%s says that no client may be missing", mustClients)
	}
	t.Skip(why + ": the server is not tested with it")
}

// yard makes a folder with the rig and the edits, and gives what a client is told.
func yard(t *testing.T, program string) (folder string, env []string) {
	t.Helper()
	folder = t.TempDir()
	for name, text := range map[string]string{"shäft 1.rig": written, "edits.json": typedIn} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644))
	}
	home := t.TempDir()
	return folder, append(os.Environ(),
		"HOME="+home, "XDG_CACHE_HOME="+home, "XDG_CONFIG_HOME="+home, "XDG_DATA_HOME="+home, "LC_ALL=C.UTF-8",
		"PROGRAM="+program, "FILE="+filepath.Join(folder, "shäft 1.rig"), "EDITS="+filepath.Join(folder, "edits.json"),
		"RESULT="+filepath.Join(folder, "result.json"))
}

// play runs a client and reads what it wrote down.
func play(t *testing.T, folder string, env []string, name string, args ...string) (c conversation, raw map[string]any) {
	t.Helper()
	cmd := exec.Command(name, args...)
	cmd.Env, cmd.Dir, cmd.WaitDelay = env, folder, time.Second
	timer := time.AfterFunc(3*time.Minute, func() { _ = cmd.Process.Kill() })
	defer timer.Stop()
	out, err := cmd.CombinedOutput()
	text, unread := os.ReadFile(filepath.Join(folder, "result.json"))
	require.NoError(t, unread, "%s", out)
	require.NoError(t, json.Unmarshal(text, &c), "%s", text)
	require.NoError(t, json.Unmarshal(text, &raw))
	require.Empty(t, c.Error, "%s", out)
	require.NoError(t, err, "%s", out)
	return c, raw
}

// line gives what the program prints on the command line for
// the text of a file.
func line(t *testing.T, program, text string, args ...string) string {
	t.Helper()
	cmd := exec.Command(program, append(args, "--as", "shäft 1.rig", "-")...)
	cmd.Stdin = strings.NewReader(text)
	out, err := cmd.Output()
	if _, found := err.(*exec.ExitError); !found {
		require.NoError(t, err)
	}
	return string(out)
}

// same asserts that findings are those of the command line on a text.
func same(t *testing.T, program, text string, got []clientFinding) {
	t.Helper()
	var want struct{ Findings []fromCommandLine }
	require.NoError(t, json.Unmarshal([]byte(line(t, program, text, "lint", "--format", "json")), &want))
	require.NotEmpty(t, want.Findings)
	require.Len(t, got, len(want.Findings))
	severity := map[string]int{"error": 1, "warning": 2, "advice": 3}
	for i, w := range want.Findings {
		assert.Equal(t, w.Rule, got[i].Code)
		assert.Equal(t, w.Message, got[i].Message)
		assert.Equal(t, severity[w.Severity], got[i].Severity)
		assert.Equal(t, w.Range, got[i].Range, "%s", w.Message)
	}
}

// check compares what every client does with what the command line says.
func check(t *testing.T, program string, c conversation) {
	t.Helper()
	same(t, program, written, c.First)
	assert.Contains(t, c.Text, "efficiency 92 %  holds  litter\nhitch")
	assert.Contains(t, c.Text, "Drei 🧗 zu 𝔢ins 🧗 の\"\n")
	assert.Contains(t, c.Text, "under 4 kN   # 🧗🧗 too little\nexpect load on ä🧗 1\nexpect load on hed under 2 kN\n")
	same(t, program, c.Text, c.Second)
	assert.Contains(t, c.Hover.Contents.Value, "grips 1.23 kN hauling")
	require.Len(t, c.Definition, 1)
	assert.True(t, strings.HasSuffix(c.Definition[0].URI, "sh%C3%A4ft%201.rig"), c.Definition[0].URI)
	assert.Equal(t, strings.ReplaceAll(c.Text, "grab", "tractor"), c.Renamed)
	assert.Equal(t, line(t, program, written, "fmt"), c.Formatted)
}

func TestNeovim(t *testing.T) {
	nvim := needs(t, "nvim")
	p := program(t)
	folder, env := yard(t, p)
	script, err := filepath.Abs("testdata/client.lua")
	require.NoError(t, err)
	c, raw := play(t, folder, env, nvim, "--headless", "-u", "NONE", "-i", "NONE", "-n", "-c", "luafile "+script)
	check(t, p, c)
	assert.Equal(t, float64(len(c.Second)), raw["shown"], "the editor shows all findings")
}

func TestEmacs(t *testing.T) {
	emacs := needs(t, "emacs")
	if out, err := exec.Command(emacs, "--batch", "--eval", "(progn (package-initialize) (require 'eglot))").CombinedOutput(); err != nil {
		missing(t, "Emacs has no eglot ("+strings.TrimSpace(string(out))+")")
	}
	p := program(t)
	folder, env := yard(t, p)
	script, err := filepath.Abs("testdata/client.el")
	require.NoError(t, err)
	c, _ := play(t, folder, env, emacs, "--batch", "-l", script)
	check(t, p, c)
}

func TestNode(t *testing.T) {
	node := needs(t, "node")
	if _, err := os.Stat("testdata/node/node_modules/vscode-languageserver-protocol"); err != nil {
		missing(t, "the client library is not installed; npm ci in testdata/node installs it")
	}
	script, err := filepath.Abs("testdata/node/client.mjs")
	require.NoError(t, err)
	p := program(t)
	for _, encoding := range []string{"utf-16", "utf-8"} {
		t.Run(encoding, func(t *testing.T) {
			folder, env := yard(t, p)
			edits := filepath.Join(folder, "edits.json")
			if encoding == "utf-8" {
				require.NoError(t, os.WriteFile(edits, []byte(inBytes(t)), 0o644))
			}
			c, raw := play(t, folder, env, node, script, p, filepath.Join(folder, "shäft 1.rig"), edits, filepath.Join(folder, "result.json"), encoding)
			require.NotNil(t, c.Encoding)
			assert.Equal(t, encoding, *c.Encoding)
			if encoding == "utf-8" {
				inWide(t, written, c.First)
				inWide(t, c.Text, c.Second)
			}
			check(t, p, c)
			checkAll(t, raw)
		})
	}
}

// checkAll asserts what only the library on Node asks for.
func checkAll(t *testing.T, raw map[string]any) {
	t.Helper()
	for _, name := range []string{"symbols", "hints", "lenses", "folds", "actions", "found", "references", "selection"} {
		assert.NotEmpty(t, raw[name], name)
	}
	assert.Equal(t, 0.0, raw["status"], "the server ends as it was told")
	assert.Equal(t, raw["formatted"], raw["rangeFormatted"])
	assert.NotEmpty(t, raw["tokens"].(map[string]any)["data"])
	assert.Equal(t, raw["second"], raw["pulled"].(map[string]any)["items"], "pulled is what is pushed")
	assert.Equal(t, "grab", raw["prepared"].(map[string]any)["placeholder"])
	var labels []string
	for _, i := range raw["completion"].(map[string]any)["items"].([]any) {
		labels = append(labels, i.(map[string]any)["label"].(string))
	}
	assert.Contains(t, labels, "grab")
	assert.Contains(t, labels, "𝔞nker")
	assert.NotContains(t, labels, "runner")
}

// inBytes gives the edits with columns counted in bytes.
func inBytes(t *testing.T) string {
	t.Helper()
	var list []struct {
		Range struct {
			Start, End struct {
				Line      uint32 `json:"line"`
				Character uint32 `json:"character"`
			}
		} `json:"range"`
		Text string `json:"text"`
	}
	require.NoError(t, json.Unmarshal([]byte(typedIn), &list))
	out := []any{}
	text := written
	for _, c := range list {
		l, narrow := linesOf(text, true), linesOf(text, false)
		from := l.offset(piecePosition(c.Range.Start.Line, c.Range.Start.Character))
		to := l.offset(piecePosition(c.Range.End.Line, c.Range.End.Character))
		a, b := narrow.position(from), narrow.position(to)
		out = append(out, map[string]any{"text": c.Text, "range": map[string]any{
			"start": map[string]any{"line": a.Line, "character": a.Character}, "end": map[string]any{"line": b.Line, "character": b.Character},
		}})
		text = text[:from] + c.Text + text[to:]
	}
	b, err := json.Marshal(out)
	require.NoError(t, err)
	return string(b)
}

// inWide turns the places of findings from bytes into UTF-16.
func inWide(t *testing.T, text string, list []clientFinding) {
	t.Helper()
	wide, narrow := linesOf(text, true), linesOf(text, false)
	for i := range list {
		r := &list[i].Range
		for _, p := range []*struct{ Line, Character int }{&r.Start, &r.End} {
			at := wide.position(narrow.offset(piecePosition(uint32(p.Line), uint32(p.Character))))
			p.Line, p.Character = int(at.Line), int(at.Character)
		}
	}
}
