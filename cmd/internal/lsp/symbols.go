package lsp

import (
	"context"
	"strings"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// symbolKind gives the protocol's kind of what a statement names.
func symbolKind(statement string) protocol.SymbolKind {
	switch statement {
	case "rig", "include":
		return protocol.SymbolKindModule
	case "policy":
		return protocol.SymbolKindNamespace
	case "stock":
		return protocol.SymbolKindStruct
	case "reeve":
		return protocol.SymbolKindFunction
	}
	if syntax.IsLine(statement) {
		return protocol.SymbolKindVariable
	}
	return protocol.SymbolKindObject
}

// documentSymbols gives the outline of a document.
func (s *Server) documentSymbols(_ context.Context, at *ide.Snapshot, p *protocol.DocumentSymbolParams) (any, error) {
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return protocol.DocumentSymbolSlice{}, nil
	}
	c := s.converter()
	if s.client.nestedSymbols {
		return c.nested(doc.File, doc.Symbols()), nil
	}
	list := protocol.SymbolInformationSlice{}
	for _, symbol := range doc.Symbols() {
		list = append(list, c.flat(doc.File, symbol, ""))
		for _, child := range symbol.Children {
			list = append(list, c.flat(doc.File, child, symbol.Name))
		}
	}
	return list, nil
}

func (c *converter) nested(f *source.File, symbols []ide.Symbol) protocol.DocumentSymbolSlice {
	list := protocol.DocumentSymbolSlice{}
	for _, symbol := range symbols {
		list = append(list, protocol.DocumentSymbol{
			Name: symbol.Name, Detail: &symbol.Detail, Kind: symbolKind(symbol.Kind),
			Range: c.in(f).rangeOf(symbol.Whole), SelectionRange: c.in(f).rangeOf(symbol.Own),
			Children: c.nested(f, symbol.Children),
		})
	}
	return list
}

// flat gives one symbol by itself, with the name of what holds it.
func (c *converter) flat(f *source.File, symbol ide.Symbol, in string) protocol.SymbolInformation {
	out := protocol.SymbolInformation{}
	out.Name, out.Kind = symbol.Name, symbolKind(symbol.Kind)
	if in != "" {
		out.ContainerName = &in
	}
	out.Location, _ = c.location(f.At(symbol.Own))
	return out
}

// workspaceSymbols gives what the rig files of the folders name.
func (s *Server) workspaceSymbols(_ context.Context, at *ide.Snapshot, p *protocol.WorkspaceSymbolParams) (any, error) {
	list := protocol.SymbolInformationSlice{}
	c := s.converter()
	for _, found := range at.Find(strings.TrimSpace(p.Query), s.folders()) {
		list = append(list, c.flat(found.File, found.Symbol, found.In))
	}
	return list, nil
}
