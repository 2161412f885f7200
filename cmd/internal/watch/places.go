package watch

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"fairlead/lang/load"
)

// known lists the files of the last look.
func (b *bell) known() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.seen
}

// named lists the paths that were given.
func (b *bell) named() []string {
	if b.Policy == "" {
		return b.Paths
	}
	return append(b.Paths[:len(b.Paths):len(b.Paths)], b.Policy)
}

// folders lists the folders to watch: those named with all below them, those of files,
// and all above them, where house rules may stand, or where they come back if they go.
func (b *bell) folders() []string {
	var list []string
	for _, p := range b.named() {
		walk(p, func(path string, entry fs.DirEntry) {
			if entry.IsDir() {
				list = append(list, path)
			}
		})
		list = append(list, above(p)...)
	}
	for _, file := range b.known() {
		list = append(list, filepath.Dir(file))
	}
	return list
}

// walk visits a path and all below it that is not hidden.
func walk(path string, visit func(path string, entry fs.DirEntry)) {
	// What is gone or closed to us is not there to be watched.
	_ = filepath.WalkDir(path, func(at string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return nil
		case at != path && strings.HasPrefix(entry.Name(), ".") && entry.IsDir():
			return fs.SkipDir
		}
		visit(at, entry)
		return nil
	})
}

// above lists the folders above a path, the nearest first.
func above(path string) []string {
	abs, err := filepath.Abs(path)
	if err != nil { // the working folder is gone
		return nil
	}
	var list []string
	for parent := filepath.Dir(abs); ; parent = filepath.Dir(parent) {
		list = append(list, parent)
		if parent == filepath.Dir(parent) {
			return list
		}
	}
}

// stamp tells one state of the files from another by their names, sizes and times.
func (b *bell) stamp() string {
	var out strings.Builder
	note := func(path string) {
		if info, err := os.Stat(path); err == nil {
			fmt.Fprintln(&out, path, info.Size(), info.ModTime().UnixNano(), info.Mode())
		}
	}
	for _, p := range b.named() {
		walk(p, func(path string, entry fs.DirEntry) {
			if entry.IsDir() || matters(path) {
				note(path)
			}
		})
		for _, folder := range above(p) {
			note(filepath.Join(folder, load.PolicyName))
		}
	}
	for _, file := range b.known() {
		note(file)
	}
	return out.String()
}
