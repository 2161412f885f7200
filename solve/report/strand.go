package report

import (
	"fmt"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
	"fairlead/solve/report/page"
)

// ropes writes each rope with the figures of its strands under the strokes.
func (t *text) ropes() {
	var blocks []block
	start := 0
	for _, r := range t.res.Rig.Ropes {
		b := blockOf(r, t.rows(r))
		for _, label := range b.labels() {
			start = max(start, margin+page.Width(label)+3)
		}
		blocks = append(blocks, b)
	}
	for _, b := range blocks {
		fmt.Fprintln(t.out)
		for _, l := range b.lines(start, page.Columns) {
			t.line(l)
		}
	}
}

// rows gives the lines of figures of a rope: for one hauler the count and the
// force, for several the force with each; held forces where nobody's haul has a
// balance.
func (t *text) rows(r *model.Rope) []row {
	var rows []row
	var solved []*solve.Phase
	for _, p := range t.res.Hauls() {
		if p.Solved() {
			solved = append(solved, p)
		}
	}
	switch {
	case r.Broken:
		return nil
	case len(solved) == 0:
		if hold := t.res.Hold(); hold != nil && hold.Status == solve.OK {
			rows = append(rows, t.row(t.unit()+", held", hold, r, t.scale.figure))
		}
	case len(solved) == 1:
		p := solved[0]
		if same := !t.scale.weighs() && p.Pull.Cmp(lp.Int(1)) == 0; !same && !p.Pull.IsZero() {
			rows = append(rows, t.row("count", p, r, func(n lp.Num) string { return number(n.Quo(*p.Pull)) }))
		}
		rows = append(rows, t.row(t.unit(), p, r, t.scale.figure))
	default:
		for _, p := range solved {
			rows = append(rows, t.row(page.Clean(p.Hauler.Name)+", "+t.unit(), p, r, t.scale.figure))
		}
	}
	return known(rows)
}

// unit is the label of a row of forces.
func (t *text) unit() string {
	if t.scale.weighs() {
		return t.scale.unit
	}
	return "of " + t.scale.load
}

func (t *text) row(label string, p *solve.Phase, r *model.Rope, write func(lp.Num) string) row {
	line := row{label: label, cells: make([]cell, len(r.Strokes))}
	for _, s := range p.Strands {
		if s.Rope == r {
			line.cells[s.Index] = cell{text: span(s.Force, write), slack: s.Slack}
		}
	}
	return line
}

// known leaves out rows without a single known figure.
func known(rows []row) []row {
	var kept []row
	for _, r := range rows {
		for _, c := range r.cells {
			if c.text != "unknown" && c.text != "" {
				kept = append(kept, r)
				break
			}
		}
	}
	return kept
}
