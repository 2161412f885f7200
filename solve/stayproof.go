package solve

import (
	"sync"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// stays remembers what was answered, and what may answer the next question.
type stays struct {
	sync.Mutex
	answers map[question]Stay
	// proofs are tensions that were in balance, the one that served last first.
	proofs []*proof
}

// proof is tensions that keep the rig once something is lost.
type proof struct {
	forces strandForces
	// busy says what carries something then; nil unless the same tensions keep the whole
	// rig too, so that nothing else need be asked for.
	busy *busyness
}

// question is what is lost, and whether people hold on: all of them, or one whose ends
// are tied off.
type question struct {
	lost    Lost
	hauling bool
	tied    *model.Part
}

// maxProofs bounds how many tensions are tried before a program is solved: rigs
// have one or two ropes that take over, seldom more.
const maxProofs = 6

// learn takes the tensions of the phase with hands off as a proof.
func (s *stays) learn(hold *Phase) {
	if hold == nil || hold.Status != OK {
		return
	}
	forces := hold.program.network.strandForces(func(piece int) lp.Num { return hold.tension[piece] })
	var busy *busyness
	if len(hold.Sagging) == 0 { // else a weight was left out
		busy = newBusyness(hold.program.layout, forces)
	}
	s.add(&proof{forces, busy})
}

func (s *stays) add(p *proof) {
	if len(s.proofs) < maxProofs {
		s.proofs = append(s.proofs, nil)
	}
	copy(s.proofs[1:], s.proofs)
	s.proofs[0] = p
}

// prove gives tensions known from another question that are in balance here too: most
// parts carry nothing when hands are off, and losing one changes nothing. Nil if none are.
func (s *stays) prove(n *network, weight []lp.Num) strandForces {
	for i, p := range s.proofs {
		if n.balanced(weight, p.forces) {
			copy(s.proofs[1:i+1], s.proofs[:i])
			s.proofs[0] = p
			return p.forces
		}
	}
	return nil
}

// unchanged gives tensions that keep the whole rig, and in which nothing that is lost
// carries anything: they keep it without that too. Nil if none are known.
func (s *stays) unchanged(ask question) strandForces {
	if ask.hauling || ask.tied != nil {
		return nil
	}
	for _, p := range s.proofs {
		if p.busy.idle(ask.lost) {
			return p.forces
		}
	}
	return nil
}

// strandForces are the tensions of the strokes of each rope; nil where nothing is
// said.
type strandForces map[*model.Rope][]*lp.Num

func (n *network) strandForces(tension func(piece int) lp.Num) strandForces {
	forces := strandForces{}
	for r, places := range n.strands {
		list := make([]*lp.Num, len(places))
		for i, at := range places {
			if at.piece >= 0 {
				t := tension(at.piece)
				list[i] = &t
			}
		}
		forces[r] = list
	}
	return forces
}

// along gives the one tension that is known along a piece, 0 if none is; false if
// they differ.
func (f strandForces) along(p *piece) (tension lp.Num, same bool) {
	var found *lp.Num
	for _, k := range p.links {
		for _, stroke := range k.strokes {
			switch t := f[p.rope][stroke]; {
			case t == nil:
			case found == nil:
				found = t
			case t.Cmp(*found) != 0:
				return lp.Num{}, false
			}
		}
	}
	if found == nil {
		return lp.Num{}, true
	}
	return *found, true
}

// balanced says whether tensions carry every weight of a network, slack rope left
// out, and ask no grip to push.
func (n *network) balanced(weight []lp.Num, forces strandForces) bool {
	tension, up := make([]lp.Num, len(n.pieces)), make([]lp.Num, len(weight))
	for i, p := range n.pieces {
		if p.opens() || p.fresh() {
			continue
		}
		t, same := forces.along(p)
		if !same {
			return false
		}
		if t.Sign() == 0 {
			continue
		}
		tension[i] = t
		for _, k := range p.links {
			for _, at := range k.form {
				up[at.body] = up[at.body].Sub(at.factor.Mul(t))
			}
		}
	}
	for i := range weight {
		if up[i].Cmp(weight[i]) != 0 {
			return false
		}
	}
	beside := func(piece int) lp.Num {
		if piece < 0 {
			return lp.Num{}
		}
		return tension[piece]
	}
	for _, g := range n.grips {
		if beside(g.held()).Cmp(beside(g.other())) < 0 {
			return false
		}
	}
	return true
}

// allows says whether the ropes, read in some way, let a motion go on for ever: the
// bodies' first and then the slip of each grip.
func (n *network) allows(motion []lp.Num, how reading) bool {
	slip := func(b boundary) lp.Num {
		if b.cut != grip {
			return lp.Num{}
		}
		return motion[len(n.bodies)+b.grip]
	}
	for _, p := range n.pieces {
		if p.opens() {
			continue
		}
		growth := slip(p.start).Sub(slip(p.end))
		for _, k := range p.links {
			d := lp.Num{}
			for _, at := range k.form {
				d = d.Add(at.factor.Mul(motion[at.body]))
			}
			if how.spans(p.rope, k) {
				d = d.Abs()
			}
			growth = growth.Add(d)
		}
		if growth.Sign() > 0 {
			return false
		}
	}
	return true
}
