package lsp

import (
	"math/rand"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.lsp.dev/protocol"
	"go.lsp.dev/uri"

	"fairlead/lang/langtest"
)

// soakEdits is how many edits one soak makes.
const soakEdits = 20_000

// typist edits one text at random and knows what it should be.
type typist struct {
	*editor
	dice    *rand.Rand
	uri     uri.URI
	text    string
	first   string
	version int32
}

// mostTyped is the size at which the typist begins anew, so that the text stays one that
// somebody could have written.
const mostTyped = 6000

// edit makes one edit, often several changes in one message.
func (y *typist) edit() {
	y.version++
	var changes []protocol.TextDocumentContentChangeEvent
	for range 1 + y.dice.Intn(2) {
		if len(y.text) > mostTyped || y.dice.Intn(400) == 0 {
			y.text = y.first
			changes = append(changes, whole(y.text))
			continue
		}
		changes = append(changes, y.change())
	}
	y.editor.change(y.uri, y.version, changes...)
}

// change replaces a piece of the text: mostly a letter or a word, at times a line.
func (y *typist) change() protocol.TextDocumentContentChangeEvent {
	pieces := []string{"", "", "a", " ", "\n", "/", `\`, "(holds)", "3 kN", "🧗", "ä", "# の\n", "pulley low on head\n", "expect held\n", "rig next\n", `"`}
	l := linesOf(y.text, true)
	start := l.position(y.dice.Intn(len(y.text) + 1))
	end := l.position(min(len(y.text), l.offset(start)+[]int{0, 0, 1, 1, 4, 30}[y.dice.Intn(6)]))
	r := protocol.Range{Start: start, End: end}
	span, add := l.span(r), pieces[y.dice.Intn(len(pieces))]
	y.text = y.text[:span.Start] + add + y.text[span.End:]
	return &protocol.TextDocumentContentChangePartial{Range: r, Text: add}
}

// ask makes one request about a random place, and does not care for the answer.
func (y *typist) ask(methods []string) {
	p := about(y.uri, uint32(y.dice.Intn(60)), uint32(y.dice.Intn(40)), map[string]any{
		"range": span(0, 50), "context": map[string]any{"diagnostics": []any{}, "includeDeclaration": true},
		"newName": "other", "positions": []any{map[string]any{"line": 3, "character": 3}}, "query": "to",
		"options": map[string]any{"tabSize": 2, "insertSpaces": true},
	})
	err := y.try(methods[y.dice.Intn(len(methods))], p, nil)
	if code := codeOf(err); code != requestFailed {
		require.NoError(y.t, err)
	}
}

// unlinked takes out where the pages of the rules are.
func unlinked(list []protocol.Diagnostic) []protocol.Diagnostic {
	for i := range list {
		list[i].CodeDescription = protocol.CodeDescription{}
	}
	return list
}

func heap() uint64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// TestSoak types for long with requests in between: in the end the server's text is the
// editor's and its findings are those of that text; memory does not grow, and nothing is
// left running.
func TestSoak(t *testing.T) {
	before := runtime.NumGoroutine()
	e := start(t, nil, "", everything)
	var texts []*typist
	for i, text := range []string{langtest.Usual, loose + "\nrig other\n" + loose, "# Größe\n\n```rig\n" + shaft + "```\n"} {
		name := []string{"a.rig", "b.rig", "notes.md"}[i]
		y := &typist{editor: e, dice: rand.New(rand.NewSource(int64(i))), uri: inFolder(t, name), text: text, first: text, version: 1}
		e.open(y.uri, text)
		texts = append(texts, y)
	}
	var methods []string
	for m := range requests {
		if m != protocol.MethodWorkspaceExecuteCommand && m != protocol.MethodCompletionItemResolve {
			methods = append(methods, m)
		}
	}
	dice := rand.New(rand.NewSource(9))
	settled := uint64(0)
	for n := range soakEdits {
		y := texts[dice.Intn(len(texts))]
		y.edit()
		if n%8 == 0 {
			y.ask(methods)
		}
		if n%1000 == 0 {
			e.forget()
		}
		if n == soakEdits/4 {
			settled = heap()
		}
	}
	for _, y := range texts {
		found := e.findings(y.uri, y.version)
		assert.Equal(t, y.text, e.text(y.uri))
		fresh := start(t, nil, "", everything)
		fresh.open(y.uri, y.text)
		assert.Equal(t, unlinked(fresh.findings(y.uri, 1)), unlinked(found))
		fresh.end()
	}
	e.forget()
	grown := heap()
	assert.Less(t, grown, settled+settled/2+8<<20, "the heap grew from %d to %d bytes", settled, grown)
	e.end()
	e.wait("the end", func() bool { return runtime.NumGoroutine() <= before+1 })
}

// end ends a conversation as an editor does.
func (e *editor) end() {
	e.t.Helper()
	e.call(protocol.MethodShutdown, nil, nil)
	e.tell(protocol.MethodExit, nil)
	require.NoError(e.t, <-e.served)
	e.close()
	select {
	case <-e.conn.Done():
	case <-time.After(patience):
		require.Fail(e.t, "the connection stays")
	}
}

// forget drops what has come so far.
func (e *editor) forget() {
	e.mu.Lock()
	defer e.mu.Unlock()
	e.published, e.calls, e.notes = nil, nil, nil
}
