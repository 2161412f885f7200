package show

import (
	"fmt"
	"io"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	mark "github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"fairlead/solve/report/page"
)

// Page writes a page of Markdown for reading: its title with a word beside it, its
// headings, and under them paragraphs as wide as the page. Code is left as it is.
func Page(w io.Writer, markdown, beside string, paint page.Paint) error {
	p := &printed{text: text{paint: paint}, source: []byte(markdown), beside: beside}
	p.blocks(goldmark.DefaultParser().Parse(mark.NewReader(p.source)), indent/2)
	return p.write(w)
}

// PlainPage gives a page of Markdown as plain text.
func PlainPage(markdown string) string {
	var b strings.Builder
	_ = Page(&b, markdown, "", page.Paint{}) // a builder takes everything
	return b.String()
}

// printed is a page being written.
type printed struct {
	text
	source []byte
	// beside stands beside the title, which is the first heading.
	beside string
	titled bool
}

// blocks writes the blocks of a page, of a quotation or of an item of a list, from a
// column on, with a blank line between them.
func (p *printed) blocks(parent ast.Node, column int) {
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		if n.PreviousSibling() != nil && n.Kind() != ast.KindListItem {
			p.out.WriteString("\n")
		}
		p.block(n, column)
	}
}

func (p *printed) block(n ast.Node, column int) {
	switch n := n.(type) {
	case *ast.Heading:
		p.heading(p.inline(n))
	case *ast.Paragraph, *ast.TextBlock:
		p.words(p.inline(n), column, page.Plain)
	case *ast.FencedCodeBlock, *ast.CodeBlock, *ast.HTMLBlock:
		p.code(n, column+2)
	case *ast.List:
		p.list(n, column)
	default:
		p.blocks(n, column)
	}
}

// heading writes a heading.
func (p *printed) heading(words string) {
	var l page.Line
	l.Put(0, words, page.Strong)
	if !p.titled {
		l.Put(l.End()+2, p.beside, page.Plain)
	}
	p.titled = true
	fmt.Fprintln(&p.out, l.String(p.paint))
}

// code writes a block of code; what a program printed is wrapped, a rig is not.
func (p *printed) code(n ast.Node, column int) {
	fenced, _ := n.(*ast.FencedCodeBlock)
	output := fenced != nil && string(fenced.Language(p.source)) == "text"
	for i := range n.Lines().Len() {
		at := n.Lines().At(i)
		line := page.Clean(strings.TrimRight(string(at.Value(p.source)), "\r\n"))
		parts := []string{line}
		deeper := column
		if words := strings.TrimLeft(line, " "); output {
			deeper += page.Width(line) - page.Width(words)
			parts = page.Wrap(words, page.Columns-deeper-indent)
		}
		for k, part := range parts {
			var l page.Line
			l.Put(deeper+min(k, 1)*indent, part, page.Plain)
			fmt.Fprintln(&p.out, l.String(p.paint))
		}
	}
}

// list writes the items of a list, each with its mark before its first line.
func (p *printed) list(list *ast.List, column int) {
	number := list.Start
	for n := list.FirstChild(); n != nil; n = n.NextSibling() {
		sign := "-"
		if list.IsOrdered() {
			sign = fmt.Sprintf("%d.", number)
			number++
		}
		inner := column + page.Width(sign) + 1
		item := &printed{text: text{paint: p.paint}, source: p.source, titled: true}
		item.blocks(n, inner)
		lines := strings.SplitAfter(item.out.String(), "\n")
		var l page.Line
		l.Put(column, sign, page.Plain)
		l.Put(inner, strings.TrimLeft(lines[0], " "), page.Plain)
		p.out.WriteString(l.String(p.paint) + strings.Join(lines[1:], ""))
	}
}

// inline gives the words of a block on one line, code in its backquotes and links as
// what they are called.
func (p *printed) inline(block ast.Node) string {
	var b strings.Builder
	_ = ast.Walk(block, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		switch n := n.(type) {
		case *ast.CodeSpan:
			b.WriteString("`")
		case *ast.Text:
			if entering {
				words := n.Segment.Value(p.source)
				if n.Parent().Kind() != ast.KindCodeSpan {
					words = util.UnescapePunctuations(words)
				}
				b.Write(words)
				if n.SoftLineBreak() || n.HardLineBreak() {
					b.WriteString(" ")
				}
			}
		case *ast.AutoLink:
			if entering {
				b.Write(n.Label(p.source))
			}
		}
		return ast.WalkContinue, nil
	}) // the walk has no errors of its own
	return page.Clean(b.String())
}
