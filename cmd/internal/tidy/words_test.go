package tidy

import (
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

// strays are words that stand in no file: places on one machine, numbers that only
// a tracker explains, notes to oneself.
var strays = map[string]*regexp.Regexp{
	"a path of one machine": regexp.MustCompile("(?:^|[\\s\"'`(=])/(?:home|root|work|mnt|Users)/"),
	"a tracker's number":    regexp.MustCompile(`(?i)\b(?:issue|ticket|bug|milestone) #?[0-9]+`),
	"an unfinished note":    regexp.MustCompile(`\b(?:TO` + `DO|FIX` + `ME|XX` + `X|HA` + `CK)\b`),
	"a mail address":        regexp.MustCompile(`\b[\w.]+@[\w-]+\.[a-z]{2,}\b`),
}

// page finds the names of Markdown files, with the patterns and the placeholders
// of such names, which pattern finds.
var (
	page    = regexp.MustCompile(`[\w./%*-]*[\w*-]\.md\b`)
	pattern = regexp.MustCompile(`[%*]|\bNAME\b`)
)

// texts lists the files that people wrote, each with its text.
func texts(t *testing.T) map[string]string {
	t.Helper()
	list := map[string]string{}
	for _, name := range files(t) {
		if text := read(t, name); utf8.ValidString(text) && name != "go.sum" && !strings.Contains(name, "testdata/fuzz/") {
			list[name] = text
		}
	}
	return list
}

func TestNoStrayWords(t *testing.T) {
	for name, text := range texts(t) {
		for what, stray := range strays {
			assert.Empty(t, stray.FindAllString(text, -1), "%s: %s", name, what)
		}
	}
}

// A page that is mentioned must be there for the reader to open. Tests invent documents.
func TestMentionedPagesExist(t *testing.T) {
	for name, text := range texts(t) {
		if path.Dir(name) == "cmd/internal/tidy" || strings.HasSuffix(name, ".txtar") || strings.HasSuffix(name, "_test.go") {
			continue
		}
		for _, mentioned := range page.FindAllString(text, -1) {
			assert.True(t, pattern.MatchString(mentioned) || exists(path.Dir(name), mentioned), "%s mentions %s", name, mentioned)
		}
	}
}

// exists says whether a page stands beside the file that mentions it, or at the
// path from the top.
func exists(folder, mentioned string) bool {
	return slices.ContainsFunc([]string{folder, "."}, func(from string) bool {
		_, err := os.Stat(filepath.Join(root, from, mentioned))
		return err == nil
	})
}
