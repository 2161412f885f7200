package lsp

import (
	"context"
	"fmt"
	"runtime/debug"
	"strings"

	"go.lsp.dev/jsonrpc2"
	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
)

// notice handles a notification, in the order in which it came.
type notice func(s *Server, params []byte) error

// request answers a request on the texts as they were when it came.
type request func(ctx context.Context, s *Server, at *ide.Snapshot, params []byte) (any, error)

var notices = map[string]notice{
	protocol.MethodCancelRequest:                      told((*Server).cancel),
	protocol.MethodInitialized:                        told((*Server).initialized),
	protocol.MethodTextDocumentDidOpen:                told((*Server).didOpen),
	protocol.MethodTextDocumentDidChange:              told((*Server).didChange),
	protocol.MethodTextDocumentDidClose:               told((*Server).didClose),
	protocol.MethodTextDocumentDidSave:                told((*Server).didSave),
	protocol.MethodWorkspaceDidChangeWatchedFiles:     told((*Server).didChangeWatchedFiles),
	protocol.MethodWorkspaceDidChangeWorkspaceFolders: told((*Server).didChangeWorkspaceFolders),
	protocol.MethodWorkspaceDidChangeConfiguration:    told((*Server).didChangeConfiguration),
}

var requests = map[string]request{
	protocol.MethodTextDocumentHover:               asked((*Server).hover),
	protocol.MethodTextDocumentInlayHint:           asked((*Server).inlayHints),
	protocol.MethodTextDocumentCompletion:          asked((*Server).completion),
	protocol.MethodCompletionItemResolve:           asked((*Server).resolveCompletion),
	protocol.MethodTextDocumentDefinition:          asked((*Server).definition),
	protocol.MethodTextDocumentReferences:          asked((*Server).references),
	protocol.MethodTextDocumentDocumentHighlight:   asked((*Server).highlight),
	protocol.MethodTextDocumentPrepareRename:       asked((*Server).prepareRename),
	protocol.MethodTextDocumentRename:              asked((*Server).rename),
	protocol.MethodTextDocumentDocumentSymbol:      asked((*Server).documentSymbols),
	protocol.MethodWorkspaceSymbol:                 asked((*Server).workspaceSymbols),
	protocol.MethodTextDocumentFoldingRange:        asked((*Server).foldingRanges),
	protocol.MethodTextDocumentSelectionRange:      asked((*Server).selectionRanges),
	protocol.MethodTextDocumentSemanticTokensFull:  asked((*Server).semanticTokens),
	protocol.MethodTextDocumentSemanticTokensRange: asked((*Server).semanticTokensRange),
	protocol.MethodTextDocumentCodeAction:          asked((*Server).codeActions),
	protocol.MethodTextDocumentCodeLens:            asked((*Server).codeLenses),
	protocol.MethodTextDocumentFormatting:          asked((*Server).formatting),
	protocol.MethodTextDocumentRangeFormatting:     asked((*Server).rangeFormatting),
	protocol.MethodTextDocumentDiagnostic:          asked((*Server).pullDiagnostics),
	protocol.MethodWorkspaceExecuteCommand:         asked((*Server).executeCommand),
}

// told makes a notice of a function that takes its parameters.
func told[P any](handle func(*Server, *P)) notice {
	return func(s *Server, params []byte) error {
		var p P
		if err := protocol.Unmarshal(params, &p); err != nil {
			return err
		}
		handle(s, &p)
		return nil
	}
}

// asked makes a request of a function that takes its parameters.
func asked[P any](answer func(*Server, context.Context, *ide.Snapshot, *P) (any, error)) request {
	return func(ctx context.Context, s *Server, at *ide.Snapshot, params []byte) (any, error) {
		var p P
		if err := protocol.Unmarshal(params, &p); err != nil {
			return nil, fmt.Errorf("%w: %w", jsonrpc2.ErrInvalidParams, err)
		}
		return answer(s, ctx, at, &p)
	}
}

// handler gives what the connection calls for each message. Messages come one after
// another; only the answers to requests are worked out side by side, each on a snapshot
// that is taken before the next message is read.
//
// The context of a message is used for nothing but to let the next one be read: the
// connection uses it again for another message.
func (s *Server) handler() jsonrpc2.Handler {
	return func(ctx context.Context, req *jsonrpc2.Request) (any, error) {
		call, method := req.IsCall(), strings.Clone(req.Method())
		result, err := s.handle(ctx, req)
		if !call { // an error would end the connection
			s.note(method, err)
			return nil, nil
		}
		return result, err
	}
}

// handle handles one message.
func (s *Server) handle(ctx context.Context, req *jsonrpc2.Request) (any, error) {
	method := req.Method()
	switch {
	case s.left:
		return nil, nil
	case method == protocol.MethodExit:
		s.left = true
		close(s.ended)
		return nil, nil
	case method == protocol.MethodInitialize && req.IsCall():
		return s.initialize(req.Params())
	case s.state == strange && req.IsCall():
		return nil, jsonrpc2.NewError(jsonrpc2.ServerNotInitialized, "initialize comes first")
	case s.state == shutDown && req.IsCall():
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidRequest, "the server is shut down")
	case s.state != serving:
		return nil, nil
	case method == protocol.MethodShutdown:
		s.state = shutDown
		return nil, nil
	case !req.IsCall():
		if handle := notices[method]; handle != nil {
			defer s.survive(method)
			return nil, handle(s, req.Params())
		}
		return nil, nil
	}
	answer := requests[method]
	if answer == nil {
		return nil, jsonrpc2.NewError(jsonrpc2.MethodNotFound, "there is no method "+strings.Clone(method))
	}
	at := s.desk.Snapshot()
	work, stop := s.begin(req.ID())
	defer stop()
	jsonrpc2.Async(ctx)
	return s.answer(work, answer, at, req.Params())
}

// answer works an answer out. A request that is cancelled is answered at once, whatever
// is still being worked out for it.
func (s *Server) answer(work context.Context, answer request, at *ide.Snapshot, params []byte) (any, error) {
	type outcome struct {
		result any
		err    error
	}
	done := make(chan outcome, 1)
	s.errands.Add(1)
	go func() {
		defer s.errands.Done()
		out := outcome{err: jsonrpc2.NewError(jsonrpc2.InternalError, "the server failed to answer")}
		defer func() { done <- out }()
		defer s.survive("a request")
		out.result, out.err = answer(work, s, at, params)
	}()
	select {
	case out := <-done:
		return out.result, out.err
	case <-work.Done():
		return nil, protocol.ErrRequestCancelled
	}
}

// survive keeps a fault of the program in one message from ending the conversation.
func (s *Server) survive(what string) {
	if fault := recover(); fault != nil {
		s.note(what, fmt.Errorf("%v\n%s", fault, debug.Stack()))
	}
}

// note writes a fault to the editor's log.
func (s *Server) note(what string, err error) {
	if err != nil {
		_ = s.conn.Notify(s.life, protocol.MethodWindowLogMessage,
			&protocol.LogMessageParams{Type: protocol.MessageTypeError, Message: fmt.Sprintf("fairlead: %s: %v", what, err)})
	}
}
