package lsp

import (
	"context"
	"strings"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
)

// hover says what stands at a position.
func (s *Server) hover(_ context.Context, at *ide.Snapshot, p *protocol.HoverParams) (any, error) {
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return nil, nil
	}
	c := s.converter()
	h, ok := doc.Hover(c.in(doc.File).offset(p.Position))
	if !ok {
		return nil, nil
	}
	span := c.in(doc.File).rangeOf(h.Span)
	return &protocol.Hover{Contents: s.markup(h.Text), Range: &span}, nil
}

// markup gives a text in the form that the editor shows.
func (s *Server) markup(text string) *protocol.MarkupContent {
	if s.client.markdown {
		return &protocol.MarkupContent{Kind: protocol.MarkupKindMarkdown, Value: text}
	}
	return &protocol.MarkupContent{Kind: protocol.MarkupKindPlainText, Value: bare.Replace(text)}
}

// bare takes the marks of Markdown out that package ide writes.
var bare = strings.NewReplacer("`", "", `\\`, `\`, "\\`", "`", `\*`, "*", `\_`, "_", `\[`, "[", `\]`, "]", `\#`, "#", "&lt;", "<", "&gt;", ">")
