package lsp

import (
	"slices"

	"go.lsp.dev/protocol"
	"go.lsp.dev/uri"
)

// didChangeWorkspaceFolders takes folders in and away.
func (s *Server) didChangeWorkspaceFolders(p *protocol.DidChangeWorkspaceFoldersParams) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, gone := range p.Event.Removed {
		s.roots = slices.DeleteFunc(s.roots, func(u uri.URI) bool { return u == gone.URI })
	}
	for _, f := range p.Event.Added {
		if !slices.Contains(s.roots, f.URI) {
			s.roots = append(s.roots, f.URI)
		}
	}
}

// folders gives the paths of the workspace folders.
func (s *Server) folders() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	var paths []string
	for _, u := range s.roots {
		if u.Scheme() == "file" {
			paths = append(paths, u.FsPath())
		}
	}
	return paths
}
