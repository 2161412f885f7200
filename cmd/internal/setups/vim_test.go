package setups

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// groups are the syntax groups of Vim for the sorts of tokens. A used name has none.
var groups = map[sort][]string{
	statement:   {"rigStatement"},
	kind:        {"rigKind", "rigKindOf", "rigStockKind"},
	clause:      {"rigClause"},
	structure:   {"rigStructure", "rigPlace", "rigIncludeAs", "rigJoinTo"},
	claim:       {"rigClaim"},
	figure:      {"rigFigure"},
	choice:      {"rigChoice", "rigChoiceSet"},
	number:      {"rigNumber"},
	unit:        {"rigUnit", "rigUnitWord", "rigPercent"},
	quoted:      {"rigString", "rigEscape"},
	stroke:      {"rigStroke"},
	punctuation: {"rigDelimiter", "rigColon"},
	comment:     {"rigComment"},
	title:       {"rigTitle", "rigIncluded"},
	declared:    {"rigDeclared"},
	name:        {"", "rigUsed", "rigUsedClause", "rigJoined", "rigNotes", "rigLine"},
	model:       {"rigModel"},
	rule:        {"rigRule", "rigRuleSet", "rigAccepted"},
	word:        {"rigWord"},
	strange:     {"rigUnclosed", "rigStrange"},
}

// vims are the programs that read the folder vim.
var vims = []struct{ program, install string }{
	{"vim", "vim of the system's packages"},
	{"nvim", "neovim of the system's packages"},
}

// startVim gives the arguments with which a program runs a script, with nothing but the
// set-up of the folders and what comes with the program.
func startVim(t *testing.T, name string, folders ...string) []string {
	t.Helper()
	args := []string{"-N", "-es", "-i", "NONE", "-n", "-u", "NORC", "--cmd", "set nocompatible"}
	for _, folder := range folders {
		abs, err := filepath.Abs(filepath.Join(editors, folder))
		require.NoError(t, err)
		args = append(args, "--cmd", "set rtp^="+abs, "--cmd", "set rtp+="+abs+"/after")
	}
	args = append(args, "--cmd", "set encoding=utf-8", "--cmd", "filetype plugin indent on", "--cmd", "syntax on")
	return append(args, "-S", script(t, name))
}

func TestVimSyntax(t *testing.T) {
	for _, v := range vims {
		t.Run(v.program, func(t *testing.T) {
			program := need(t, v.program, v.install)
			list := samples(t)
			compareGroups(t, list, vimGroups(t, program, "rig", list, notes{}), groups)
		})
	}
}

func TestVimSyntaxInNotes(t *testing.T) {
	for _, v := range vims {
		for _, n := range allNotes {
			t.Run(v.program+" "+n.what, func(t *testing.T) {
				program := need(t, v.program, v.install)
				list := manualOnly(samples(t))
				compareGroups(t, list, vimGroups(t, program, "markdown", list, n), groups)
			})
		}
	}
}

// vimGroups gives for each byte of each token of samples, in order, its syntax group.
func vimGroups(t *testing.T, program, filetype string, list []sample, around notes) [][]string {
	t.Helper()
	type text struct {
		FileType string   `json:"filetype"`
		Text     string   `json:"text"`
		Places   [][2]int `json:"places"`
	}
	var texts []text
	for _, s := range list {
		one := text{FileType: filetype, Text: around.wrap(s.text)}
		eachPlace(s, func(line, column int, _ token) {
			one.Places = append(one.Places, [2]int{line + around.skip() + 1, column + len(around.prefix) + 1})
		})
		texts = append(texts, one)
	}
	in, err := json.Marshal(texts)
	require.NoError(t, err)
	folder := t.TempDir()
	from, to := filepath.Join(folder, "texts.json"), filepath.Join(folder, "groups.json")
	require.NoError(t, os.WriteFile(from, in, 0o600))
	command(t, nil, []string{"TEXTS=" + from, "GROUPS=" + to, "HOME=" + folder}, program, startVim(t, "groups.vim", "vim")...)
	out, err := os.ReadFile(to)
	require.NoError(t, err)
	var read [][]string
	require.NoError(t, json.Unmarshal(out, &read))
	return read
}

// Installed as its README says, the set-up knows the files, indents, formats on save,
// fills the quickfix list and, in Vim, watches.
func TestVimSetup(t *testing.T) {
	for _, v := range vims {
		t.Run(v.program, func(t *testing.T) {
			program := need(t, v.program, v.install)
			args := []string{"-N", "-es", "-i", "NONE", "-n", "-S", script(t, "setup.vim")}
			if v.program == "vim" {
				home, env := installed(t, "vim")
				try(t, "", env, program, append([]string{"-u", filepath.Join(home, ".vimrc"), "--cmd", "set encoding=utf-8"}, args...)...)
				return
			}
			_, env := installed(t, "neovim")
			try(t, "", env, program, args...)
		})
	}
}
