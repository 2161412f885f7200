package ide

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/diag"
)

// offered gives the actions at a cursor.
func offered(t *testing.T, d *Document, offset int) []Action {
	t.Helper()
	found, ok := d.Findings(nil)
	require.True(t, ok)
	return d.Actions(span(offset, offset), found.Findings)
}

// take gives the text after the action whose title begins so, and the text selected then.
func take(t *testing.T, d *Document, list []Action, title string) (text, selected string) {
	t.Helper()
	for _, a := range list {
		if strings.HasPrefix(a.Title, title) {
			text = diag.Apply(d.File, a.Edits)
			if a.Select != nil {
				selected = text[a.Select.Start:a.Select.End]
			}
			return text, selected
		}
	}
	var titles []string
	for _, a := range list {
		titles = append(titles, a.Title)
	}
	require.Fail(t, "no such action", "%q among %q", title, titles)
	return "", ""
}

const loose = "anchor  head\nload    litter  mass 180 kg\nhauler  team\npulley  top     on head\nhitch   grab\npulley  runner  on grab\nrope    long\n\n" +
	"reeve long: litter / grab / ‸top \\ runner / team\n"

func TestActionsOfAFinding(t *testing.T) {
	d, places := at(t, loose)
	list := offered(t, d, places[0])
	text, _ := take(t, d, list, "let top hold")
	assert.Contains(t, text, "/ top (holds) \\")
	var why, preferred int
	for _, a := range list {
		if a.Sort == ExplainAction && a.Title == "why: no-capture" {
			why++
		}
		if a.Preferred {
			preferred++
			require.NotNil(t, a.Finding)
		}
	}
	assert.Equal(t, 1, why)
	assert.Equal(t, 1, preferred)
}

func TestAcceptWithAReason(t *testing.T) {
	d, places := at(t, loose)
	text, selected := take(t, d, offered(t, d, places[0]), "accept no-capture at litter because …")
	assert.Equal(t, d.File.Text[:len(d.File.Text)-1]+"\n\naccept no-capture at litter because \"…\"\n", text)
	assert.Equal(t, "…", selected)
	after, _ := at(t, text)
	found, _ := after.Findings(nil)
	for _, f := range found.Findings {
		assert.NotEqual(t, "no-capture", f.Rule)
	}
	d, places = at(t, "# A.\r\nrig a\r\n"+strings.ReplaceAll(loose, "\n", "\r\n")+"\r\nexpect advantage 3:1  # sure\r\n\r\nrig b\r\nanchor c\r\n")
	text, _ = take(t, d, offered(t, d, places[0]), "accept no-capture at litter because …")
	assert.Contains(t, text, "# sure\r\naccept no-capture at litter because \"…\"\r\n\r\nrig b")
}

func TestErrorsOfTheTextAreNotAccepted(t *testing.T) {
	d, places := at(t, "anchor head strength 3 k‸g\naccept no-cap‸ture because \"x\"\nanchor he‸ad\n")
	for _, p := range places {
		for _, a := range offered(t, d, p) {
			assert.NotEqual(t, AcceptAction, a.Sort, a.Title)
		}
	}
	d, places = at(t, "anchor he‸ad\n")
	take(t, d, offered(t, d, places[0]), "accept unused-part at head")
}

func TestAddAMissingPart(t *testing.T) {
	const rig = "anchor head\nload litter\nhauler team\nrope long\n\nreeve long: litter / %s \\ team\nexpect held\n"
	d, places := at(t, strings.Replace(rig, "%s", "to‸p", 1))
	list := offered(t, d, places[0])
	text, _ := take(t, d, list, "add pulley top")
	assert.Equal(t, "anchor head\nload litter\nhauler team\nrope long\npulley  top\n\nreeve long: litter / top \\ team\nexpect held\n", text)
	take(t, d, list, "add hitch top")
	for marked, title := range map[string]string{
		"anchor a\npulley p on he‸ad":                            "add anchor head",
		"anchor a\nload b\nrope r\nreeve r: x‸ / a":              "add load x",
		"anchor a\nload b\nrope r\nreeve r: b / te‸am":           "add hauler team",
		"anchor a\nexpect advantage 3:1 by te‸am":                "add hauler team",
		"anchor a\nfocal f\nleg l from tr‸ee to f":               "add anchor tree",
		"anchor a\nleg l from a to mas‸ter angle 30 deg\n":       "add focal master",
		"rig x\nanchor b\nrig a\n# only a line\nreeve r: y‸ / z": "add load y",
	} {
		d, places = at(t, marked)
		text, _ = take(t, d, offered(t, d, places[0]), title)
		after, _ := at(t, text)
		for _, p := range after.Problems {
			assert.False(t, p.Rule == "unknown-part" && p.Subject == strings.Fields(title)[2], marked)
		}
	}
}

func TestTurnALineRound(t *testing.T) {
	d, places := at(t, "anchor head\nload litter\nhauler team\npulley top on head\nhitch grab\nrope long\nreeve lo‸ng: litter / grab / top (holds) \\ team ~ tail\n")
	list := offered(t, d, places[0])
	text, _ := take(t, d, list, "write long from its other end; grab and top then hold the other way")
	assert.Contains(t, text, "reeve long: tail ~ team / top (holds) \\ grab \\ litter\n")
	d, places = at(t, text[:strings.Index(text, "long: ")]+"‸"+text[strings.Index(text, "long: "):])
	again, _ := take(t, d, offered(t, d, places[0]), "write long from its other end")
	assert.Contains(t, again, "reeve long: litter / grab / top (holds) \\ team ~ tail\n")
	d, places = at(t, "reeve lo‸ng: a / b \\ c / loop\n")
	for _, a := range offered(t, d, places[0]) {
		assert.NotEqual(t, RewriteAction, a.Sort)
	}
}

func TestActionsInNotes(t *testing.T) {
	quoted := "> " + strings.ReplaceAll(strings.TrimSuffix(loose, "\n"), "\n", "\n> ")
	d, places := named(t, "notes.md", "A *rig*:\n\n> ```rig\n"+quoted+"\n> ```\n\nEnd.\n")
	list := offered(t, d, places[0])
	text, selected := take(t, d, list, "accept no-capture")
	assert.Contains(t, text, "runner / team\n>\n> accept no-capture at litter because \"…\"\n> ```\n")
	assert.Equal(t, "…", selected)
	text, _ = take(t, d, list, "let top hold")
	assert.Contains(t, text, "> reeve long: litter / grab / top (holds) \\ runner / team\n")
}
