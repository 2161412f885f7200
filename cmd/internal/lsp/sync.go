package lsp

import (
	"go.lsp.dev/protocol"
	"go.lsp.dev/uri"

	"fairlead/cmd/internal/ide"
)

// didOpen puts a text on the desk.
func (s *Server) didOpen(p *protocol.DidOpenTextDocumentParams) {
	d := &document{path: s.pathOf(p.TextDocument.URI), uri: p.TextDocument.URI}
	s.mu.Lock()
	s.documents[d.path] = d
	s.mu.Unlock()
	s.desk.Set(d.path, ide.Text{Version: p.TextDocument.Version, Content: p.TextDocument.Text})
	s.changed(d.path)
}

// didChange makes the edits of one change, in their order, each in the text that the
// one before left.
func (s *Server) didChange(p *protocol.DidChangeTextDocumentParams) {
	path := s.pathOf(p.TextDocument.URI)
	text, open := s.desk.Snapshot().Text(path)
	if !open {
		return
	}
	for _, change := range p.ContentChanges {
		switch c := change.(type) {
		case *protocol.TextDocumentContentChangeWholeDocument:
			text.Content = c.Text
		case *protocol.TextDocumentContentChangePartial:
			span := linesOf(text.Content, s.wide).span(c.Range)
			text.Content = text.Content[:span.Start] + c.Text + text.Content[span.End:]
		}
	}
	text.Version = p.TextDocument.Version
	s.desk.Set(path, text)
	s.changed(path)
}

// didClose takes a text from the desk; the file counts again.
func (s *Server) didClose(p *protocol.DidCloseTextDocumentParams) {
	path := s.pathOf(p.TextDocument.URI)
	s.mu.Lock()
	d := s.documents[path]
	delete(s.documents, path)
	s.mu.Unlock()
	if d == nil {
		return
	}
	s.desk.Drop(path)
	s.withdraw(d)
	s.changed(path)
}

// didSave has nothing to do with an open text; but what it wrote may count elsewhere
// under another name.
func (s *Server) didSave(*protocol.DidSaveTextDocumentParams) { s.disturbed() }

// didChangeWatchedFiles takes note of files that changed on the disk.
func (s *Server) didChangeWatchedFiles(*protocol.DidChangeWatchedFilesParams) { s.disturbed() }

// disturbed looks at every document again: files beside them have changed.
func (s *Server) disturbed() {
	s.desk.Disturb()
	s.changed("")
}

// opened gives an open document by its path; nil if none is.
func (s *Server) opened(path string) *document {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.documents[path]
}

// document gives the document that a request is about, as it was then; nil if it is not
// there.
func (s *Server) document(at *ide.Snapshot, u uri.URI) *ide.Document {
	return at.Document(s.pathOf(u))
}
