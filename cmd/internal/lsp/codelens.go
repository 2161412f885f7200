package lsp

import (
	"context"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
)

// codeLenses gives the summary of each rig. It leads to the whole report.
func (s *Server) codeLenses(_ context.Context, at *ide.Snapshot, p *protocol.CodeLensParams) (any, error) {
	list := []protocol.CodeLens{}
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil || !s.shown().Lens {
		return list, nil
	}
	in := s.converter().in(doc.File)
	for _, l := range doc.Lenses() {
		list = append(list, protocol.CodeLens{
			Range: in.rangeOf(l.Span),
			Command: protocol.Command{
				Title: l.Title, Command: reportCommand,
				Arguments: []protocol.LSPAny{raw(string(p.TextDocument.URI)), raw(l.Rig)},
			},
		})
	}
	return list, nil
}
