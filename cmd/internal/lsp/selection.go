package lsp

import (
	"context"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
)

// selectionRanges gives for each position what holds it, the smallest first.
func (s *Server) selectionRanges(_ context.Context, at *ide.Snapshot, p *protocol.SelectionRangeParams) (any, error) {
	list := []protocol.SelectionRange{}
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return list, nil
	}
	in := s.converter().in(doc.File)
	for _, position := range p.Positions {
		var outer *protocol.SelectionRange
		around := doc.Around(in.offset(position))
		for i := len(around) - 1; i >= 0; i-- {
			outer = &protocol.SelectionRange{Range: in.rangeOf(around[i]), Parent: outer}
		}
		list = append(list, *outer)
	}
	return list, nil
}
