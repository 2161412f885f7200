package lsp

import (
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"
	"sync"

	"go.lsp.dev/uri"

	"fairlead/lang/source"
)

// pages writes what is part of the program and no file of the user, such as the pages
// of the rules, to where an editor can open it: the user's cache folder. Each text is
// written when a place in it is first named.
type pages struct {
	mu    sync.Mutex
	known map[string]uri.URI
}

// builtIn begins the names of what is part of the program.
const builtIn = "built-in/"

// uri gives the URI of a built-in file; ok is false where it cannot be written.
func (p *pages) uri(f *source.File) (u uri.URI, ok bool) {
	return p.write(filepath.Base(f.Name), f.Whole)
}

// write makes a file of a text and gives its URI. Other texts of the same name have
// other folders, so that two versions of the program do not write over each other.
func (p *pages) write(name, text string) (u uri.URI, ok bool) {
	sum := sha256.Sum256([]byte(text))
	key := filepath.Join(hex.EncodeToString(sum[:6]), name)
	p.mu.Lock()
	defer p.mu.Unlock()
	if u, ok = p.known[key]; ok {
		return u, u != ""
	}
	if p.known == nil {
		p.known = map[string]uri.URI{}
	}
	p.known[key] = ""
	if u, ok = put(key, text); ok {
		p.known[key] = u
	}
	return u, ok
}

// note writes a text that may be another one the next time.
func (p *pages) note(name, text string) (u uri.URI, ok bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	return put(filepath.Join("notes", name), text)
}

// put writes a file in the cache folder, if it is not there as it should be.
func put(name, text string) (u uri.URI, ok bool) {
	cache, err := os.UserCacheDir()
	if err != nil {
		return "", false
	}
	path := filepath.Join(cache, "fairlead", name)
	if old, err := os.ReadFile(path); err == nil && string(old) == text {
		return uri.File(path), true
	}
	if os.MkdirAll(filepath.Dir(path), 0o755) != nil || os.WriteFile(path, []byte(text), 0o644) != nil {
		return "", false
	}
	return uri.File(path), true
}
