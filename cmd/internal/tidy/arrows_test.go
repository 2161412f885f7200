package tidy

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// layers is the one way through the house: a package may import packages of
// earlier layers only, never one of its own layer.
var layers = [][]string{
	{"lang/source", "lang/quantity", "lang/stock", "lang/reference", "solve/lp", "solve/report/page"},
	{"lang/diag", "lang/markdown"},
	{"lang/syntax"},
	{"lang/model", "fmt"},
	{"lang/resolve", "solve"},
	{"lang/load", "lint/house", "solve/count", "solve/draw"},
	{"solve/report", "lint"},
	{"lint/rules", "lint/seeding", "cmd/internal/show"},
	{"cmd/internal/ide"},
	{"cmd/internal/lsp", "cmd/internal/watch"},
	{"cmd/internal/cli"},
	{"cmd/fairlead"},
}

// testOnly are the packages that only tests import.
var testOnly = []string{"lang/langtest", "cmd/internal/tidy", "cmd/internal/setups"}

// strangers are packages, ours or others', that may be imported in the named
// folders only: there they do their one job.
var strangers = map[string][]string{
	"github.com/alecthomas/participle/v2":       {"lang/syntax"},
	"github.com/alecthomas/participle/v2/lexer": {"lang/syntax"},
	"github.com/spf13/cobra":                    {"cmd/internal/cli"},
	"go.lsp.dev/protocol":                       {"cmd/internal/lsp"},
	"go.lsp.dev/jsonrpc2":                       {"cmd/internal/lsp"},
	"go.lsp.dev/uri":                            {"cmd/internal/lsp"},
	"github.com/fatih/color":                    {"solve/report/page"},
	"os":                                        {"lang/load", "cmd/internal/cli", "cmd/internal/lsp", "cmd/internal/watch", "cmd/fairlead"},
}

// unknown are packages that a package and all below it must not know.
var unknown = map[string][]string{
	"solve":      {"lang/syntax", "lang/diag", "lang/load", "lang/resolve"},
	"lang/model": {"lang/diag"},
}

func layerOf(folder string) int {
	return slices.IndexFunc(layers, func(layer []string) bool { return slices.Contains(layer, folder) })
}

func TestImportsGoOneWay(t *testing.T) {
	list, _ := goFiles(t)
	for _, f := range list {
		if slices.Contains(testOnly, f.folder) || f.test {
			continue
		}
		own := layerOf(f.folder)
		if !assert.GreaterOrEqual(t, own, 0, "%s has no place in the layers", f.folder) {
			continue
		}
		for _, i := range f.imports() {
			if ours, ok := strings.CutPrefix(i, module); ok {
				layer := layerOf(ours)
				assert.True(t, 0 <= layer && layer < own, "%s must not import %s", f.name, i)
			}
		}
	}
}

func TestEveryPackageKnowsOnlyItsJob(t *testing.T) {
	list, _ := goFiles(t)
	for _, f := range list {
		if f.test || slices.Contains(testOnly, f.folder) {
			continue
		}
		for _, i := range f.imports() {
			if homes, strange := strangers[i]; strange {
				assert.Contains(t, homes, f.folder, "%s must not import %s", f.name, i)
			}
			for folder, hidden := range unknown {
				if f.folder == folder || strings.HasPrefix(f.folder, folder+"/") {
					assert.NotContains(t, hidden, strings.TrimPrefix(i, module), "%s must not know %s", f.name, i)
				}
			}
		}
	}
}
