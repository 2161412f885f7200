package reference

import (
	"regexp"
	"strings"
	"sync"
)

// Word gives what the manual says of one word of the notation, such as a statement,
// a clause or "on", as Markdown: the form of its statement first, then the lists that
// explain words, else what the tables say of how it is used. ok is false if nothing is
// said of it.
func Word(word string) (markdown string, ok bool) {
	said := words()[word]
	if len(said) == 0 {
		for _, r := range Rows(word + " ") {
			said = append(said, "`"+r[0]+"`: "+r[1])
		}
	}
	return strings.Join(said, "\n\n"), len(said) > 0
}

// Rows gives the rows of the manual's tables whose first cell is a piece of notation
// that begins with some words, "expect load": that piece, and what the next cell says
// of it.
func Rows(begins string) [][2]string {
	var list [][2]string
	for _, r := range rows() {
		if r[0] == begins || strings.HasPrefix(r[0], strings.TrimSuffix(begins, " ")+" ") {
			list = append(list, r)
		}
	}
	return list
}

var (
	// explained is an item of a list that explains words: "- **mass, weight** (load): …".
	explained = regexp.MustCompile(`(?ms)^- \*\*([^*\n]+)\*\*( \([^)\n]*\))?:(.*?)(?:\n\n|\n- |\z)`)
	form      = regexp.MustCompile(`^([a-z]+) \S`)
	tableRow  = regexp.MustCompile("(?m)^\\| `([^`\n]+)`[^|\n]*\\| ([^|\n]*) \\|")
	pageLink  = regexp.MustCompile(`\[([^\]]*)\]\([^)]*\)`)
)

// words has what is said of each word.
var words = sync.OnceValue(func() map[string][]string {
	said := map[string][]string{}
	for _, line := range forms() {
		if m := form.FindStringSubmatch(line); m != nil {
			said[m[1]] = append(said[m[1]], "`"+line+"`")
		}
	}
	for _, p := range Pages() {
		text := p.Text
		for {
			m := explained.FindStringSubmatchIndex(text)
			if m == nil {
				break
			}
			about := ""
			if m[4] >= 0 {
				about = strings.Trim(text[m[4]:m[5]], " ()") + ": "
			}
			sentence := about + plain(text[m[6]:m[7]])
			for word := range strings.SplitSeq(text[m[2]:m[3]], ", ") {
				said[word] = append(said[word], sentence)
			}
			text = text[m[7]:] // the next item begins with the line end that closed this one
		}
	}
	return said
})

// forms lists the lines that show the form of each statement.
func forms() []string {
	_, rest, _ := strings.Cut(read("07-grammar.md"), "## Statements\n\n```text\n")
	block, _, _ := strings.Cut(rest, "\n```")
	var lines []string
	for line := range strings.SplitSeq(block, "\n") {
		before, _, _ := strings.Cut(line, "   ") // what stands apart is a remark
		lines = append(lines, before)
	}
	return lines
}

// rows are all rows of all tables that begin with a piece of notation.
var rows = sync.OnceValue(func() [][2]string {
	var list [][2]string
	for _, p := range Pages() {
		for _, m := range tableRow.FindAllStringSubmatch(p.Text, -1) {
			list = append(list, [2]string{m[1], pageLink.ReplaceAllString(m[2], "$1")})
		}
	}
	return list
})

// plain sets the lines of a paragraph one behind the other, and links as their words.
func plain(text string) string {
	return pageLink.ReplaceAllString(strings.Join(strings.Fields(text), " "), "$1")
}
