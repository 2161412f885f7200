package lsp

import (
	"context"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
)

// formatting brings a document into the standard style. One with an error in its text
// stays as it is: the error says why.
func (s *Server) formatting(_ context.Context, at *ide.Snapshot, p *protocol.DocumentFormattingParams) (any, error) {
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return []protocol.TextEdit{}, nil
	}
	edits, _ := doc.Format()
	return s.converter().textEdits(doc.File, edits), nil
}

// rangeFormatting does it for the statements of a range.
func (s *Server) rangeFormatting(_ context.Context, at *ide.Snapshot, p *protocol.DocumentRangeFormattingParams) (any, error) {
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return []protocol.TextEdit{}, nil
	}
	c := s.converter()
	edits, _ := doc.FormatRange(c.in(doc.File).span(p.Range))
	return c.textEdits(doc.File, edits), nil
}
