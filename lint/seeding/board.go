package seeding

import (
	"math/big"
	"slices"
	"strconv"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/solve"
)

// board is a rig as it stands on the whiteboard.
type board struct {
	file   *load.Loaded
	rig    *model.Rig
	solved *solve.Result
	// reeves are the reeving lines as written, by their places.
	reeves map[source.Span]*syntax.Reeve
}

// newBoard gives the board of a rig by its name; nil if the file has none of it.
func newBoard(f *load.Loaded, rig string) *board {
	i := slices.IndexFunc(f.Model.Rigs, func(r *model.Rig) bool { return r.Name == rig })
	if i < 0 {
		return nil
	}
	b := &board{file: f, rig: f.Model.Rigs[i], reeves: map[source.Span]*syntax.Reeve{}}
	b.solved = solve.Rig(b.rig)
	for _, s := range f.Tree.Statements {
		if reeve, ok := s.Body.(*syntax.Reeve); ok {
			b.reeves[s.Span] = reeve
		}
	}
	return b
}

// seed makes a seed of edits about parts.
func seed(done string, parts []*model.Part, edits ...diag.Edit) Seed {
	s := Seed{Done: done, Edits: edits}
	for _, p := range parts {
		if p != nil {
			s.Parts = append(s.Parts, p.Name)
		}
	}
	return s
}

// replace gives the edit that writes another text at a place.
func replace(at source.Place, text string) diag.Edit { return diag.Edit{Place: at, NewText: text} }

// after gives the edit that writes a text behind a place.
func after(at source.Place, text string) diag.Edit {
	return replace(at.File.At(source.Span{Start: at.Span.End, End: at.Span.End}), text)
}

// before gives the edit that writes a text in front of a place.
func before(at source.Place, text string) diag.Edit {
	return replace(at.File.At(source.Span{Start: at.Span.Start, End: at.Span.Start}), text)
}

// cut gives the edit that takes a span out, with the blanks in front of it.
func (b *board) cut(s source.Span) diag.Edit {
	text := b.file.File.Text
	for s.Start > 0 && (text[s.Start-1] == ' ' || text[s.Start-1] == '\t') {
		s.Start--
	}
	return replace(b.file.File.At(s), "")
}

// clause gives the place of a clause written at a part; ok is false if it is not said or
// comes from a model.
func (b *board) clause(p *model.Part, word string) (at source.Place, ok bool) {
	at, said := p.Values.Places[word]
	return at, said && at.File == b.file.File && p.Place.Span.Contains(at.Span)
}

// set gives the edit that makes a part say a clause so, "strength 1 kN".
func (b *board) set(p *model.Part, word, value string) diag.Edit {
	if at, ok := b.clause(p, word); ok {
		return replace(at, word+" "+value)
	}
	return after(p.Place, "  "+word+" "+value)
}

// drop gives the edit that takes a clause out of a part; ok is false if none is written.
func (b *board) drop(p *model.Part, word string) (edit diag.Edit, ok bool) {
	at, ok := b.clause(p, word)
	if !ok {
		return edit, false
	}
	return b.cut(at.Span), true
}

// nodeClause gives the place of a clause written at a node.
func (b *board) nodeClause(r *model.Rope, node int, word string) (at source.Place, ok bool) {
	reeve := b.reeves[r.Place.Span]
	if reeve == nil || node >= len(reeve.Nodes) {
		return at, false
	}
	for _, c := range reeve.Nodes[node].Clauses {
		if c.Word.Text == word {
			return b.file.File.At(c.Span), true
		}
	}
	return at, false
}

// say gives the edit that writes a clause at a node, in place of one of the same word.
func (b *board) say(r *model.Rope, node int, word, value string) diag.Edit {
	text := strings.TrimSpace(word + " " + value)
	if at, ok := b.nodeClause(r, node, word); ok {
		return replace(at, text)
	}
	n := r.Nodes[node]
	if n.Place.Span.End == n.NamePlace.Span.End {
		return after(n.NamePlace, " ("+text+")")
	}
	inside := n.Place
	inside.Span.End-- // in front of the closing parenthesis
	return after(inside, " "+text)
}

// written says whether a part has a statement of its own.
func written(p *model.Part) bool { return p.Place.Span != p.NamePlace.Span }

// times gives a quantity so many times as large as it is written, in its own unit and
// rounded to three figures.
func times(q *quantity.Quantity, factor float64) string {
	return in(q.Low, factor, q.Unit, q.Dimension)
}

// in gives a figure in SI units, times a factor, in a unit; without a unit in the usual
// one of its dimension.
func in(si *big.Rat, factor float64, unit string, of quantity.Dimension) string {
	for _, u := range quantity.Units() {
		if u.Dimension == of && (u.Word == unit || unit == "") {
			f, _ := new(big.Rat).Quo(si, u.SI).Float64()
			return rounded(f*factor) + " " + u.Word
		}
	}
	f, _ := si.Float64()
	return rounded(f * factor)
}

// rounded writes a number with three figures, without an exponent.
func rounded(f float64) string {
	short, _ := strconv.ParseFloat(strconv.FormatFloat(f, 'g', 3, 64), 64)
	return strconv.FormatFloat(short, 'f', -1, 64)
}

// ends gives the first and the last node of the run that a node is in; open is false in a
// closed line, which has no ends.
func ends(r *model.Rope, node int) (first, last int, open bool) {
	if r.Loop {
		return 0, 0, false
	}
	first, last = node, node
	for first > 0 && r.Strokes[first-1] != model.Slack {
		first--
	}
	for last < len(r.Nodes)-1 && r.Strokes[last] != model.Slack {
		last++
	}
	return first, last, true
}

// between says whether a node lies between two strokes of one run.
func between(r *model.Rope, node int) bool {
	before := r.Before(node)
	return before >= 0 && node < len(r.Strokes) && r.Strokes[before] != model.Slack && r.Strokes[node] != model.Slack
}

// flipped gives the stroke the other way.
func flipped(s model.Stroke) string { return (-s).String() }
