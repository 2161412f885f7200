package reference

import (
	"embed"
	"io/fs"
	"strings"
)

//go:embed *.md schema/*.json
var files embed.FS

// Page is one page of the manual.
type Page struct {
	// Name is the page's file, such as "01-reeving.md".
	Name string
	// Title is its first heading.
	Title string
	// Text is the whole page.
	Text string
}

// Pages lists the pages in reading order.
func Pages() []Page {
	names, err := fs.Glob(files, "*.md")
	if err != nil {
		panic(err) // the pattern is bad
	}
	pages := make([]Page, 0, len(names))
	for _, name := range names {
		text := read(name)
		title, _, _ := strings.Cut(strings.TrimPrefix(text, "# "), "\n")
		pages = append(pages, Page{Name: name, Title: title, Text: text})
	}
	return pages
}

// Schema gives the JSON Schema of a machine output: "solve", "count", "lint", or
// "accepted" of lint --accepted; ok is false for any other.
func Schema(output string) (text string, ok bool) {
	b, err := files.ReadFile("schema/" + output + ".schema.json")
	return string(b), err == nil
}

func read(name string) string {
	b, err := files.ReadFile(name)
	if err != nil {
		panic(err) // the name is one that the same files listed
	}
	return string(b)
}
