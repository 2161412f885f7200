package load

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// Why a file that another one uses cannot be had.
var (
	errNotRead = errors.New("no other file can be read here")
	errNoFile  = errors.New("there is no such file")
	errFolder  = errors.New("it is a folder")
	errSpecial = errors.New("it is no ordinary file")
)

// unsaved are the texts of an overlay by the real names of their files.
type unsaved map[string]string

func (l Loader) unsaved() unsaved {
	texts := make(unsaved, len(l.Overlay))
	for name, text := range l.Overlay {
		texts[realName(name)] = text
	}
	return texts
}

// read reads a file that another one uses: from the overlay if it is there, else from
// the disk.
func (u unsaved) read(name string) (key, text string, err error) {
	key = realName(name)
	if text, there := u[key]; there {
		return key, text, nil
	}
	info, err := os.Stat(name)
	switch {
	case err != nil:
		return key, "", reason(err)
	case info.IsDir():
		return key, "", errFolder
	case !info.Mode().IsRegular():
		return key, "", errSpecial
	}
	content, err := os.ReadFile(name)
	if err != nil {
		return key, "", reason(err)
	}
	return key, string(content), nil
}

// reason gives a file error without the path, which the finding names.
func reason(err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return errNoFile
	}
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err
	}
	return err
}

// realName gives what tells a file from others, whatever it is called: its absolute
// path without links, as far as it is there.
func realName(name string) string {
	key, err := filepath.EvalSymlinks(name)
	if err != nil {
		key = name
	}
	if abs, err := filepath.Abs(key); err == nil {
		key = abs
	}
	return key
}
