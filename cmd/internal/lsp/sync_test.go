package lsp

import (
	"fmt"
	"math/rand"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.lsp.dev/protocol"
	"go.lsp.dev/uri"

	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
	"fairlead/solve/report"
)

// TestEdits makes random edits, several in one message, with characters of all widths:
// the server's text is the editor's.
func TestEdits(t *testing.T) {
	for name, ability := range map[string]func(*protocol.ClientCapabilities){"UTF-16": func(*protocol.ClientCapabilities) {}, "UTF-8": bytes} {
		t.Run(name, func(t *testing.T) {
			e := start(t, nil, "", everything, ability)
			dice := rand.New(rand.NewSource(5))
			u := inFolder(t, "a.rig")
			text := randomText(dice, 50)
			e.open(u, text)
			for version := int32(2); version < 300; version++ {
				var changes []protocol.TextDocumentContentChangeEvent
				for range 1 + dice.Intn(3) {
					if dice.Intn(30) == 0 {
						text = randomText(dice, 40)
						changes = append(changes, whole(text))
						continue
					}
					l := linesOf(text, name == "UTF-16")
					from := l.position(dice.Intn(len(text) + 1))
					to := l.position(min(len(text), l.offset(from)+dice.Intn(20)))
					span := l.span(protocol.Range{Start: from, End: to})
					add := randomText(dice, dice.Intn(4))
					changes = append(changes, &protocol.TextDocumentContentChangePartial{Range: protocol.Range{Start: from, End: to}, Text: add})
					text = text[:span.Start] + add + text[span.End:]
				}
				e.change(u, version, changes...)
			}
			e.findings(u, 299)
			assert.Equal(t, text, e.text(u))
		})
	}
}

func TestFindingsArePublished(t *testing.T) {
	e := start(t, nil, "", everything)
	u := inFolder(t, "a.rig")
	e.open(u, "# Größe 🧗\n"+loose+"anchor  spare\nexpect load on hed under 3 kN # 🧗\nexpect load on hed under 2 kN\n")
	found := e.findings(u, 1)
	assert.Equal(t, []string{"no-capture", "unused-part", "unknown-part"}, codes(found))
	unused, unknown := found[1], found[2]
	assert.Equal(t, protocol.NewDiagnosticTags(protocol.DiagnosticTagUnnecessary), unused.Tags)
	for _, r := range rules.All() {
		if r.Name == "unused-part" {
			assert.Equal(t, severities[r.Severity], unused.Severity)
		}
	}
	assert.Equal(t, protocol.DiagnosticSeverityError, unknown.Severity)
	assert.Equal(t, protocol.Range{Start: protocol.Position{Line: 11, Character: 15}, End: protocol.Position{Line: 11, Character: 18}}, unknown.Range)
	require.Len(t, unknown.RelatedInformation, 1)
	assert.Equal(t, u, unknown.RelatedInformation[0].Location.URI)
	page, err := os.ReadFile(unknown.CodeDescription.Href.FsPath())
	require.NoError(t, err)
	want, _ := rules.Page("unknown-part")
	assert.Equal(t, want, string(page))
	source, _ := unknown.Source.Get()
	assert.Equal(t, "fairlead", source)
	e.change(u, 2, piece(11, 15, 11, 18, "head"), piece(12, 15, 12, 18, "head"))
	assert.Equal(t, []string{"no-capture", "unused-part"}, codes(e.findings(u, 2)))
	e.closeText(u)
	e.wait("nothing", func() bool { return len(e.published[len(e.published)-1].Diagnostics) == 0 })
	e.change(u, 3, whole("anchor")) // of a closed text
}

// TestFindingsAreThoseOfTheCommandLine opens the rigs on the pages of all rules: what is
// published is what the linter finds, at the places that its machine output gives.
func TestFindingsAreThoseOfTheCommandLine(t *testing.T) {
	e := start(t, nil, "", everything)
	folder := t.TempDir()
	for i, text := range pageRigs() {
		path := filepath.Join(folder, fmt.Sprintf("page-%d.rig", i))
		u := uri.File(path)
		e.open(u, text)
		got := e.findings(u, 1)
		want := lint.Run([]*load.Loaded{load.Loader{}.Text(path, text)}, rules.All())
		require.Len(t, got, len(want), text)
		for k, d := range want {
			at := report.RangeOf(d.Place)
			assert.Equal(t, d.Rule, string(got[k].Code.(protocol.String)))
			assert.Equal(t, protocol.String(d.Message), got[k].Message)
			assert.Equal(t, [4]int{at.Start.Line, at.Start.Character, at.End.Line, at.End.Character}, [4]int{
				int(got[k].Range.Start.Line), int(got[k].Range.Start.Character), int(got[k].Range.End.Line), int(got[k].Range.End.Character),
			})
		}
		e.closeText(u)
	}
}

func TestVersionsNeverGoBack(t *testing.T) {
	e := start(t, nil, "", everything)
	u := inFolder(t, "a.rig")
	e.open(u, loose)
	for v := int32(2); v < 200; v++ {
		e.change(u, v, piece(0, 0, 0, 0, "#\n"))
	}
	e.findings(u, 199)
	e.mu.Lock()
	defer e.mu.Unlock()
	last := int32(0)
	for _, p := range e.published {
		v, _ := p.Version.Get()
		assert.Greater(t, v, last)
		last = v
	}
}

func TestHouseRulesOfAllKinds(t *testing.T) {
	folder := t.TempDir()
	e := start(t, []string{folder}, "", everything)
	rig, policy := uri.File(filepath.Join(folder, "a.rig")), uri.File(filepath.Join(folder, "policy.rig"))
	e.open(rig, loose)
	latest := func(want ...string) {
		t.Helper()
		e.wait("findings", func() bool {
			for i := len(e.published) - 1; i >= 0; i-- {
				if e.published[i].URI == rig {
					return fmt.Sprint(codes(e.published[i].Diagnostics)) == fmt.Sprint(want)
				}
			}
			return false
		})
	}
	latest("no-capture")
	e.open(policy, "rule no-capture off\n")
	latest()
	e.change(policy, 2, whole("rule no-capture error\n"))
	latest("no-capture")
	e.wait("a refresh", func() bool {
		return contains(e.calls, protocol.MethodWorkspaceInlayHintRefresh) && contains(e.calls, protocol.MethodWorkspaceCodeLensRefresh)
	})
	e.change(policy, 3, whole("rule no-capture off\n"))
	latest()
	e.closeText(policy)
	latest("no-capture")
	require.NoError(t, os.WriteFile(policy.FsPath(), []byte("rule no-capture off\n"), 0o644))
	e.tell(protocol.MethodWorkspaceDidChangeWatchedFiles, &protocol.DidChangeWatchedFilesParams{Changes: []protocol.FileEvent{{URI: policy, Type: protocol.FileChangeTypeCreated}}})
	latest()
}

func contains(list []string, one string) bool {
	for _, s := range list {
		if s == one {
			return true
		}
	}
	return false
}

func TestATextInNoFile(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "policy.rig"), []byte("rule no-capture off\n"), 0o644))
	e := start(t, []string{folder}, "", everything)
	e.open("untitled:Untitled-1", loose)
	assert.Empty(t, e.findings("untitled:Untitled-1", 1), "the house rules of the folder count")
	e.open("untitled:Untitled-2", "anchor a\n")
	assert.Equal(t, []string{"unused-part"}, codes(e.findings("untitled:Untitled-2", 1)))
}

func TestPulledFindings(t *testing.T) {
	e := start(t, nil, "", everything, pulls)
	u := inFolder(t, "a.rig")
	e.open(u, loose)
	pull := func(previous string) map[string]any {
		p := &protocol.DocumentDiagnosticParams{}
		p.TextDocument.URI = u
		if previous != "" {
			p.PreviousResultID = &previous
		}
		var result map[string]any
		e.call(protocol.MethodTextDocumentDiagnostic, p, &result)
		return result
	}
	first := pull("")
	assert.Equal(t, "full", first["kind"])
	require.Len(t, first["items"], 1)
	id := first["resultId"].(string)
	second := pull(id)
	assert.Equal(t, "unchanged", second["kind"])
	assert.Equal(t, id, second["resultId"])
	e.change(u, 2, piece(0, 0, 0, 0, "# one line down\n"))
	assert.Equal(t, "full", pull(id)["kind"])
	policy := uri.File(filepath.Join(filepath.Dir(u.FsPath()), "policy.rig"))
	e.open(policy, "rule no-capture off\n")
	e.wait("a refresh", func() bool { return contains(e.calls, protocol.MethodWorkspaceDiagnosticRefresh) })
	assert.Empty(t, pull("")["items"])
	e.mu.Lock()
	defer e.mu.Unlock()
	assert.Empty(t, e.published, "who pulls is pushed nothing")
}
