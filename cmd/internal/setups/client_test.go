package setups

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"fairlead/lang/langtest"
)

// mustHave is the variable that forbids to skip a test because a program is missing:
// where the whole check runs, everything is there.
const mustHave = "FAIRLEAD_CLIENTS"

// need gives the path of a program, or skips the test that cannot do without. With
// -update no program is started: none of them writes a golden.
func need(t *testing.T, program, install string) string {
	t.Helper()
	if langtest.Updating() {
		t.Skip("not tried: -update writes the word lists")
	}
	path, err := exec.LookPath(program)
	if err != nil {
		lacks(t, program, install)
	}
	return path
}

// lacks skips a test for want of a program; where none may be missing it fails.
func lacks(t *testing.T, what, install string) {
	t.Helper()
	if os.Getenv(mustHave) == "must" {
		t.Fatalf("%s is not installed, and %s says that it must be", what, mustHave)
	}
	t.Skipf("not tried: %s is not installed (%s)", what, install)
}

// node gives the path of Node, and of the packages that the tests need there.
func node(t *testing.T) (program, packages string) {
	t.Helper()
	program = need(t, "node", "nodejs of the system's packages")
	packages, err := filepath.Abs(filepath.Join(root, "testdata/clients/node_modules"))
	require.NoError(t, err)
	if _, err := os.Stat(packages); err != nil {
		lacks(t, "what Node needs", "npm ci --prefix testdata/clients")
	}
	return program, packages
}

// command runs a program to its end and gives what it writes; in is its standard input.
func command(t *testing.T, in []byte, env []string, program string, args ...string) []byte {
	t.Helper()
	cmd := exec.Command(program, args...)
	cmd.Env = append(os.Environ(), env...)
	cmd.Stdin = bytes.NewReader(in)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	err := cmd.Run()
	require.NoError(t, err, "%s %v:\n%s%s", program, args, out.String(), errs.String())
	return out.Bytes()
}

// fairlead builds the program of this tree, once, and gives the folder it is in.
func fairlead(t *testing.T) string {
	t.Helper()
	folder, err := built()
	require.NoError(t, err)
	return folder
}

// programFolder is the folder that built made; empty if no test needed it.
var programFolder string

var built = sync.OnceValues(func() (string, error) {
	folder, err := os.MkdirTemp("", "fairlead-setups-")
	if err != nil {
		return "", err
	}
	programFolder = folder
	out, err := exec.Command("go", "build", "-o", folder, "fairlead/cmd/fairlead").CombinedOutput()
	if err != nil {
		os.Stderr.Write(out)
	}
	return folder, err
})

func TestMain(m *testing.M) {
	status := m.Run()
	_ = os.RemoveAll(programFolder) // a folder of temporary files may stay
	os.Exit(status)
}
