package cli

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// faulty has a fault of each sort: of the text, of a name, of the rig with a fix.
const faulty = `anchor head
load   litter
hauler team
pulley top on head
hitch  grab
pulley runner on grab
pully  odd on hed
rope   long
reeve long: litter / top (holds) \ grab \ runner / team
rope   spare
reeve spare: litter /nothing
`

// What the commands really print fits the schemas that users get.
func TestOutputsFitTheirSchemas(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "faulty.rig"), []byte(faulty), 0o644))
	mendable := strings.Join(append(strings.Split(faulty, "\n")[:6], strings.Split(faulty, "\n")[7:9]...), "\n")
	require.NoError(t, os.WriteFile(filepath.Join(folder, "mendable.rig"), []byte(mendable), 0o644))
	for _, command := range []string{"lint", "solve", "count"} {
		schema, err := jsonschema.NewCompiler().Compile("../../../lang/reference/schema/" + command + ".schema.json")
		require.NoError(t, err)
		var out, errs bytes.Buffer
		status := Run([]string{command, "--format", "json", "../../../examples", folder}, nil, &out, &errs)
		assert.Equal(t, exitFound, status, errs.String())
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(out.Bytes()))
		require.NoError(t, err)
		require.NoError(t, schema.Validate(value), command)
		if command == "lint" {
			assert.Contains(t, out.String(), `"newText"`, "a finding with a fix is among them")
		}
	}
}

// What the linter prints of claims and of mending fits too.
func TestOutputsOfClaimsAndMendingFitTheirSchemas(t *testing.T) {
	for form, args := range map[string][]string{
		"accepted": {"lint", "--accepted", "--format", "json", "../../../examples"},
		"lint":     {"lint", "--fix", "--format", "json", "-"},
	} {
		schema, err := jsonschema.NewCompiler().Compile("../../../lang/reference/schema/" + form + ".schema.json")
		require.NoError(t, err)
		var out, errs bytes.Buffer
		Run(args, strings.NewReader(faulty), &out, &errs)
		if form == "lint" {
			out = errs // the mended text is on standard output
		}
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(out.Bytes()))
		require.NoError(t, err, out.String())
		require.NoError(t, schema.Validate(value), form)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, os.ErrClosed }

func TestOutputThatCannotBeWritten(t *testing.T) {
	var errs bytes.Buffer
	assert.Equal(t, exitError, Run([]string{"version"}, nil, full{}, &errs))
	assert.Contains(t, errs.String(), "the output could not be written")
}
