package markdown

import (
	"path"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/text"

	"fairlead/lang/source"
)

// Info is the whole info string of a fenced block that holds notation.
const Info = "rig"

const byteOrderMark = "\uFEFF"

// Is says whether a file of this name is a Markdown document.
func Is(name string) bool {
	switch strings.ToLower(path.Ext(name)) {
	case ".md", ".markdown":
		return true
	}
	return false
}

// HasRig says whether a document holds a rig block. Most hold none, which the letters of
// a fence tell at once.
func HasRig(whole string) bool {
	return (strings.Contains(whole, "```") || strings.Contains(whole, "~~~")) && len(Read(whole).Blocks) > 0
}

// Notes are a document with its rig blocks.
type Notes struct {
	// Whole is the document as it stands.
	Whole string
	// Text is as long as the document; all of it but the inside of the blocks is blank.
	Text   string
	Blocks []Block
}

// Block is the inside of one fenced rig block.
type Block struct {
	// Span is from the start of the line after the opening fence to that of the closing
	// fence, or to the end of the document where none closes it.
	Span source.Span
	// Lines are the lines of notation, each with its line end, without what the document
	// puts before them: the marks of a quote, the indent of a list.
	Lines []source.Span
	// Prefix is what the document puts before a line of the block.
	Prefix string
}

// Read finds the rig blocks of a document.
func Read(whole string) *Notes {
	n := &Notes{Whole: whole}
	// A byte order mark is no blank of Markdown; three blanks before a fence are allowed.
	src := []byte(whole)
	if strings.HasPrefix(whole, byteOrderMark) {
		copy(src, "   ")
	}
	root := goldmark.DefaultParser().Parse(text.NewReader(src))
	// The walk cannot fail: visiting a node gives no error.
	_ = ast.Walk(root, func(node ast.Node, entering bool) (ast.WalkStatus, error) {
		if fence, ok := node.(*ast.FencedCodeBlock); ok && entering && fence.Info != nil &&
			strings.TrimSpace(string(fence.Info.Segment.Value(src))) == Info {
			n.Blocks = append(n.Blocks, n.block(fence))
		}
		return ast.WalkContinue, nil
	})
	n.mask()
	return n
}

// block gives the block of a fence.
func (n *Notes) block(fence *ast.FencedCodeBlock) Block {
	start := n.nextLine(fence.Info.Segment.Stop)
	b := Block{Span: source.Span{Start: start, End: start}, Prefix: n.fencePrefix(fence.Info.Segment.Start)}
	for i := range fence.Lines().Len() {
		at := fence.Lines().At(i)
		line := source.Span{Start: at.Start, End: at.Stop}
		b.Lines = append(b.Lines, line)
		b.Span.End = max(b.Span.End, n.nextLine(n.lastByte(line)))
	}
	for _, line := range b.Lines {
		if strings.TrimSpace(n.Whole[line.Start:line.End]) != "" {
			b.Prefix = strings.TrimPrefix(n.Whole[n.lineStart(line.Start):line.Start], byteOrderMark)
			break
		}
	}
	return b
}

// lastByte gives an offset in the line of a span: a span that ends with its line end
// would otherwise lead to the line after.
func (n *Notes) lastByte(line source.Span) int { return max(line.Start, line.End-1) }

// fencePrefix gives what stands before the lines of a block that has none: the marks
// before its fence, those of a list item as blanks.
func (n *Notes) fencePrefix(info int) string {
	start := n.lineStart(info)
	before, _, _ := strings.Cut(n.Whole[start:info], "`")
	before, _, _ = strings.Cut(before, "~")
	return strings.Map(func(r rune) rune {
		switch r {
		case '>', ' ', '\t':
			return r
		}
		return ' '
	}, before)
}

// lineStart gives the start of the line that holds an offset, nextLine that of the line
// after it.
func (n *Notes) lineStart(offset int) int { return strings.LastIndexByte(n.Whole[:offset], '\n') + 1 }

func (n *Notes) nextLine(offset int) int {
	if i := strings.IndexByte(n.Whole[offset:], '\n'); i >= 0 {
		return offset + i + 1
	}
	return len(n.Whole)
}

// mask blanks the document but for the lines of its blocks. Line ends stay.
func (n *Notes) mask() {
	masked := []byte(n.Whole)
	at := 0
	blank := func(end int) {
		for ; at < end; at++ {
			if masked[at] != '\n' && masked[at] != '\r' {
				masked[at] = ' '
			}
		}
	}
	for _, b := range n.Blocks {
		for _, line := range b.Lines {
			blank(line.Start)
			at = max(at, line.End)
		}
	}
	blank(len(masked))
	n.Text = string(masked)
}
