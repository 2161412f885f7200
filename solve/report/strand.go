package report

import (
	"fmt"
	"slices"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
	"fairlead/solve/report/page"
)

// ropes writes ropes with the figures of their strands under the strokes; nil for a
// rig without forces.
func (t *text) ropes(ropes []*model.Rope, p *solve.Phase) {
	var blocks []block
	start := 0
	for _, r := range ropes {
		b := blockOf(r, t.rows(p, r))
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

// rows gives the lines of figures of a rope: the count, which is without friction,
// and the force, with friction where that is known. Without a mass and without
// friction the forces say no more than the count.
func (t *text) rows(p *solve.Phase, r *model.Rope) []row {
	if p == nil || r.Broken {
		return nil
	}
	var rows []row
	if p.Hauler != nil && !p.Pull.IsZero() {
		rows = append(rows, counts(p, r))
	}
	if len(rows) == 0 || t.scale.weighs() || rubbed(p) {
		rows = append(rows, t.forces(p, r))
	}
	return told(append(rows, t.ends(p, r, len(rows) == 1)...))
}

// counts gives the tensions in pulls.
func counts(p *solve.Phase, r *model.Rope) row {
	return rowOf("count", p.Strands, r, func(s solve.Strand) string {
		if s.Count == nil {
			return "unknown"
		}
		return number(*s.Count)
	})
}

// forces gives the tensions in the rig's unit, or in fractions of the load.
func (t *text) forces(p *solve.Phase, r *model.Rope) row {
	label := "of " + t.scale.load
	if t.scale.weighs() {
		label = t.scale.unit
	}
	switch {
	case p.Hauler == nil:
		label += ", held"
	case idealOnly(p):
		label += ", ideal"
	}
	s := t.scale.in(p)
	return rowOf(label, strandsOf(p), r, func(st solve.Strand) string {
		if !st.Known() {
			return "unknown"
		}
		return s.figure(*st.Value)
	})
}

// ends gives two more rows, the least and the most of each tension, where statics
// or an efficiency leaves some open: of the count, if that stands alone.
func (t *text) ends(p *solve.Phase, r *model.Rope, counted bool) []row {
	strands := strandsOf(p)
	if !slices.ContainsFunc(strands, func(s solve.Strand) bool { return s.Rope == r && s.Ranges() }) {
		return nil
	}
	s := t.scale.in(p)
	write := s.figure
	if counted && p.Hauler != nil && !p.Pull.IsZero() {
		write = func(n lp.Num) string { return number(n.Quo(*p.Pull)) }
	}
	end := func(n *lp.Num) string {
		if n == nil {
			return "open"
		}
		return write(*n)
	}
	return []row{
		rowOf("least", strands, r, func(st solve.Strand) string { return end(st.Low) }),
		rowOf("most", strands, r, func(st solve.Strand) string { return end(st.High) }),
	}
}

// rowOf gives a line of figures of a rope, one of each of its strands.
func rowOf(label string, strands []solve.Strand, r *model.Rope, write func(solve.Strand) string) row {
	line := row{label: label, cells: make([]cell, len(r.Strokes))}
	for _, s := range strands {
		if s.Rope == r {
			line.cells[s.Index] = cell{text: write(s), slack: s.Slack}
		}
	}
	return line
}

// told leaves out rows without a single known figure.
func told(rows []row) []row {
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
