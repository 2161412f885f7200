package lsp

import (
	"context"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
)

// definition gives where a name is given.
func (s *Server) definition(_ context.Context, at *ide.Snapshot, p *protocol.DefinitionParams) (any, error) {
	list := protocol.LocationSlice{}
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return list, nil
	}
	c := s.converter()
	for _, place := range doc.Definition(c.in(doc.File).offset(p.Position)) {
		if l, ok := c.location(place); ok {
			list = append(list, l)
		}
	}
	return list, nil
}

// references gives every place where a name is written.
func (s *Server) references(_ context.Context, at *ide.Snapshot, p *protocol.ReferenceParams) (any, error) {
	list := []protocol.Location{}
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return list, nil
	}
	c := s.converter()
	for _, r := range doc.References(c.in(doc.File).offset(p.Position)) {
		if l, ok := c.location(r.Place); ok && (p.Context.IncludeDeclaration || !r.Declares) {
			list = append(list, l)
		}
	}
	return list, nil
}

// highlight gives the places in the document where a name is written.
func (s *Server) highlight(_ context.Context, at *ide.Snapshot, p *protocol.DocumentHighlightParams) (any, error) {
	list := []protocol.DocumentHighlight{}
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return list, nil
	}
	c := s.converter()
	for _, r := range doc.References(c.in(doc.File).offset(p.Position)) {
		if r.Place.File != doc.File {
			continue
		}
		kind := protocol.DocumentHighlightKindRead
		if r.Declares {
			kind = protocol.DocumentHighlightKindWrite
		}
		list = append(list, protocol.DocumentHighlight{Range: c.rangeOf(r.Place), Kind: kind})
	}
	return list, nil
}
