package cli

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/source"
)

// A file that somebody else wrote since it was read is not overwritten.
func TestReplaceLeavesWhatWasChanged(t *testing.T) {
	path := filepath.ToSlash(filepath.Join(t.TempDir(), "yard.rig"))
	text := func() string {
		b, err := os.ReadFile(path)
		require.NoError(t, err)
		return string(b)
	}
	require.NoError(t, os.WriteFile(path, []byte("theirs"), 0o600))
	err := replace(source.New(path, "as read"), "ours")
	assert.EqualError(t, err, path+": it was changed meanwhile and is left as it is")
	assert.Equal(t, "theirs", text())
	require.NoError(t, replace(source.New(path, "theirs"), "ours"))
	assert.Equal(t, "ours", text())
	require.NoError(t, os.Remove(path))
	assert.EqualError(t, replace(source.New(path, "ours"), "more"), path+": no such file or directory")
	assert.NoFileExists(t, path)
}
