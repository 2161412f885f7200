package lsp

import (
	"context"
	"errors"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.lsp.dev/jsonrpc2"
	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
	"fairlead/lint"
)

func TestConversation(t *testing.T) {
	e := connect(t)
	assert.Equal(t, jsonrpc2.ServerNotInitialized, codeOf(e.try(protocol.MethodTextDocumentHover, &protocol.HoverParams{}, nil)))
	var result protocol.InitializeResult
	e.call(protocol.MethodInitialize, &protocol.InitializeParams{}, &result)
	assert.Equal(t, "fairlead", result.ServerInfo.Name)
	assert.Equal(t, protocol.PositionEncodingKindUTF16, result.Capabilities.PositionEncoding)
	assert.Equal(t, jsonrpc2.InvalidRequest, codeOf(e.try(protocol.MethodInitialize, &protocol.InitializeParams{}, nil)))
	e.tell("$/unknown", map[string]int{"a": 1})
	e.tell(protocol.MethodTextDocumentDidOpen, map[string]string{"textDocument": "no document"})
	assert.Equal(t, jsonrpc2.MethodNotFound, codeOf(e.try("textDocument/unknown", nil, nil)))
	assert.Equal(t, jsonrpc2.InvalidParams, codeOf(e.try(protocol.MethodTextDocumentHover, []int{1}, nil)))
	e.call(protocol.MethodShutdown, nil, nil)
	assert.Equal(t, jsonrpc2.InvalidRequest, codeOf(e.try(protocol.MethodTextDocumentHover, &protocol.HoverParams{}, nil)))
	e.tell(protocol.MethodExit, nil)
	select {
	case err := <-e.served:
		assert.NoError(t, err)
	case <-time.After(patience):
		t.Error("exit does not end the server")
	}
}

func TestAnEditorThatLeaves(t *testing.T) {
	for name, leave := range map[string]func(e *editor){
		"says exit at once":  func(e *editor) { e.tell(protocol.MethodExit, nil) },
		"closes its streams": func(e *editor) { e.close() },
	} {
		t.Run(name, func(t *testing.T) {
			e := start(t, nil, "", everything)
			e.open(inFolder(t, "a.rig"), loose)
			leave(e)
			select {
			case err := <-e.served:
				assert.ErrorIs(t, err, ErrAbandoned)
			case <-time.After(patience):
				t.Error("the server stays")
			}
		})
	}
}

func TestPositionsAreAgreed(t *testing.T) {
	const narrow, wide, wider = protocol.PositionEncodingKindUTF8, protocol.PositionEncodingKindUTF16, protocol.PositionEncodingKindUTF32
	assert.True(t, prefersBytes([]protocol.PositionEncodingKind{wider, narrow, wide}))
	assert.True(t, prefersBytes([]protocol.PositionEncodingKind{narrow}))
	assert.False(t, prefersBytes([]protocol.PositionEncodingKind{wide, narrow}))
	assert.False(t, prefersBytes([]protocol.PositionEncodingKind{wider}))
	assert.False(t, prefersBytes(nil))
	e := connect(t)
	p := &protocol.InitializeParams{}
	bytes(&p.Capabilities)
	var result protocol.InitializeResult
	e.call(protocol.MethodInitialize, p, &result)
	assert.Equal(t, protocol.PositionEncodingKindUTF8, result.Capabilities.PositionEncoding)
}

func TestEditorIsAskedToTellOfChanges(t *testing.T) {
	e := start(t, nil, "", everything)
	e.wait("registration", func() bool { return len(e.calls) >= 2 })
	assert.Contains(t, e.calls, protocol.MethodClientRegisterCapability)
	assert.Contains(t, e.calls, protocol.MethodWorkspaceConfiguration)
}

// TestCancellation cancels a request that would take for ever.
func TestCancellation(t *testing.T) {
	e := start(t, nil, "", everything)
	begun, stopped := make(chan bool), make(chan bool)
	requests["test/slow"] = func(work context.Context, _ *Server, _ *ide.Snapshot, _ []byte) (any, error) {
		close(begun)
		<-work.Done()
		close(stopped)
		return nil, work.Err()
	}
	defer delete(requests, "test/slow")
	ctx, stop := context.WithCancel(context.Background())
	answered := make(chan error, 1)
	go func() { answered <- protocol.Call(ctx, e.conn, "test/slow", nil, nil) }()
	<-begun
	u := inFolder(t, "a.rig")
	e.open(u, loose)
	assert.NotEmpty(t, e.findings(u, 1), "it keeps nobody waiting")
	stop()
	assert.ErrorIs(t, <-answered, context.Canceled)
	select {
	case <-stopped:
	case <-time.After(patience):
		t.Error("the work goes on")
	}
}

// TestCancelledIsAnswered looks at the answer to a cancelled request.
func TestCancelledIsAnswered(t *testing.T) {
	s := New("test")
	s.life = context.Background()
	work, stop := s.begin(jsonrpc2.NewNumberID(7))
	defer stop()
	begun := make(chan bool)
	slow := func(work context.Context, _ *Server, _ *ide.Snapshot, _ []byte) (any, error) {
		close(begun)
		<-work.Done() // it is told, too
		return nil, errors.New("too late")
	}
	go func() {
		<-begun
		s.cancel(&protocol.CancelParams{ID: protocol.Integer(8)})
		s.cancel(&protocol.CancelParams{ID: protocol.Integer(7)})
	}()
	_, err := s.answer(work, slow, s.desk.Snapshot(), nil)
	assert.Equal(t, protocol.CodeRequestCancelled, codeOf(err))
	s.errands.Wait()
}

// TestAFaultInOneRequest lets a request fail: the conversation goes on.
func TestAFaultInOneRequest(t *testing.T) {
	e := start(t, nil, "", everything)
	requests["test/fault"] = func(context.Context, *Server, *ide.Snapshot, []byte) (any, error) { panic("a fault") }
	defer delete(requests, "test/fault")
	assert.Equal(t, jsonrpc2.InternalError, codeOf(e.try("test/fault", nil, nil)))
	e.wait("a note", func() bool { return len(e.notes) > 0 })
	require.Contains(t, e.notes[0], "a fault")
	u := inFolder(t, "a.rig")
	e.open(u, loose)
	assert.NotEmpty(t, e.findings(u, 1))
}

// TestAFaultWhileLooking lets a rule fail on one text: the next one is looked at.
func TestAFaultWhileLooking(t *testing.T) {
	e := connect(t)
	e.server.desk = ide.NewDesk([]*lint.Rule{{Name: "faulty", Check: func(p *lint.Pass) {
		if p.Rig.Part("spare") != nil {
			panic("a fault")
		}
	}}})
	p := protocol.InitializeParams{}
	everything(&p.Capabilities)
	e.call(protocol.MethodInitialize, &p, nil)
	u := inFolder(t, "a.rig")
	e.open(u, loose+"anchor spare\n")
	e.wait("a note", func() bool { return len(e.notes) > 0 })
	e.change(u, 2, whole("anchor head\n"))
	assert.Equal(t, []string{"unused-part"}, codes(e.findings(u, 2)))
}

// TestParametersOfAnyKind sends every method what it cannot want: the server answers and
// goes on.
func TestParametersOfAnyKind(t *testing.T) {
	e := start(t, nil, "", everything)
	u := inFolder(t, "a.rig")
	e.open(u, loose)
	odd := []any{
		nil, 7, "text", []any{}, map[string]any{}, map[string]any{"textDocument": nil}, map[string]any{"textDocument": map[string]any{}},
		map[string]any{"textDocument": map[string]any{"uri": ""}}, map[string]any{"textDocument": map[string]any{"uri": "no uri at all"}},
		about(u, 4294967295, 4294967295, map[string]any{"range": map[string]any{
			"start": map[string]any{"line": 4294967295, "character": 0}, "end": map[string]any{"line": 0, "character": 4294967295},
		}, "context": map[string]any{"diagnostics": []any{}, "only": []any{"", "source"}}, "newName": "\x00", "positions": []any{}, "contentChanges": []any{map[string]any{}}}),
	}
	for _, p := range odd {
		for method := range requests {
			_ = e.try(method, p, nil) // whatever the answer is
		}
		for method := range notices {
			if method != protocol.MethodTextDocumentDidClose {
				e.tell(method, p)
			}
		}
	}
	e.change(u, 2, whole("anchor a\n"))
	assert.Equal(t, []string{"unused-part"}, codes(e.findings(u, 2)))
	e.mu.Lock()
	defer e.mu.Unlock()
	for _, n := range e.notes {
		assert.NotContains(t, n, "goroutine", "a fault of the program")
	}
}
