package lsp

import (
	"context"

	"go.lsp.dev/jsonrpc2"
	"go.lsp.dev/protocol"
	"go.lsp.dev/uri"

	"fairlead/cmd/internal/ide"
	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// requestFailed is the code of a request that was right but cannot be granted.
const requestFailed jsonrpc2.Code = -32803

// prepareRename gives the name that would be renamed, or why it cannot be.
func (s *Server) prepareRename(_ context.Context, at *ide.Snapshot, p *protocol.PrepareRenameParams) (any, error) {
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return nil, nil
	}
	in := s.converter().in(doc.File)
	name, span, err := doc.Renamable(in.offset(p.Position))
	if err != nil {
		return nil, jsonrpc2.NewError(requestFailed, err.Error())
	}
	return &protocol.PrepareRenamePlaceholder{Range: in.rangeOf(span), Placeholder: name}, nil
}

// rename gives the edits that rename, or why there are none.
func (s *Server) rename(_ context.Context, at *ide.Snapshot, p *protocol.RenameParams) (any, error) {
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return nil, nil
	}
	c := s.converter()
	edits, err := doc.Rename(c.in(doc.File).offset(p.Position), p.NewName)
	if err != nil {
		return nil, jsonrpc2.NewError(requestFailed, err.Error())
	}
	return c.workspaceEdit(doc, edits), nil
}

// textEdits gives the edits of one file.
func (c *converter) textEdits(f *source.File, edits []diag.Edit) []protocol.TextEdit {
	list := []protocol.TextEdit{}
	for _, e := range edits {
		if e.Place.File == f {
			list = append(list, protocol.TextEdit{Range: c.rangeOf(e.Place), NewText: e.NewText})
		}
	}
	return list
}

// workspaceEdit gives edits of a document and, perhaps, of others. Those of the document
// name its version, where the editor looks at it.
func (c *converter) workspaceEdit(doc *ide.Document, edits []diag.Edit) *protocol.WorkspaceEdit {
	out := &protocol.WorkspaceEdit{}
	var files []*source.File
	for _, e := range edits {
		known := false
		for _, f := range files {
			known = known || f == e.Place.File
		}
		if !known {
			files = append(files, e.Place.File)
		}
	}
	for _, f := range files {
		u, ok := c.server.uriOf(f)
		if !ok {
			continue
		}
		if !c.server.client.documentChanges {
			if out.Changes == nil {
				out.Changes = map[uri.URI][]protocol.TextEdit{}
			}
			out.Changes[u] = c.textEdits(f, edits)
			continue
		}
		one := &protocol.TextDocumentEdit{}
		one.TextDocument.URI = u
		if f == doc.File && c.server.opened(doc.Path) != nil {
			one.TextDocument.Version = &doc.Version
		}
		for _, e := range c.textEdits(f, edits) {
			one.Edits = append(one.Edits, &e)
		}
		out.DocumentChanges = append(out.DocumentChanges, one)
	}
	return out
}
