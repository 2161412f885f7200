package lsp

import (
	"context"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
)

// inlayHints gives the figures to show in the text.
func (s *Server) inlayHints(_ context.Context, at *ide.Snapshot, p *protocol.InlayHintParams) (any, error) {
	shown := s.shown()
	doc := s.document(at, p.TextDocument.URI)
	list := []protocol.InlayHint{}
	if doc == nil || !shown.Hints.Tension && !shown.Hints.Advantage {
		return list, nil
	}
	in := s.converter().in(doc.File)
	pad := true
	for _, h := range doc.Hints(in.span(p.Range)) {
		if h.Sort == ide.TensionHint && !shown.Hints.Tension || h.Sort == ide.AdvantageHint && !shown.Hints.Advantage {
			continue
		}
		list = append(list, protocol.InlayHint{
			Position: in.position(h.Offset), Label: protocol.String(h.Label),
			Tooltip: protocol.String(h.More), PaddingLeft: &pad,
		})
	}
	return list, nil
}
