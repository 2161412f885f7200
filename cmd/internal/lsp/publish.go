package lsp

import (
	"context"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
	"fairlead/lang/diag"
)

// changed has the findings looked for anew in what a change of one text may alter: the
// text itself, and the documents that depend on it. Without a path every document is
// looked at.
func (s *Server) changed(path string) {
	now := s.desk.Snapshot()
	others := false
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, d := range s.documents {
		depends := path == "" || d.last == nil || d.last.DependsOn(path)
		if d.path != path && !depends {
			continue
		}
		others = others || d.path != path
		d.wanted = now.Serial
		if !s.client.pull && !d.running {
			d.running = true
			s.errand(func(ctx context.Context) { s.publish(ctx, d) })
		}
	}
	if others {
		s.refresh(hintsRefresh | lensesRefresh | findingsRefresh)
	}
}

// publish looks for the findings of one document until those of its newest text are
// sent. No more than one of it runs for a document; when a newer text is there, the
// search in the older one is given up.
func (s *Server) publish(ctx context.Context, d *document) {
	for {
		at := s.desk.Snapshot()
		s.publishAt(ctx, at, d)
		s.mu.Lock()
		if d.running = ctx.Err() == nil && s.documents[d.path] == d && d.wanted > at.Serial; !d.running {
			s.mu.Unlock()
			return
		}
		s.mu.Unlock()
	}
}

// publishAt looks for the findings in one version and sends them if nothing newer is
// wanted meanwhile.
func (s *Server) publishAt(ctx context.Context, at *ide.Snapshot, d *document) {
	defer s.survive("looking at " + d.path)
	found, doc, ok := s.look(ctx, at, d)
	if ok {
		s.send(ctx, d, doc, found)
	}
	if doc != nil {
		s.mu.Lock()
		d.last = doc
		s.mu.Unlock()
	}
}

// look finds what is wrong with a document; ok is false if something newer is wanted
// meanwhile.
func (s *Server) look(ctx context.Context, at *ide.Snapshot, d *document) (found []diag.Diagnostic, doc *ide.Document, ok bool) {
	stale := func() bool {
		s.mu.Lock()
		defer s.mu.Unlock()
		return ctx.Err() != nil || d.wanted > at.Serial || s.documents[d.path] != d
	}
	doc = at.Document(d.path)
	if doc == nil {
		return nil, nil, !stale()
	}
	outcome, ok := doc.Findings(stale)
	return outcome.Findings, doc, ok && !stale()
}

// send publishes findings, unless the document is closed.
func (s *Server) send(ctx context.Context, d *document, doc *ide.Document, found []diag.Diagnostic) {
	p := &protocol.PublishDiagnosticsParams{URI: d.uri, Diagnostics: s.converter().findings(found)}
	if doc != nil && s.client.versions {
		p.Version = protocol.NewOptional(doc.Version)
	}
	d.publishing.Lock()
	defer d.publishing.Unlock()
	if !d.closed {
		s.noteUnlessEnded(ctx, protocol.MethodTextDocumentPublishDiagnostics, s.conn.Notify(ctx, protocol.MethodTextDocumentPublishDiagnostics, p))
	}
}

// withdraw takes the findings of a closed document back.
func (s *Server) withdraw(d *document) {
	d.publishing.Lock()
	defer d.publishing.Unlock()
	d.closed = true
	if !s.client.pull {
		s.note(protocol.MethodTextDocumentPublishDiagnostics, s.conn.Notify(s.life, protocol.MethodTextDocumentPublishDiagnostics,
			&protocol.PublishDiagnosticsParams{URI: d.uri, Diagnostics: []protocol.Diagnostic{}}))
	}
}
