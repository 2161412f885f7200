package cli

import (
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/assert"

	"fairlead/lang/langtest"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"fairlead": func() { os.Exit(Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) },
	})
}

// Each script runs the tool as a user does: its commands, what they print, their
// exit status.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           "../../../testdata/script",
		UpdateScripts: langtest.Updating(),
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status": status,
			"mode":   mode,
		},
		Condition: func(cond string) (bool, error) {
			if cond == "root" {
				return os.Getuid() == 0, nil
			}
			return false, fmt.Errorf("there is no condition %s", cond)
		},
	})
}

// status runs the tool and compares its exit status: status 1 lint yard.rig.
// Standard output and error are then those of the run.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 {
		ts.Fatalf("usage: status N [ARGUMENT...]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec("fairlead", args[1:]...)
	got := 0
	if err != nil {
		_, code, _ := strings.Cut(err.Error(), "exit status ")
		got, err = strconv.Atoi(code)
		ts.Check(err)
	}
	if got != want {
		ts.Fatalf("exit status %d, not %d\n%s%s", got, want, ts.ReadFile("stdout"), ts.ReadFile("stderr"))
	}
}

// mode compares the permissions of a file: mode 640 yard.rig.
func mode(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: mode OCTAL FILE")
	}
	info, err := os.Stat(ts.MkAbs(args[1]))
	ts.Check(err)
	if got := fmt.Sprintf("%o", info.Mode().Perm()); got != args[0] {
		ts.Fatalf("%s has mode %s, not %s", args[1], got, args[0])
	}
}

func TestHintNamesWhatIsNear(t *testing.T) {
	known := []string{"no-capture", "jammed"}
	assert.Equal(t, " (did you mean jammed?)", hint("jamed", known))
	assert.Equal(t, " (did you mean no-capture?)", hint("no-captur", known))
	assert.Empty(t, hint("slack-strand", known))
	assert.Empty(t, hint("", known))
}
