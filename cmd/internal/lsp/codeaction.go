package lsp

import (
	"context"
	"fmt"
	"strings"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
	"fairlead/lang/diag"
)

// actionKinds are the protocol's for what can be done.
var actionKinds = map[ide.ActionSort]protocol.CodeActionKind{
	ide.MendAction:    protocol.CodeActionKindQuickFix,
	ide.AddAction:     protocol.CodeActionKindQuickFix,
	ide.AcceptAction:  protocol.CodeActionKindQuickFix,
	ide.ExplainAction: protocol.CodeActionKindQuickFix,
	ide.RewriteAction: protocol.CodeActionKindRefactorRewrite,
}

// codeActions gives what can be done in a range.
func (s *Server) codeActions(ctx context.Context, at *ide.Snapshot, p *protocol.CodeActionParams) (any, error) {
	list := []protocol.CommandOrCodeAction{}
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil || !s.client.actions {
		return list, nil
	}
	outcome, ok := doc.Findings(func() bool { return ctx.Err() != nil })
	if !ok {
		return nil, protocol.ErrRequestCancelled
	}
	c := s.converter()
	for _, a := range doc.Actions(c.in(doc.File).span(p.Range), outcome.Findings) {
		if wanted(actionKinds[a.Sort], p.Context.Only) {
			list = append(list, c.action(doc, a))
		}
	}
	if len(p.Context.Only) > 0 && wanted(protocol.CodeActionKindSourceFixAll, p.Context.Only) {
		list = append(list, c.mendAll(doc)...)
	}
	return list, nil
}

// wanted says whether the editor asks for actions of a kind: of any if it names none, of
// those that a named kind includes.
func wanted(kind protocol.CodeActionKind, only []protocol.CodeActionKind) bool {
	for _, o := range only {
		if o == "" || kind == o || strings.HasPrefix(string(kind), string(o)+".") {
			return true
		}
	}
	return len(only) == 0
}

// action gives one action.
func (c *converter) action(doc *ide.Document, a ide.Action) *protocol.CodeAction {
	kind := actionKinds[a.Sort]
	out := &protocol.CodeAction{Title: a.Title, Kind: &kind}
	if a.Preferred {
		out.IsPreferred = &a.Preferred
	}
	if a.Finding != nil {
		out.Diagnostics = []protocol.Diagnostic{c.finding(*a.Finding)}
	}
	if len(a.Edits) > 0 {
		out.Edit = c.workspaceEdit(doc, a.Edits)
	}
	switch {
	case a.Sort == ide.ExplainAction:
		out.Command = protocol.Command{Title: a.Title, Command: pageCommand, Arguments: []protocol.LSPAny{raw(a.Finding.Rule)}}
	case a.Select != nil && c.server.client.showDocument:
		out.Command = c.selecting(doc, a)
	}
	return out
}

// selecting gives the command that selects what the author goes on with, in the text as
// it is after the edits.
func (c *converter) selecting(doc *ide.Document, a ide.Action) protocol.Command {
	u, _ := c.server.uriOf(doc.File)
	after := linesOf(diag.Apply(doc.File, a.Edits), c.server.wide)
	return protocol.Command{
		Title: "write the reason", Command: selectCommand,
		Arguments: []protocol.LSPAny{raw(string(u)), raw(after.rangeOf(*a.Select))},
	}
}

// mendAll gives the action that makes every proved fix; none if there is nothing to mend.
func (c *converter) mendAll(doc *ide.Document) []protocol.CommandOrCodeAction {
	edits, mended := doc.MendAll()
	if mended == 0 {
		return nil
	}
	kind, findings := protocol.CodeActionKindSourceFixAll, "findings"
	if mended == 1 {
		findings = "finding"
	}
	return []protocol.CommandOrCodeAction{&protocol.CodeAction{
		Title: fmt.Sprintf("mend %d %s", mended, findings), Kind: &kind, Edit: c.workspaceEdit(doc, edits),
	}}
}
