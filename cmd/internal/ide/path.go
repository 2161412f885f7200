package ide

import "path/filepath"

// slashed gives a path as files are named: with forward slashes.
func slashed(path string) string { return filepath.ToSlash(path) }
