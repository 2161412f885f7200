//go:build !windows

package cli

import (
	"path/filepath"
	"syscall"

	"github.com/google/renameio/v2"
)

// replaceFile writes a file anew in one step, so that a reader sees the old text or
// the new one and nothing between. A symbolic link stays one; permissions and,
// where the system lets us, the owner stay.
func replaceFile(name, text string) error {
	path, err := filepath.EvalSymlinks(name)
	if err != nil {
		return err
	}
	info, err := writable(path)
	if err != nil {
		return err
	}
	pending, err := renameio.NewPendingFile(path, renameio.WithTempDir(filepath.Dir(path)))
	if err != nil {
		return err
	}
	defer pending.Cleanup() //nolint:errcheck // does nothing once the file is replaced
	if owner, ok := info.Sys().(*syscall.Stat_t); ok {
		// Only the superuser may give a file away; anyone else owns it already.
		_ = pending.Chown(int(owner.Uid), int(owner.Gid))
	}
	if err := pending.Chmod(info.Mode()); err != nil {
		return err
	}
	if _, err := pending.WriteString(text); err != nil {
		return err
	}
	return pending.CloseAtomicallyReplace()
}
