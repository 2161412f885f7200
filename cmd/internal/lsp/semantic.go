package lsp

import (
	"context"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
	"fairlead/lang/source"
)

// semanticTokens says what each piece of a document is.
func (s *Server) semanticTokens(_ context.Context, at *ide.Snapshot, p *protocol.SemanticTokensParams) (any, error) {
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return &protocol.SemanticTokens{Data: []uint32{}}, nil
	}
	return s.encode(doc, source.Span{Start: 0, End: len(doc.File.Text)}), nil
}

// semanticTokensRange is semanticTokens for the lines of a range.
func (s *Server) semanticTokensRange(_ context.Context, at *ide.Snapshot, p *protocol.SemanticTokensRangeParams) (any, error) {
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return &protocol.SemanticTokens{Data: []uint32{}}, nil
	}
	return s.encode(doc, s.converter().in(doc.File).span(p.Range)), nil
}

// encode writes tokens as five numbers each, the first two relative to the token before.
func (s *Server) encode(doc *ide.Document, within source.Span) *protocol.SemanticTokens {
	in := s.converter().in(doc.File)
	data := []uint32{}
	var before protocol.Position
	for _, t := range doc.Tokens(within) {
		r := in.rangeOf(t.Span)
		if r.Start.Line != r.End.Line { // a carriage return alone, which is an error
			continue
		}
		column := r.Start.Character
		if r.Start.Line == before.Line {
			column -= before.Character
		}
		declares := uint32(0)
		if t.Declares {
			declares = 1
		}
		data = append(data, r.Start.Line-before.Line, column, r.End.Character-r.Start.Character, uint32(t.Sort), declares)
		before = r.Start
	}
	return &protocol.SemanticTokens{Data: data}
}
