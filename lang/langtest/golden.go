package langtest

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/aymanbagabas/go-udiff"
)

// update is defined once, though a test may bring in several packages that want
// a flag of this name.
var update = func() *bool {
	if flag.Lookup("update") != nil {
		return nil
	}
	return flag.Bool("update", false, "write the golden files anew")
}()

// Updating says whether -update was given.
func Updating() bool {
	if update != nil {
		return *update
	}
	f := flag.Lookup("update")
	return f != nil && f.Value.String() == "true"
}

// Golden compares a text with the file at path, shows the difference if there is
// one, and writes the file with -update.
func Golden(t testing.TB, path, got string) {
	t.Helper()
	if Updating() {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v; run the test with -update to write it", err)
	}
	if string(want) != got {
		t.Errorf("%s is not what comes out now; run the test with -update if that is right\n%s",
			path, udiff.Unified(path, "now", string(want), got))
	}
}
