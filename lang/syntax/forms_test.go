package syntax

import (
	"reflect"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestFormWordsAreComplete: a message can only offer words that it knows of, so
// every word of a form after the keyword must be among them.
func TestFormWordsAreComplete(t *testing.T) {
	forms := []any{
		rigForm{}, policyForm{}, useForm{}, joinForm{}, acceptForm{}, ruleForm{}, limitForm{}, unitsForm{},
		includeForm{}, withForm{}, withoutForm{}, advantageForm{}, ratioForm{}, pullForm{}, figureForm{}, loadForm{},
		factorForm{}, travelForm{}, classForm{}, strokeForm{}, lowerForm{}, findingForm{}, heldForm{}, heldAddition{},
	}
	literal := regexp.MustCompile(`'([^']+)'`)
	first := map[string]bool{"with": true, "without": true}
	for _, word := range Statements() {
		first[word] = true
	}
	for _, form := range forms {
		for _, field := range reflect.VisibleFields(reflect.TypeOf(form)) {
			for _, m := range literal.FindAllStringSubmatch(field.Tag.Get("parser"), -1) {
				assert.True(t, first[m[1]] || slices.Contains(formWords, m[1]), "%q of %T", m[1], form)
			}
		}
	}
}

func TestTextsAreUnescaped(t *testing.T) {
	cases := map[string]string{
		`rig r ""`:              "",
		`rig r "a \\" # "b"`:    `a \`,
		`rig r "\"\\\"\\\\"`:    `"\"\\`,
		"rig r \"\\\\n stays\"": `\n stays`,
	}
	for text, want := range cases {
		assert.Equal(t, want, parse(t, text).Statements[0].Body.(*Rig).Title.Value, text)
	}
}
