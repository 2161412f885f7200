package lsp

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.lsp.dev/protocol"
	"go.lsp.dev/uri"

	"fairlead/lint/rules"
)

var rigBlock = regexp.MustCompile("(?ms)^```rig[^\n]*\n(.*?)^```")

// pageRigs are the rigs on the pages of the rules.
func pageRigs() []string {
	var list []string
	for _, r := range rules.All() {
		text, _ := rules.Page(r.Name)
		for _, m := range rigBlock.FindAllStringSubmatch(text, -1) {
			list = append(list, m[1])
		}
	}
	return list
}

// about is what nearly every request begins with: a document and a place in it.
func about(u uri.URI, line, character uint32, more map[string]any) map[string]any {
	p := map[string]any{
		"textDocument": map[string]any{"uri": string(u)},
		"position":     map[string]any{"line": line, "character": character},
	}
	for k, v := range more {
		p[k] = v
	}
	return p
}

// span gives a range from the start of one line to that of another.
func span(from, to uint32) map[string]any {
	return map[string]any{"start": map[string]any{"line": from, "character": 0}, "end": map[string]any{"line": to, "character": 0}}
}

// opened begins a conversation with one text open.
func opened(t *testing.T, text string, options string) (*editor, uri.URI) {
	t.Helper()
	e := start(t, nil, options, everything)
	u := inFolder(t, "a.rig")
	e.open(u, text)
	return e, u
}

const shaft = "# Größe 🧗\nrig shaft \"Three 🧗 one\"\n\nanchor  head\nload    litter  mass 180 kg\nhauler  team\npulley  top     on head  efficiency 92 %  holds litter\n" +
	"hitch   grab\npulley  runner  on grab  efficiency 92 %\nrope    long\n\nreeve long: litter / grab / top \\ runner / team\n"

func TestHover(t *testing.T) {
	e, u := opened(t, shaft, "")
	var h protocol.Hover
	e.call(protocol.MethodTextDocumentHover, about(u, 6, 9, nil), &h)
	m := h.Contents.(*protocol.MarkupContent)
	assert.Equal(t, protocol.MarkupKindMarkdown, m.Kind)
	assert.Contains(t, m.Value, "`top` carries 1.13 kN hauling, 1.77 kN held")
	assert.Equal(t, protocol.Range{Start: protocol.Position{Line: 6, Character: 8}, End: protocol.Position{Line: 6, Character: 11}}, *h.Range)
	var none *protocol.Hover
	e.call(protocol.MethodTextDocumentHover, about(u, 2, 0, nil), &none)
	assert.Nil(t, none)
}

func TestHoverInPlainText(t *testing.T) {
	e := start(t, nil, "")
	u := inFolder(t, "a.rig")
	e.open(u, "# A *big* one.\nanchor  he_ad\nload l\nrope r\nreeve r: l / he_ad\n")
	var h protocol.Hover
	e.call(protocol.MethodTextDocumentHover, about(u, 1, 9, nil), &h)
	m := h.Contents.(*protocol.MarkupContent)
	assert.Equal(t, protocol.MarkupKindPlainText, m.Kind)
	assert.Contains(t, m.Value, "he_ad carries")
	assert.Contains(t, m.Value, "A *big* one.")
}

func hintLabels(e *editor, u uri.URI) []string {
	var list []protocol.InlayHint
	e.call(protocol.MethodTextDocumentInlayHint, map[string]any{"textDocument": map[string]any{"uri": string(u)}, "range": span(0, 99)}, &list)
	labels := []string{}
	for _, h := range list {
		labels = append(labels, string(h.Label.(protocol.String)))
	}
	return labels
}

func TestHintsAndLensesCanBeTurnedOff(t *testing.T) {
	all := []string{"3:1", "1.77 kN", "0.540 kN", "0.587 kN", "0.638 kN"}
	for options, want := range map[string][]string{
		"":                              all,
		`{"hints":{"tension":false}}`:   all[:1],
		`{"hints":{"advantage":false}}`: all[1:],
		`{"fairlead":{"hints":{"tension":false,"advantage":false}}}`: {},
		`{"hints":7}`: all,
	} {
		e, u := opened(t, shaft, options)
		assert.Equal(t, want, hintLabels(e, u), options)
	}
	e, u := opened(t, shaft, `{"lens":false}`)
	var lenses []protocol.CodeLens
	e.call(protocol.MethodTextDocumentCodeLens, about(u, 0, 0, nil), &lenses)
	assert.Empty(t, lenses)
	e.mu.Lock()
	e.configuration = `{"lens":true,"hints":{"advantage":false}}`
	e.mu.Unlock()
	e.tell(protocol.MethodWorkspaceDidChangeConfiguration, map[string]any{"settings": nil})
	e.wait("a refresh", func() bool { return contains(e.calls, protocol.MethodWorkspaceCodeLensRefresh) })
	assert.Equal(t, all[1:], hintLabels(e, u))
	e.call(protocol.MethodTextDocumentCodeLens, about(u, 0, 0, nil), &lenses)
	require.Len(t, lenses, 1)
	assert.Equal(t, "3:1 simple, 2.77 with friction, pull 0.638 kN; hands off: held by top", lenses[0].Command.Title)
}

func TestSettingsThatAreSent(t *testing.T) {
	e := start(t, nil, "")
	u := inFolder(t, "a.rig")
	e.open(u, shaft)
	e.tell(protocol.MethodWorkspaceDidChangeConfiguration, map[string]any{"settings": map[string]any{"fairlead": map[string]any{"hints": map[string]any{"tension": false}}}})
	assert.Equal(t, []string{"3:1"}, hintLabels(e, u))
}

func TestCompletionAndItsPages(t *testing.T) {
	e, u := opened(t, shaft+"accept no\n", "")
	var list protocol.CompletionList
	e.call(protocol.MethodTextDocumentCompletion, about(u, 12, 9, nil), &list)
	var item *protocol.CompletionItem
	for i := range list.Items {
		if list.Items[i].Label == "no-capture" {
			item = &list.Items[i]
		}
	}
	require.NotNil(t, item)
	assert.Nil(t, item.Documentation)
	assert.Equal(t, protocol.Position{Line: 12, Character: 7}, item.TextEdit.(*protocol.TextEdit).Range.Start)
	var resolved protocol.CompletionItem
	e.call(protocol.MethodCompletionItemResolve, item, &resolved)
	page, _ := rules.Page("no-capture")
	assert.Equal(t, page, resolved.Documentation.(*protocol.MarkupContent).Value)
}

func TestDefinitionsLeadToFiles(t *testing.T) {
	e, u := opened(t, shaft+"accept no-capture because \"x\"\npulley second bearing-pulley\n", "")
	define := func(line, character uint32) protocol.Location {
		var list []protocol.Location
		e.call(protocol.MethodTextDocumentDefinition, about(u, line, character, nil), &list)
		require.Len(t, list, 1)
		return list[0]
	}
	assert.Equal(t, protocol.Location{URI: u, Range: protocol.Range{Start: protocol.Position{Line: 7, Character: 8}, End: protocol.Position{Line: 7, Character: 12}}}, define(8, 20))
	page, err := os.ReadFile(define(12, 9).URI.FsPath())
	require.NoError(t, err)
	assert.Contains(t, string(page), "# no-capture")
	stock := define(13, 16)
	text, err := os.ReadFile(stock.URI.FsPath())
	require.NoError(t, err)
	assert.Contains(t, strings.Split(string(text), "\n")[stock.Range.Start.Line], "stock pulley  bearing-pulley")
}

func TestReferencesAndHighlights(t *testing.T) {
	e, u := opened(t, shaft, "")
	var list []protocol.Location
	e.call(protocol.MethodTextDocumentReferences, about(u, 7, 9, map[string]any{"context": map[string]any{"includeDeclaration": true}}), &list)
	assert.Len(t, list, 3)
	e.call(protocol.MethodTextDocumentReferences, about(u, 7, 9, map[string]any{"context": map[string]any{"includeDeclaration": false}}), &list)
	assert.Len(t, list, 2)
	var marks []protocol.DocumentHighlight
	e.call(protocol.MethodTextDocumentDocumentHighlight, about(u, 7, 9, nil), &marks)
	require.Len(t, marks, 3)
	assert.Equal(t, protocol.DocumentHighlightKindWrite, marks[0].Kind)
	assert.Equal(t, protocol.DocumentHighlightKindRead, marks[1].Kind)
}

func TestRename(t *testing.T) {
	e, u := opened(t, shaft, "")
	var placeholder protocol.PrepareRenamePlaceholder
	e.call(protocol.MethodTextDocumentPrepareRename, about(u, 7, 9, nil), &placeholder)
	assert.Equal(t, "grab", placeholder.Placeholder)
	err := e.try(protocol.MethodTextDocumentPrepareRename, about(u, 7, 1, nil), nil)
	assert.Equal(t, requestFailed, codeOf(err))
	err = e.try(protocol.MethodTextDocumentRename, about(u, 7, 9, map[string]any{"newName": "top"}), nil)
	assert.ErrorContains(t, err, "top is taken")
	var edit map[string]any
	e.call(protocol.MethodTextDocumentRename, about(u, 7, 9, map[string]any{"newName": "tractor"}), &edit)
	changes := edit["documentChanges"].([]any)
	require.Len(t, changes, 1)
	one := changes[0].(map[string]any)
	assert.Equal(t, map[string]any{"uri": string(u), "version": 1.0}, one["textDocument"])
	assert.Len(t, one["edits"], 3)
	plain := start(t, nil, "")
	plain.open(u, shaft)
	plain.call(protocol.MethodTextDocumentRename, about(u, 7, 9, map[string]any{"newName": "tractor"}), &edit)
	assert.Len(t, edit["changes"].(map[string]any)[string(u)], 3)
}

func TestSymbolsOfDocumentsAndFolders(t *testing.T) {
	one, two := t.TempDir(), t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(one, "a.rig"), []byte("rig low\nanchor oak\n"), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(two, "b.rig"), []byte("anchor old-oak\n"), 0o644))
	e := start(t, []string{one}, "", everything)
	find := func() (names []string) {
		var list []protocol.SymbolInformation
		e.call(protocol.MethodWorkspaceSymbol, map[string]any{"query": "oak"}, &list)
		for _, s := range list {
			names = append(names, s.Name)
		}
		return names
	}
	assert.Equal(t, []string{"oak"}, find())
	e.tell(protocol.MethodWorkspaceDidChangeWorkspaceFolders, map[string]any{"event": map[string]any{
		"added": []any{map[string]any{"uri": string(uri.File(two)), "name": "two"}}, "removed": []any{},
	}})
	assert.Equal(t, []string{"oak", "old-oak"}, find())
	e.tell(protocol.MethodWorkspaceDidChangeWorkspaceFolders, map[string]any{"event": map[string]any{
		"added": []any{}, "removed": []any{map[string]any{"uri": string(uri.File(one)), "name": "one"}},
	}})
	assert.Equal(t, []string{"old-oak"}, find())
	u := uri.File(filepath.Join(one, "c.rig"))
	e.open(u, shaft)
	var nested []protocol.DocumentSymbol
	e.call(protocol.MethodTextDocumentDocumentSymbol, about(u, 0, 0, nil), &nested)
	require.Len(t, nested, 1)
	assert.Equal(t, "shaft", nested[0].Name)
	assert.Len(t, nested[0].Children, 8)
	assert.Equal(t, protocol.Range{Start: protocol.Position{Line: 1, Character: 0}, End: protocol.Position{Line: 11, Character: 47}}, nested[0].Range)
	plain := start(t, nil, "")
	plain.open(u, shaft)
	var flat []protocol.SymbolInformation
	plain.call(protocol.MethodTextDocumentDocumentSymbol, about(u, 0, 0, nil), &flat)
	assert.Len(t, flat, 9)
	assert.Equal(t, "shaft", *flat[1].ContainerName)
}

func TestFoldsSelectionsAndTokens(t *testing.T) {
	e, u := opened(t, "# a\n# b\n"+shaft, "")
	var folds []protocol.FoldingRange
	e.call(protocol.MethodTextDocumentFoldingRange, about(u, 0, 0, nil), &folds)
	require.Len(t, folds, 2)
	assert.Equal(t, protocol.FoldingRange{StartLine: 0, EndLine: 2, Kind: protocol.FoldingRangeKindComment}, folds[0])
	assert.Equal(t, protocol.FoldingRange{StartLine: 3, EndLine: 13}, folds[1])
	var ranges []protocol.SelectionRange
	e.call(protocol.MethodTextDocumentSelectionRange, about(u, 0, 0, map[string]any{"positions": []any{map[string]any{"line": 8, "character": 42}}}), &ranges)
	require.Len(t, ranges, 1)
	depth := 0
	for r := &ranges[0]; r != nil; r = r.Parent {
		depth++
	}
	assert.Equal(t, 5, depth, "92, efficiency 92 %, the statement, the rig, the text")
	var tokens protocol.SemanticTokens
	e.call(protocol.MethodTextDocumentSemanticTokensFull, about(u, 0, 0, nil), &tokens)
	assert.Equal(t, []uint32{0, 0, 3, 10, 0, 1, 0, 3, 10, 0, 1, 0, 10, 10, 0, 1, 0, 3, 0, 0, 0, 4, 5, 3, 1, 0, 6, 14, 8, 0, 2, 0, 6, 0, 0}, tokens.Data[:35])
	var part protocol.SemanticTokens
	e.call(protocol.MethodTextDocumentSemanticTokensRange, about(u, 0, 0, map[string]any{"range": span(5, 6)}), &part)
	assert.Equal(t, []uint32{5, 0, 6, 0, 0, 0, 8, 4, 2, 1}, part.Data[:10])
}

func TestFormatting(t *testing.T) {
	e, u := opened(t, "anchor a\nload   box\n\nhauler team people 3\n", "")
	var edits []protocol.TextEdit
	options := map[string]any{"options": map[string]any{"tabSize": 4, "insertSpaces": true}}
	e.call(protocol.MethodTextDocumentFormatting, about(u, 0, 0, options), &edits)
	assert.NotEmpty(t, edits)
	options["range"] = span(3, 4)
	e.call(protocol.MethodTextDocumentRangeFormatting, about(u, 0, 0, options), &edits)
	for _, edit := range edits {
		assert.Equal(t, uint32(3), edit.Range.Start.Line)
	}
	e.change(u, 2, whole("puley a\n"))
	e.call(protocol.MethodTextDocumentFormatting, about(u, 0, 0, options), &edits)
	assert.Empty(t, edits)
}

func TestCodeActions(t *testing.T) {
	e, u := opened(t, loose, "")
	actions := func(only ...string) (list []map[string]any) {
		context := map[string]any{"diagnostics": []any{}}
		if len(only) > 0 {
			context["only"] = only
		}
		e.call(protocol.MethodTextDocumentCodeAction, about(u, 0, 0, map[string]any{"range": span(8, 9), "context": context}), &list)
		return list
	}
	titles := func(list []map[string]any) (all []string) {
		for _, a := range list {
			all = append(all, a["title"].(string))
		}
		return all
	}
	assert.Equal(t, []string{
		"let top hold: write top (holds); hands off, the load is held", "accept no-capture at litter because …", "why: no-capture",
		"write long from its other end; grab then holds the other way",
	}, titles(actions()))
	assert.Len(t, actions("refactor"), 1)
	assert.Len(t, actions("quickfix"), 3)
	assert.Empty(t, actions("source.organizeImports"))
	all := actions("source.fixAll")
	require.Equal(t, []string{"mend 1 finding"}, titles(all))
	assert.NotNil(t, all[0]["edit"])
	accept := actions("quickfix")[1]
	command := accept["command"].(map[string]any)
	assert.Equal(t, selectCommand, command["command"])
	e.call(protocol.MethodWorkspaceExecuteCommand, command, nil)
	e.wait("a selection", func() bool { return len(e.shown) == 1 })
	assert.Equal(t, u, e.shown[0].URI)
	assert.Equal(t, protocol.Position{Line: 10, Character: 37}, e.shown[0].Selection.Start)
	bare := start(t, nil, "")
	bare.open(u, loose)
	var none []any
	bare.call(protocol.MethodTextDocumentCodeAction, about(u, 0, 0, map[string]any{"range": span(8, 9), "context": map[string]any{"diagnostics": []any{}}}), &none)
	assert.Empty(t, none, "the editor knows commands only")
}

func TestCommands(t *testing.T) {
	e, u := opened(t, shaft, "")
	run := func(command string, arguments ...any) (string, error) {
		var text json.RawMessage
		err := e.try(protocol.MethodWorkspaceExecuteCommand, map[string]any{"command": command, "arguments": arguments}, &text)
		var s string
		_ = json.Unmarshal(text, &s)
		return s, err
	}
	page, err := run(pageCommand, "no-capture")
	require.NoError(t, err)
	assert.Contains(t, page, "# no-capture")
	report, err := run(reportCommand, string(u), "shaft")
	require.NoError(t, err)
	assert.Contains(t, report, "A calculation, not a permission")
	e.mu.Lock()
	require.Len(t, e.shown, 2)
	shown, err := os.ReadFile(e.shown[1].URI.FsPath())
	e.mu.Unlock()
	require.NoError(t, err)
	assert.Equal(t, report, string(shown))
	for _, wrong := range [][]any{{"fairlead.none", "x"}, {pageCommand}, {pageCommand, "none"}, {reportCommand, string(u), "none"}, {selectCommand, "x"}} {
		_, err := run(wrong[0].(string), wrong[1:]...)
		assert.Error(t, err, wrong)
	}
	plain := start(t, nil, "")
	plain.call(protocol.MethodWorkspaceExecuteCommand, map[string]any{"command": pageCommand, "arguments": []any{"no-capture"}}, nil)
	plain.wait("a message", func() bool { return len(plain.notes) == 1 })
	assert.Contains(t, plain.notes[0], "# no-capture")
}

// TestOfADocumentThatIsNotThere asks everything about one.
func TestOfADocumentThatIsNotThere(t *testing.T) {
	e := start(t, nil, "", everything)
	u := inFolder(t, "none.rig")
	for method := range requests {
		if method == protocol.MethodWorkspaceExecuteCommand || method == protocol.MethodCompletionItemResolve || method == "test/fault" {
			continue
		}
		p := about(u, 3, 3, map[string]any{
			"range": span(0, 1), "context": map[string]any{"diagnostics": []any{}, "includeDeclaration": true}, "newName": "x",
			"positions": []any{map[string]any{"line": 0, "character": 0}}, "query": "x", "options": map[string]any{"tabSize": 2, "insertSpaces": true},
		})
		assert.NoError(t, e.try(method, p, nil), method)
	}
}

func TestNotes(t *testing.T) {
	e := start(t, nil, "", everything)
	u := inFolder(t, "notes.md")
	e.open(u, "# Größe 🧗\n\n> ```rig\n> "+strings.ReplaceAll(strings.TrimSuffix(loose, "\n"), "\n", "\n> ")+"\n> ```\n")
	found := e.findings(u, 1)
	require.Equal(t, []string{"no-capture"}, codes(found))
	assert.Equal(t, protocol.Position{Line: 11, Character: 33}, found[0].Range.Start)
	var edit map[string]any
	e.call(protocol.MethodTextDocumentRename, about(u, 6, 11, map[string]any{"newName": "wheel"}), &edit)
	require.NotNil(t, edit["documentChanges"])
	e.change(u, 2, whole("No rigs.\n"))
	assert.Empty(t, e.findings(u, 2))
}
