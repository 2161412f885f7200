package setups

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// faces are the faces of Emacs for the sorts of tokens. A used name has none.
var faces = map[sort][]string{
	statement:   {"rig-statement"},
	kind:        {"rig-kind"},
	clause:      {"rig-clause"},
	structure:   {"rig-structure"},
	claim:       {"rig-claim"},
	figure:      {"rig-figure"},
	choice:      {"rig-choice"},
	number:      {"rig-number"},
	unit:        {"rig-unit"},
	quoted:      {"font-lock-string-face"},
	stroke:      {"rig-stroke"},
	punctuation: {""},
	comment:     {"font-lock-comment-face", "font-lock-comment-delimiter-face"},
	title:       {"rig-title"},
	declared:    {"rig-declared"},
	name:        {""},
	model:       {"rig-model"},
	rule:        {"rig-rule"},
	word:        {"rig-word"},
	strange:     {"rig-strange"},
}

// inNotes are the faces in Markdown: what has none there has that of code.
func inNotes(faces map[sort][]string) map[sort][]string {
	with := map[sort][]string{}
	for s, list := range faces {
		if with[s] = list; list[0] == "" {
			with[s] = []string{"markdown-code-face", "markdown-pre-face"}
		}
	}
	return with
}

// emacs gives the path of Emacs, and the arguments with which it runs a script.
func emacs(t *testing.T, script string) (program string, args []string) {
	t.Helper()
	program = need(t, "emacs", "emacs-nox of the system's packages")
	folder, err := filepath.Abs(filepath.Join(editors, "emacs"))
	require.NoError(t, err)
	return program, []string{"--batch", "-f", "package-initialize", "-L", folder, "-l", filepath.Join("testdata", script)}
}

// needPackage skips a test for want of a package of Emacs.
func needPackage(t *testing.T, program, feature, install string) {
	t.Helper()
	ask := exec.Command(program, "--batch", "-f", "package-initialize", "--eval", "(require '"+feature+")")
	if ask.Run() != nil {
		lacks(t, feature+" of Emacs", install)
	}
}

func TestEmacsFaces(t *testing.T) {
	list := samples(t)
	compareGroups(t, list, emacsFaces(t, "rig-mode", list, notes{}), faces)
}

func TestEmacsFacesInNotes(t *testing.T) {
	program, _ := emacs(t, "")
	needPackage(t, program, "markdown-mode", "elpa-markdown-mode of the system's packages")
	for _, n := range allNotes {
		if n.what == "quote" { // markdown-mode leaves the blocks of a quote plain
			continue
		}
		t.Run(n.what, func(t *testing.T) {
			list := manualOnly(samples(t))
			compareGroups(t, list, emacsFaces(t, "markdown-mode", list, n), inNotes(faces))
		})
	}
}

// emacsFaces gives for each character of each token of samples, in order, its face.
func emacsFaces(t *testing.T, mode string, list []sample, around notes) [][]string {
	t.Helper()
	type text struct {
		Mode   string `json:"mode"`
		Text   string `json:"text"`
		Places []int  `json:"places"`
	}
	var texts []text
	for _, s := range list {
		one := text{Mode: mode, Text: around.wrap(s.text)}
		starts := lineStarts(one.Text)
		eachPlace(s, func(line, column int, _ token) {
			at := starts[line+around.skip()] + len(around.prefix) + column
			one.Places = append(one.Places, runes(one.Text, at)+1)
		})
		texts = append(texts, one)
	}
	in, err := json.Marshal(texts)
	require.NoError(t, err)
	folder := t.TempDir()
	from, to := filepath.Join(folder, "texts.json"), filepath.Join(folder, "faces.json")
	require.NoError(t, os.WriteFile(from, in, 0o600))
	program, args := emacs(t, "faces.el")
	command(t, nil, []string{"TEXTS=" + from, "GROUPS=" + to, "HOME=" + folder}, program, args...)
	out, err := os.ReadFile(to)
	require.NoError(t, err)
	var read [][]string
	require.NoError(t, json.Unmarshal(out, &read))
	return read
}

// Installed as its README says, the set-up knows the files, indents, formats on save and
// lists findings.
func TestEmacsSetup(t *testing.T) {
	program := need(t, "emacs", "emacs-nox of the system's packages")
	needPackage(t, program, "markdown-mode", "elpa-markdown-mode of the system's packages")
	home, env := installed(t, "emacs")
	try(t, `0 of [1-9][0-9]* failed, 0 skipped`, env, program, startEmacs(t, home, "setup.el")...)
}

// startEmacs gives the arguments with which an installed Emacs runs a script.
func startEmacs(t *testing.T, home, name string) []string {
	t.Helper()
	return []string{
		"--batch", "--eval", `(setq user-emacs-directory "` + home + `/.emacs.d/")`, "-f", "package-initialize",
		"-l", filepath.Join(home, ".emacs.d/init.el"), "-l", script(t, name),
	}
}

// The file compiles without a warning, and what it says of itself is complete.
func TestEmacsCompiles(t *testing.T) {
	program := need(t, "emacs", "emacs-nox of the system's packages")
	text, err := os.ReadFile(filepath.Join(editors, "emacs/rig-mode.el"))
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "rig-mode.el")
	require.NoError(t, os.WriteFile(file, text, 0o600))
	command(t, nil, nil, program, "--batch", "--eval", "(setq byte-compile-error-on-warn t)", "-f", "batch-byte-compile", file)
}

// Installed as its README says, Emacs shows what the language server finds.
func TestEmacsServer(t *testing.T) {
	program := need(t, "emacs", "emacs-nox of the system's packages")
	needPackage(t, program, "eglot", "elpa-eglot of the system's packages")
	needPackage(t, program, "markdown-mode", "elpa-markdown-mode of the system's packages")
	home, env := installed(t, "emacs")
	try(t, `0 of [1-9][0-9]* failed, 0 skipped`, env, program, startEmacs(t, home, "serve.el")...)
}
