package lsp

import (
	"os"
	"path/filepath"
	"strings"

	"go.lsp.dev/protocol"
	"go.lsp.dev/uri"

	"fairlead/lang/source"
)

// pathOf gives the absolute path of a document. One that is in no file, such as a new
// one, has a path in the first folder, where the house rules for it would be.
func (s *Server) pathOf(u uri.URI) string {
	if u.Scheme() == "file" {
		return filepath.Clean(u.FsPath())
	}
	name := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) {
			return '-'
		}
		return r
	}, string(u))
	return filepath.Join(s.firstFolder(), "untitled-"+name)
}

// firstFolder gives the first workspace folder, else the working folder.
func (s *Server) firstFolder() string {
	if folders := s.folders(); len(folders) > 0 {
		return folders[0]
	}
	folder, err := os.Getwd()
	if err != nil {
		return string(filepath.Separator)
	}
	return folder
}

// uriOf gives the URI of a file: as the editor wrote it for an open text. Ok is false
// for what is in no file and cannot be put into one.
func (s *Server) uriOf(f *source.File) (u uri.URI, ok bool) {
	if strings.HasPrefix(f.Name, builtIn) {
		return s.pages.uri(f)
	}
	path := filepath.FromSlash(f.Name)
	if d := s.opened(path); d != nil {
		return d.uri, true
	}
	return uri.File(path), true
}

// converter turns places into those of the protocol. It serves one answer.
type converter struct {
	server *Server
	known  map[*source.File]*lines
}

func (s *Server) converter() *converter {
	return &converter{server: s, known: map[*source.File]*lines{}}
}

// in gives the lines of a file.
func (c *converter) in(f *source.File) *lines {
	if c.known[f] == nil {
		c.known[f] = linesOf(f.Whole, c.server.wide)
	}
	return c.known[f]
}

func (c *converter) rangeOf(p source.Place) protocol.Range { return c.in(p.File).rangeOf(p.Span) }

// location gives a place with its file; ok is false where an editor cannot open it.
func (c *converter) location(p source.Place) (l protocol.Location, ok bool) {
	if p.File == nil {
		return l, false
	}
	u, ok := c.server.uriOf(p.File)
	return protocol.Location{URI: u, Range: c.rangeOf(p)}, ok
}
