package lint

import (
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/solve"
)

// rank orders the answers of a test from the weakest to the strongest.
var rank = map[solve.Answer]int{solve.Down: 0, solve.Jams: 1, solve.Caught: 2, solve.Held: 3}

// Weaker says whether one answer is weaker than another: falls before jams before
// caught before held.
func Weaker(a, b solve.Answer) bool { return rank[a] < rank[b] }

// Stops says whether a load stops by the ropes alone, held or caught. One that
// drops until parts jam counts as falling.
func Stops(a solve.Answer) bool { return !Weaker(a, solve.Caught) }

// Haul gives the haul of the same hauler in a trial; nil if there is none.
func (t *Trial) Haul(hauler *model.Part) *solve.Phase {
	for _, ph := range t.Result.Hauls() {
		if ph.Hauler.Name == hauler.Name {
			return ph
		}
	}
	return nil
}

// Trouble says in a clause what a rig does instead of its job: "litter falls
// while team hauls".
func (p *Pass) Trouble() string {
	main := p.Result.Main()
	if main == nil {
		return ""
	}
	who := NameOf(main.Hauler)
	switch p.Result.Status {
	case solve.Falls:
		down := Moving(main.Ray, -1)
		verb := " falls"
		if Several(down) {
			verb = " fall"
		}
		return Bodies(down) + verb + " while " + who + " hauls"
	case solve.RunsUp:
		up := Moving(main.Ray, +1)
		verb := " runs"
		if Several(up) {
			verb = " run"
		}
		return Bodies(up) + verb + " away upward while " + who + " hauls"
	case solve.Jammed:
		return who + " cannot move the rope"
	case solve.RaisesNothing:
		return who + " raises nothing"
	}
	return ""
}

// Moving gives the bodies that move one way along a ray, +1 up or -1 down, or
// either way with 0. Bodies with a load come alone if there are any.
func Moving(ray []solve.Motion, way int) []*solve.Body {
	var loaded, bare []*solve.Body
	for _, m := range ray {
		sign := m.Rise.Sign()
		switch {
		case sign == 0 || way != 0 && sign != way:
		case len(m.Body.Loads) > 0:
			loaded = append(loaded, m.Body)
		default:
			bare = append(bare, m.Body)
		}
	}
	if len(loaded) > 0 {
		return loaded
	}
	return bare
}

// OnRope gives the first place at which a rope touches a part, or the part's name
// in its statement if none does.
func (p *Pass) OnRope(part *model.Part) source.Place {
	for _, r := range p.Rig.Ropes {
		for _, n := range r.Nodes {
			if n.Part == part {
				return n.NamePlace
			}
		}
	}
	return part.NamePlace
}
