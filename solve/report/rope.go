package report

import (
	"fairlead/lang/model"
	"fairlead/solve/report/page"
)

// margin is where everything under a rig's result begins.
const margin = 2

// row is one line of figures under a rope: one cell for each stroke.
type row struct {
	label string
	cells []cell
}

type cell struct {
	text string
	// slack says that the strand carries nothing.
	slack bool
}

// block is a rope with its rows of figures, still to be laid out.
type block struct {
	name  string
	nodes []string // one more than strokes; the last may be the word "loop"
	// strokes are the strokes' words.
	strokes []string
	rows    []row
}

func blockOf(r *model.Rope, rows []row) block {
	b := block{name: page.Clean(r.Line.Name), rows: rows}
	for _, n := range r.Nodes {
		b.nodes = append(b.nodes, page.Clean(written(n)))
	}
	for _, s := range r.Strokes {
		b.strokes = append(b.strokes, s.String())
	}
	if r.Loop {
		b.nodes = append(b.nodes, "loop")
	}
	return b
}

// written gives the word of a node, of an unknown part too.
func written(n model.Node) string {
	if n.Part == nil && n.Role != model.Loose {
		return n.NamePlace.Text()
	}
	return n.Name()
}

// longestName is how wide a rope's name may be to stand before its line; a longer
// one stands above it.
const longestName = 16

// labels gives the words that stand before the lines of the block.
func (b block) labels() []string {
	var words []string
	if !b.named() {
		words = append(words, b.name)
	}
	for _, r := range b.rows {
		words = append(words, r.label)
	}
	return words
}

// named says whether the name has a line of its own.
func (b block) named() bool { return page.Width(b.name) > longestName }

// lines lays the block out: the rope, and each row with its figures ending
// under their strokes. Where the rope is too long for the page, rope and rows
// go on together below, and the break stands before a stroke. start is the
// column of the first node.
func (b block) lines(start, columns int) []page.Line {
	l := layout{block: b, start: start, columns: columns}
	if b.named() {
		var name page.Line
		name.Put(margin, b.name, page.Plain)
		l.done = append(l.done, name)
	}
	l.open(true)
	l.put(b.nodes[0])
	for i := range b.strokes {
		l.strand(i)
	}
	l.close()
	return l.done
}

// layout is a block being laid out.
type layout struct {
	block
	start, columns int

	rope    page.Line
	figures []page.Line
	// free is the first column that the next figure may take.
	free int
	// fresh says that the rope has nothing on this line yet but, at the block's
	// beginning, its first node.
	fresh bool
	done  []page.Line
}

// open begins a line of the rope and of each row; the first one has the labels.
func (l *layout) open(first bool) {
	l.rope = page.Line{}
	l.figures = make([]page.Line, len(l.rows))
	l.free, l.fresh = l.start, true
	if !first {
		return
	}
	if !l.named() {
		l.rope.Put(margin, l.name, page.Plain)
	}
	for i, r := range l.rows {
		l.figures[i].Put(margin, r.label, page.Plain)
	}
}

func (l *layout) close() {
	l.done = append(append(l.done, l.rope), l.figures...)
}

func (l *layout) put(node string) {
	l.rope.Put(max(l.start, l.rope.End()+2), node, page.Plain)
}

// strand adds stroke i with its figures and the node after it.
func (l *layout) strand(i int) {
	wide := 1
	for _, r := range l.rows {
		wide = max(wide, page.Width(r.cells[i].text))
	}
	usual := max(l.start, l.rope.End()+2)
	column := max(usual, l.free+wide-1)
	if !l.fresh && column+3+page.Width(l.nodes[i+1]) > l.columns {
		l.close()
		l.open(false)
		usual, column = l.start, l.start+wide-1
	} else if !l.fresh {
		// A wide figure pushes its stroke away; the node before stays in the
		// middle between its two strokes.
		l.rope.Shift((column - usual) / 2)
	}
	l.rope.Put(column, l.strokes[i], l.style(i))
	for k, r := range l.rows {
		style := page.Plain
		if r.cells[i].slack {
			style = page.Faint
		}
		l.figures[k].PutEnding(column, r.cells[i].text, style)
	}
	l.free, l.fresh = column+3, false
	l.put(l.nodes[i+1])
}

// style makes a stroke faint where no row has it carry anything.
func (l *layout) style(i int) page.Style {
	for _, r := range l.rows {
		if !r.cells[i].slack {
			return page.Plain
		}
	}
	if len(l.rows) == 0 {
		return page.Plain
	}
	return page.Faint
}
