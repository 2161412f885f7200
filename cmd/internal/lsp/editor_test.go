package lsp

import (
	"context"
	"errors"
	"io"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"go.lsp.dev/jsonrpc2"
	"go.lsp.dev/protocol"
	"go.lsp.dev/uri"
)

// patience is how long a test waits for what must come.
const patience = time.Minute

// editor is the other end of a conversation.
type editor struct {
	t      testing.TB
	server *Server
	conn   jsonrpc2.Conn
	served chan error
	gone   chan bool
	close  func()

	mu sync.Mutex
	// came wakes those who wait for something.
	came      *sync.Cond
	published []protocol.PublishDiagnosticsParams
	// calls are the requests of the server, shown the documents that it opened.
	calls []string
	shown []protocol.ShowDocumentParams
	notes []string
	// configuration is what the editor has set.
	configuration string
}

// everything is an editor that can do all that the server asks for.
func everything(c *protocol.ClientCapabilities) {
	yes := true
	c.Workspace = &protocol.WorkspaceClientCapabilities{
		Configuration:          &yes,
		WorkspaceEdit:          &protocol.WorkspaceEditClientCapabilities{DocumentChanges: &yes},
		DidChangeConfiguration: &protocol.DidChangeConfigurationClientCapabilities{DynamicRegistration: &yes},
		DidChangeWatchedFiles:  &protocol.DidChangeWatchedFilesClientCapabilities{DynamicRegistration: &yes},
		InlayHint:              &protocol.InlayHintWorkspaceClientCapabilities{RefreshSupport: &yes},
		CodeLens:               &protocol.CodeLensWorkspaceClientCapabilities{RefreshSupport: &yes},
		Diagnostics:            &protocol.DiagnosticWorkspaceClientCapabilities{RefreshSupport: &yes},
	}
	c.Window = &protocol.WindowClientCapabilities{ShowDocument: &protocol.ShowDocumentClientCapabilities{Support: true}}
	of := protocol.DiagnosticsCapabilities{RelatedInformation: &yes, CodeDescriptionSupport: &yes}
	of.TagSupport.ValueSet = []protocol.DiagnosticTag{protocol.DiagnosticTagUnnecessary}
	c.TextDocument = &protocol.TextDocumentClientCapabilities{
		PublishDiagnostics: &protocol.PublishDiagnosticsClientCapabilities{DiagnosticsCapabilities: of, VersionSupport: &yes},
		Hover:              &protocol.HoverClientCapabilities{ContentFormat: []protocol.MarkupKind{protocol.MarkupKindMarkdown}},
		DocumentSymbol:     &protocol.DocumentSymbolClientCapabilities{HierarchicalDocumentSymbolSupport: &yes},
		Rename:             &protocol.RenameClientCapabilities{PrepareSupport: &yes},
		CodeAction:         &protocol.CodeActionClientCapabilities{},
		Completion:         &protocol.CompletionClientCapabilities{CompletionItem: &protocol.ClientCompletionItemOptions{}},
	}
	c.TextDocument.CodeAction.CodeActionLiteralSupport.CodeActionKind.ValueSet = []protocol.CodeActionKind{protocol.CodeActionKindQuickFix}
	c.TextDocument.Completion.CompletionItem.ResolveSupport.Properties = []string{"documentation"}
}

// bytes is an editor that counts positions in bytes.
func bytes(c *protocol.ClientCapabilities) {
	c.General = &protocol.GeneralClientCapabilities{PositionEncodings: []protocol.PositionEncodingKind{
		protocol.PositionEncodingKindUTF8, protocol.PositionEncodingKindUTF16,
	}}
}

// pulls is an editor that asks for findings.
func pulls(c *protocol.ClientCapabilities) {
	c.TextDocument.Diagnostic = &protocol.DiagnosticClientCapabilities{}
}

// connect begins a conversation without a word.
func connect(t testing.TB) *editor {
	t.Helper()
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	fromEditor, toServer := io.Pipe()
	fromServer, toEditor := io.Pipe()
	e := &editor{t: t, server: New("test"), served: make(chan error, 1), gone: make(chan bool)}
	e.came = sync.NewCond(&e.mu)
	go func() {
		e.served <- e.server.Serve(fromEditor, toEditor)
		_ = toEditor.Close()
		_ = fromEditor.Close()
		close(e.gone)
	}()
	e.conn = jsonrpc2.NewConn(jsonrpc2.NewHeaderStream(&streams{Reader: fromServer, Writer: toServer}), jsonrpc2.WithCodec(codec{}))
	e.conn.Go(context.Background(), jsonrpc2.AsyncHandler(e.handle))
	e.close = func() {
		_ = toServer.Close()
		_ = fromServer.Close()
	}
	t.Cleanup(func() {
		e.close()
		select {
		case <-e.gone: // with all that it was still working on
		case <-time.After(patience):
			t.Error("the server stays")
		}
	})
	return e
}

// start begins a conversation of an editor with some abilities, in some folders.
func start(t testing.TB, folders []string, options string, abilities ...func(*protocol.ClientCapabilities)) *editor {
	t.Helper()
	e := connect(t)
	p := protocol.InitializeParams{}
	for _, a := range abilities {
		a(&p.Capabilities)
	}
	var list []protocol.WorkspaceFolder
	for _, f := range folders {
		list = append(list, protocol.WorkspaceFolder{URI: uri.File(f), Name: filepath.Base(f)})
	}
	p.WorkspaceFolders = protocol.NewNullable(list)
	if options != "" {
		p.InitializationOptions = protocol.LSPAny(options)
	}
	var result protocol.InitializeResult
	e.call(protocol.MethodInitialize, &p, &result)
	e.tell(protocol.MethodInitialized, &protocol.InitializedParams{})
	return e
}

// handle takes what the server sends.
func (e *editor) handle(_ context.Context, req *jsonrpc2.Request) (any, error) {
	e.mu.Lock()
	defer e.mu.Unlock()
	defer e.came.Broadcast()
	method := strings.Clone(req.Method())
	if req.IsCall() {
		e.calls = append(e.calls, method)
	}
	switch method {
	case protocol.MethodTextDocumentPublishDiagnostics:
		var p protocol.PublishDiagnosticsParams
		if err := protocol.Unmarshal(req.Params(), &p); err != nil {
			return nil, err
		}
		e.published = append(e.published, p)
	case protocol.MethodWorkspaceConfiguration:
		return []protocol.LSPAny{protocol.LSPAny(e.configuration + strings.Repeat("null", 1-min(1, len(e.configuration))))}, nil
	case protocol.MethodWindowShowDocument:
		var p protocol.ShowDocumentParams
		if err := protocol.Unmarshal(req.Params(), &p); err != nil {
			return nil, err
		}
		e.shown = append(e.shown, p)
		return &protocol.ShowDocumentResult{Success: true}, nil
	case protocol.MethodWindowLogMessage, protocol.MethodWindowShowMessage:
		e.notes = append(e.notes, string(req.Params()))
	}
	return nil, nil
}

// wait waits until something is so.
func (e *editor) wait(what string, is func() bool) {
	e.t.Helper()
	late := time.AfterFunc(patience, func() {
		e.mu.Lock()
		defer e.mu.Unlock()
		e.came.Broadcast()
	})
	defer late.Stop()
	begun := time.Now()
	e.mu.Lock()
	defer e.mu.Unlock()
	for !is() {
		require.Less(e.t, time.Since(begun), patience, "waiting for %s; so far %v, %v", what, e.calls, e.notes)
		e.came.Wait()
	}
}

func (e *editor) call(method string, params, result any) {
	e.t.Helper()
	require.NoError(e.t, e.try(method, params, result), method)
}

// try is call for a request that may fail.
func (e *editor) try(method string, params, result any) error {
	ctx, stop := context.WithTimeout(context.Background(), patience)
	defer stop()
	_, err := e.conn.Call(ctx, method, params, result)
	return err
}

func (e *editor) tell(method string, params any) {
	e.t.Helper()
	require.NoError(e.t, e.conn.Notify(context.Background(), method, params))
}

// open opens a text in version 1.
func (e *editor) open(u uri.URI, text string) {
	e.t.Helper()
	p := &protocol.DidOpenTextDocumentParams{}
	p.TextDocument.URI, p.TextDocument.LanguageID, p.TextDocument.Version, p.TextDocument.Text = u, "rig", 1, text
	e.tell(protocol.MethodTextDocumentDidOpen, p)
}

// change edits an open text.
func (e *editor) change(u uri.URI, version int32, changes ...protocol.TextDocumentContentChangeEvent) {
	e.t.Helper()
	p := &protocol.DidChangeTextDocumentParams{ContentChanges: changes}
	p.TextDocument.URI, p.TextDocument.Version = u, version
	e.tell(protocol.MethodTextDocumentDidChange, p)
}

func (e *editor) closeText(u uri.URI) {
	e.t.Helper()
	p := &protocol.DidCloseTextDocumentParams{}
	p.TextDocument.URI = u
	e.tell(protocol.MethodTextDocumentDidClose, p)
}

// findings waits for the findings of a version of a document.
func (e *editor) findings(u uri.URI, version int32) []protocol.Diagnostic {
	e.t.Helper()
	var found []protocol.Diagnostic
	e.wait("findings", func() bool {
		for _, p := range e.published {
			if v, ok := p.Version.Get(); p.URI == u && ok && v == version {
				found = p.Diagnostics
				return true
			}
		}
		return false
	})
	return found
}

// codes lists the rules of findings.
func codes(list []protocol.Diagnostic) []string {
	out := []string{}
	for _, d := range list {
		out = append(out, string(d.Code.(protocol.String)))
	}
	return out
}

// whole replaces all of a text.
func whole(text string) protocol.TextDocumentContentChangeEvent {
	return &protocol.TextDocumentContentChangeWholeDocument{Text: text}
}

// piece replaces a range.
func piece(line, from, toLine, to uint32, text string) protocol.TextDocumentContentChangeEvent {
	return &protocol.TextDocumentContentChangePartial{Range: protocol.Range{
		Start: protocol.Position{Line: line, Character: from}, End: protocol.Position{Line: toLine, Character: to},
	}, Text: text}
}

// inFolder gives the URI of a file in a new folder.
func inFolder(t testing.TB, name string) uri.URI {
	t.Helper()
	return uri.File(filepath.Join(t.TempDir(), name))
}

// text gives the server's text of a document.
func (e *editor) text(u uri.URI) string {
	text, _ := e.server.desk.Snapshot().Text(e.server.pathOf(u))
	return text.Content
}

// codeOf gives the code of an error that the server answered with.
func codeOf(err error) jsonrpc2.Code {
	var wire *jsonrpc2.Error
	if errors.As(err, &wire) {
		return wire.Code
	}
	return 0
}

const loose = "anchor  head\nload    litter  mass 180 kg\nhauler  team\npulley  top     on head\nhitch   grab\npulley  runner  on grab\nrope    long\n\n" +
	"reeve long: litter / grab / top \\ runner / team\n"

func piecePosition(line, character uint32) protocol.Position {
	return protocol.Position{Line: line, Character: character}
}
