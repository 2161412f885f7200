package setups

import (
	"testing"
)

// Installed as its README says, Neovim shows what the language server finds, in the way
// of the version at hand and in that of later ones.
func TestNeovimServer(t *testing.T) {
	program := need(t, "nvim", "neovim of the system's packages")
	for _, way := range []struct {
		what  string
		first []string
	}{
		{"as it is", nil},
		{"as from 0.8 on", []string{"--cmd", "luafile " + script(t, "start.lua")}},
	} {
		t.Run(way.what, func(t *testing.T) {
			_, env := installed(t, "neovim")
			try(t, "", env, program, append(way.first, "--headless", "-i", "NONE", "-n", "-c", "luafile "+script(t, "serve.lua"))...)
		})
	}
}
