package lsp

import (
	"context"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
)

// foldingRanges gives what can be folded.
func (s *Server) foldingRanges(_ context.Context, at *ide.Snapshot, p *protocol.FoldingRangeParams) (any, error) {
	list := []protocol.FoldingRange{}
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return list, nil
	}
	in := s.converter().in(doc.File)
	for _, f := range doc.Folds() {
		// Lines of the protocol are more than ours where a carriage return stands alone.
		first := in.position(doc.File.LineSpan(f.First).Start).Line
		last := in.position(doc.File.LineSpan(f.Last).Start).Line
		out := protocol.FoldingRange{StartLine: first, EndLine: last}
		if f.Sort == ide.CommentFold {
			out.Kind = protocol.FoldingRangeKindComment
		}
		list = append(list, out)
	}
	return list, nil
}
