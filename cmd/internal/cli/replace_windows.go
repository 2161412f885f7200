package cli

import (
	"errors"
	"os"
	"path/filepath"
)

// replaceFile writes a file anew in one step, so that a reader sees the old text or
// the new one and nothing between. A symbolic link stays one.
func replaceFile(name, text string) error {
	path, err := filepath.EvalSymlinks(name)
	if err != nil {
		return err
	}
	info, err := writable(path)
	if err != nil {
		return err
	}
	pending, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path))
	if err != nil {
		return err
	}
	_, err = pending.WriteString(text)
	err = errors.Join(err, pending.Sync(), pending.Close())
	if err == nil {
		err = os.Chmod(pending.Name(), info.Mode())
	}
	if err == nil {
		err = os.Rename(pending.Name(), path)
	}
	if err != nil {
		_ = os.Remove(pending.Name()) // the first error says more
	}
	return err
}
