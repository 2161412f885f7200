package rules

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
	"fairlead/solve/lp"
)

var backupLoaded = &lint.Rule{
	Name:     "backup-loaded",
	Severity: diag.Advice,
	Summary:  "a line that somebody only tends, but that must carry load in the haul; a warning where people hang on the load or stand below it",
	Check:    checkBackupLoaded,
	Latent:   true,
}

// checkBackupLoaded looks, in each haul that raises, at the lines that lead from a load to
// a tender: what grips next to the tender must not be needed for the balance.
func checkBackupLoaded(p *lint.Pass) {
	for _, r := range p.Rig.Ropes {
		for i, n := range r.Nodes {
			if n.Role != model.Tended || r.Broken {
				continue
			}
			if b := tended(r, i); b != nil && b.load != nil {
				b.report(p)
			}
		}
	}
}

// backupLine is the run of a rope that ends at a tender.
type backupLine struct {
	rope *model.Rope
	// tender is the node of that end, grip that next to it which holds the rope, with
	// stroke on its held side.
	tender, grip, stroke int
	load                 *model.Part
}

// tended walks from a tender along the run; nil if people haul on it or nothing grips it.
func tended(r *model.Rope, tender int) *backupLine {
	b := &backupLine{rope: r, tender: tender, grip: -1}
	step := 1
	if before := r.Before(tender); before >= 0 && r.Strokes[before] != model.Slack {
		step = -1
	}
	for i := tender; ; i += step {
		n := r.Nodes[i]
		switch {
		case n.Role == model.Hauled:
			return nil
		case b.grip < 0 && n.Holds != model.NoSide:
			b.grip, b.stroke = i, i
			if step < 0 {
				b.stroke = i - 1
			}
		}
		if n.Part != nil && len(loadsOn(n.Part)) > 0 {
			b.load = loadsOn(n.Part)[0]
		}
		stroke := i
		if step < 0 {
			stroke = i - 1
		}
		if stroke < 0 || stroke >= len(r.Strokes) || r.Strokes[stroke] == model.Slack {
			break
		}
	}
	if b.grip < 0 || b.stroke < 0 || b.stroke >= len(r.Strokes) {
		return nil
	}
	return b
}

// loadsOn gives the load that a part belongs to: itself, or what it hangs on.
func loadsOn(part *model.Part) []*model.Part {
	for q := part; q != nil; q = q.On {
		if q.Kind.IsWeight() {
			return []*model.Part{q}
		}
	}
	return nil
}

// report reports the haul in which the line must carry most.
func (b *backupLine) report(p *lint.Pass) {
	var most *lp.Num
	var in *solve.Phase
	for _, ph := range p.Result.Hauls() {
		if ph.Status != solve.OK {
			continue
		}
		for _, s := range ph.Strands {
			if s.Rope == b.rope && s.Index == b.stroke && s.Known() && s.Low.Sign() > 0 && (most == nil || s.Low.Cmp(*most) > 0) {
				most, in = s.Low, ph
			}
		}
	}
	if most == nil || !b.onlyBacksUp(p) {
		return
	}
	grip, tender := b.rope.Nodes[b.grip], b.rope.Nodes[b.tender]
	d := diag.Diagnostic{
		Place: grip.Place, Subject: b.rope.Line.Name, Also: []string{grip.Part.Name, tender.Part.Name, b.load.Name},
		Message: lint.NameOf(b.rope.Line) + " carries " + p.Force(*most) + p.WithoutFriction() + " at " + lint.NameOf(grip.Part) +
			" while " + lint.NameOf(in.Hauler) + " hauls, though " + lint.NameOf(tender.Part) + " only tends it",
	}
	p.ReportAs(hazard(p, p.Result.Bodies), d)
}

// onlyBacksUp says whether the rig raises its load without the line too: else it is a
// line that hauls. Where that cannot be afforded it may be one.
func (b *backupLine) onlyBacksUp(p *lint.Pass) bool {
	without, ok := p.WithoutRope(b.rope)
	return ok && without.Status == solve.OK
}
