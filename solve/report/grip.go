package report

import (
	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// gripping is a one-way grip and what it holds in one phase.
type gripping struct {
	part  *model.Part
	force solve.Force
}

// grips lists the one-way grips of the rig, each part once, in rope order, with
// what each holds while nobody pulls.
func grips(hold *solve.Phase) []gripping {
	var found []gripping
	seen := map[*model.Part]bool{}
	for _, s := range hold.Strands {
		i := s.Rope.After(s.Index)
		if s.Index == 0 {
			found = addGrip(found, seen, hold, s.Rope, 0)
		}
		found = addGrip(found, seen, hold, s.Rope, i)
	}
	return found
}

func addGrip(found []gripping, seen map[*model.Part]bool, p *solve.Phase, r *model.Rope, node int) []gripping {
	n := r.Nodes[node]
	if n.Part == nil || seen[n.Part] {
		return found
	}
	switch n.Role {
	case model.Grip:
		seen[n.Part] = true
		return append(found, gripping{part: n.Part, force: loadOf(p, n.Part).Force})
	case model.Capture:
		seen[n.Part] = true
		return append(found, gripping{part: n.Part, force: captured(p, r, node)})
	}
	return found
}

// captured gives what a capture holds: the tension on its held side less that on
// the other side, which is nothing where the run ends. The range is known where
// only the held side is open.
func captured(p *solve.Phase, r *model.Rope, node int) solve.Force {
	held, other := strandForce(p, r, r.Before(node)), strandForce(p, r, node)
	if r.Nodes[node].Holds == model.LastSide {
		held, other = other, held
	}
	if !held.Known() || !other.Known() {
		return solve.Force{}
	}
	less := func(n lp.Num) *lp.Num {
		n = lp.Max(n.Sub(*other.Value), lp.Num{})
		return &n
	}
	f := solve.Force{Value: less(*held.Value), Low: less(*held.Value), High: less(*held.Value)}
	if other.Ranges() || !held.Ranges() {
		return f
	}
	f.Low, f.High = less(*held.Low), nil
	if held.High != nil {
		f.High = less(*held.High)
	}
	return f
}

// strandForce gives what one stroke carries; exact zero outside the line.
func strandForce(p *solve.Phase, r *model.Rope, stroke int) solve.Force {
	if stroke < 0 || stroke >= len(r.Strokes) {
		return solve.Force{Value: &lp.Num{}, Low: &lp.Num{}, High: &lp.Num{}}
	}
	for _, s := range p.Strands {
		if s.Rope == r && s.Index == stroke {
			return s.Force
		}
	}
	return solve.Force{}
}
