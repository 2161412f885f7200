package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"go.lsp.dev/jsonrpc2"
	"go.lsp.dev/protocol"
	"go.lsp.dev/uri"

	"fairlead/cmd/internal/ide"
)

// The commands that the editor may run.
const (
	// pageCommand shows the page of a rule: [rule].
	pageCommand = "fairlead.page"
	// reportCommand shows what is computed of a rig: [uri, rig].
	reportCommand = "fairlead.report"
	// selectCommand selects a range of an open text: [uri, range].
	selectCommand = "fairlead.select"
)

func commandNames() []string { return []string{pageCommand, reportCommand, selectCommand} }

// executeCommand runs a command. Its result is the text that is shown.
func (s *Server) executeCommand(ctx context.Context, at *ide.Snapshot, p *protocol.ExecuteCommandParams) (any, error) {
	if !slices.Contains(commandNames(), p.Command) {
		return nil, invalid("there is no command " + p.Command)
	}
	first, ok := argument[string](p.Arguments, 0)
	if !ok {
		return nil, invalid(p.Command + " needs a text as its first argument")
	}
	switch p.Command {
	case pageCommand:
		page, ok := ide.PageOf(first)
		if !ok {
			return nil, invalid("there is no rule " + first)
		}
		u, ok := s.pages.uri(page)
		s.show(ctx, u, ok, page.Whole)
		return page.Whole, nil
	case reportCommand:
		rig, _ := argument[string](p.Arguments, 1)
		return s.report(ctx, at, uri.URI(first), rig)
	}
	r, ok := argument[protocol.Range](p.Arguments, 1)
	if !ok {
		return nil, invalid(p.Command + " needs a range as its second argument")
	}
	s.showDocument(ctx, uri.URI(first), &r)
	return nil, nil
}

func invalid(message string) error { return jsonrpc2.NewError(jsonrpc2.InvalidParams, message) }

// argument reads an argument of a command.
func argument[T any](list []protocol.LSPAny, i int) (value T, ok bool) {
	if i >= len(list) {
		return value, false
	}
	return value, json.Unmarshal(list[i], &value) == nil
}

// report shows what is computed of a rig of a document.
func (s *Server) report(ctx context.Context, at *ide.Snapshot, u uri.URI, rig string) (any, error) {
	doc := s.document(at, u)
	if doc == nil {
		return nil, invalid("there is no document " + string(u))
	}
	text, ok := doc.Report(rig)
	if !ok {
		return nil, invalid(fmt.Sprintf("%s has no rig %s", u, rig))
	}
	page, written := s.pages.note("report.txt", text)
	s.show(ctx, page, written, text)
	return text, nil
}

// mostShown is how many lines of a text a message shows.
const mostShown = 12

// show opens a text that is in a file, or where that cannot be, its first lines in a
// message.
func (s *Server) show(ctx context.Context, u uri.URI, written bool, text string) {
	if written && s.client.showDocument {
		s.showDocument(ctx, u, nil)
		return
	}
	lines := strings.Split(strings.TrimSpace(text), "\n")
	if len(lines) > mostShown {
		lines = append(lines[:mostShown], "…")
	}
	_ = s.conn.Notify(ctx, protocol.MethodWindowShowMessage,
		&protocol.ShowMessageParams{Type: protocol.MessageTypeInfo, Message: strings.Join(lines, "\n")})
}

// showDocument has the editor open a document, and select a range of it.
func (s *Server) showDocument(ctx context.Context, u uri.URI, selection *protocol.Range) {
	if !s.client.showDocument {
		return
	}
	yes := true
	_, err := s.conn.Call(ctx, protocol.MethodWindowShowDocument,
		&protocol.ShowDocumentParams{URI: u, TakeFocus: &yes, Selection: selection}, nil)
	s.noteUnlessEnded(ctx, protocol.MethodWindowShowDocument, err)
}
