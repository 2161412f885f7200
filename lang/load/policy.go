package load

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// PolicyName is the name of a file of house rules: it holds for every rig file in its
// folder and below, down to the next one.
const PolicyName = "policy.rig"

// policies finds the house rules of files, each file of them once.
type policies struct {
	*reading
	// folders has the policy of each folder asked for, nil for none; files each one read.
	folders map[string]*Loaded
	files   map[string]*Loaded
}

func (r *reading) policies() *policies {
	return &policies{reading: r, folders: map[string]*Loaded{}, files: map[string]*Loaded{}}
}

// of gives the house rules that hold for a file, by its name as given; nil without any.
func (p *policies) of(name string) *Loaded {
	if p.Policy != "" {
		return p.file(p.Policy, true)
	}
	abs, err := filepath.Abs(name)
	if err != nil { // the working folder is gone
		return nil
	}
	return p.above(filepath.Dir(abs), relative(name, abs))
}

// relative gives the part of an absolute path that was not given by name: what names
// above the file are shown with.
func relative(name, abs string) string {
	if filepath.IsAbs(name) {
		return ""
	}
	base, err := filepath.Abs(".")
	if err != nil {
		return ""
	}
	return base
}

// above finds the policy in a folder or the nearest one above.
func (p *policies) above(folder, base string) *Loaded {
	if found, known := p.folders[folder]; known {
		return found
	}
	name := filepath.Join(folder, PolicyName)
	if base != "" {
		if rel, err := filepath.Rel(base, name); err == nil {
			name = rel
		}
	}
	found := p.file(name, false)
	if parent := filepath.Dir(folder); found == nil && parent != folder {
		found = p.above(parent, base)
	}
	p.folders[folder] = found
	return found
}

// file reads a file of house rules; nil if there is none. One that must be there, or that
// is there and cannot be read, is an error.
func (p *policies) file(name string, must bool) *Loaded {
	key := name
	if abs, err := filepath.Abs(name); err == nil {
		key = abs
	}
	if known, seen := p.files[key]; seen {
		return known
	}
	content, err := p.content(name)
	switch {
	case err == nil:
		of := p.shelf.books[realName(name)] // a file may use it, too
		if of == nil {
			of = p.shelf.put(realName(name), filepath.ToSlash(name), content)
		}
		p.files[key] = p.shelf.loaded(of)
	case must || !errors.Is(err, fs.ErrNotExist):
		p.fail(err)
		fallthrough
	default:
		p.files[key] = nil
	}
	return p.files[key]
}

// read takes in a file that is among those examined themselves.
func (p *policies) read(name string, file *Loaded) {
	if abs, err := filepath.Abs(name); err == nil {
		p.files[abs] = file
	}
}

// content gives the text of a file: that of the overlay, else that on the disk.
func (p *policies) content(name string) (string, error) {
	if content, there := p.unsaved[realName(name)]; there {
		return content, nil
	}
	content, err := os.ReadFile(name)
	return string(content), err
}

// PolicyFor gives the house rules that hold for a file, which need not exist; nil
// without any.
func (l Loader) PolicyFor(name string) (*Loaded, error) {
	r := l.reading()
	policy := r.policies().of(name)
	return policy, errors.Join(r.errs...)
}

// Policies lists the files of house rules that hold for the given files and are none
// of them, each once.
func Policies(loaded []*Loaded) []*Loaded {
	var list []*Loaded
	for _, l := range loaded {
		if l.Policy != nil && !slices.Contains(loaded, l.Policy) && !slices.Contains(list, l.Policy) {
			list = append(list, l.Policy)
		}
	}
	return list
}
