package lsp

import (
	"context"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
	"fairlead/lang/diag"
)

// The kinds of report.
const (
	fullReport      = "full"
	unchangedReport = "unchanged"
)

// pullDiagnostics gives the findings of a document to an editor that asks for them, or
// says that they are those that it has.
func (s *Server) pullDiagnostics(ctx context.Context, at *ide.Snapshot, p *protocol.DocumentDiagnosticParams) (any, error) {
	doc := s.document(at, p.TextDocument.URI)
	var found []diag.Diagnostic
	if doc != nil {
		outcome, ok := doc.Findings(func() bool { return ctx.Err() != nil })
		if !ok {
			return nil, protocol.ErrRequestCancelled
		}
		found = outcome.Findings
		s.remember(doc)
	}
	items := s.converter().findings(found)
	id := digest(items)
	if p.PreviousResultID != nil && *p.PreviousResultID == id {
		return &protocol.RelatedUnchangedDocumentDiagnosticReport{
			UnchangedDocumentDiagnosticReport: protocol.UnchangedDocumentDiagnosticReport{Kind: unchangedReport, ResultID: id},
		}, nil
	}
	return &protocol.RelatedFullDocumentDiagnosticReport{
		FullDocumentDiagnosticReport: protocol.FullDocumentDiagnosticReport{Kind: fullReport, ResultID: &id, Items: items},
	}, nil
}

// remember notes what an open document depends on.
func (s *Server) remember(doc *ide.Document) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if d := s.documents[doc.Path]; d != nil {
		d.last = doc
	}
}
