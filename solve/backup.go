package solve

import (
	"slices"

	"fairlead/lang/model"
)

// Backup is a load with two lines of which either holds it when the other is lost. A
// stage that hauls another one is none: it holds nothing without the line that it hauls.
type Backup struct {
	Load *model.Part
	// Main carries the load while all is there, Second once Main is lost: held, or
	// caught after a drop.
	Main, Second Stretch
}

// Stretch is a part of a rope whose strokes all carry something, from node to node.
type Stretch struct {
	Rope     *model.Rope
	From, To int
}

// Backups gives for each load that has two lines the first two, in file order. A line is
// here what leads from the load to a fixed point, or what people have in hand: a sling
// between two other parts is none. What both hang on in the end is not asked.
func (r *Result) Backups() []Backup {
	var list []Backup
	if r.Status == Unsolved {
		return nil
	}
	mains := r.Released.stretches(r.Rig)
	for _, load := range r.Rig.Parts {
		if !load.Kind.IsWeight() || !load.Moves() {
			continue
		}
		if b := r.backup(load, mains); b != nil {
			list = append(list, *b)
		}
	}
	return list
}

// backup loses each line that carries a load in turn, until another one takes over.
func (r *Result) backup(load *model.Part, mains []Stretch) *Backup {
	for _, main := range mains {
		if !main.leads(load) || !hangsTogether(mains, main, load) {
			continue
		}
		for _, lost := range main.lost() {
			stay := r.After(lost)
			if !stay.takesOver() {
				continue
			}
			seconds := stay.stretches(r.Rig)
			for _, second := range seconds {
				if !second.meets(main) && second.leads(load) && hangsTogether(seconds, second, load) && r.holdsWithout(second) {
					return &Backup{Load: load, Main: main, Second: second}
				}
			}
		}
	}
	return nil
}

// takesOver says whether after a loss forces hold the loads, perhaps after a drop.
func (s Stay) takesOver() bool {
	return s.forces != nil && (s.LoadsStay() || s.Answer == Caught)
}

// holdsWithout says whether the loads stay when a stretch is taken away.
func (r *Result) holdsWithout(s Stretch) bool {
	return slices.ContainsFunc(s.lost(), func(l Lost) bool { return r.After(l).takesOver() })
}

// stretches lists what carries something of each rope, in file order.
func (s Stay) stretches(rig *model.Rig) []Stretch {
	var list []Stretch
	for _, r := range rig.Ropes {
		list = append(list, s.stretchesOf(r)...)
	}
	return list
}

// stretchesOf lists what carries something of one rope. Strokes between grips that count
// as one belong to it.
func (s Stay) stretchesOf(r *model.Rope) []Stretch {
	var list []Stretch
	open := false
	for i := range r.Strokes {
		carries := s.Carries(r, i) || open && s.between(r, i)
		switch {
		case carries && open:
			list[len(list)-1].To = r.After(i)
		case carries:
			list = append(list, Stretch{Rope: r, From: i, To: r.After(i)})
		}
		open = carries
	}
	return list
}

// nodes gives the nodes of a stretch; that of a closed line may end at its first one.
func (s Stretch) nodes() []model.Node {
	if s.To < s.From {
		return append(append([]model.Node{}, s.Rope.Nodes[s.From:]...), s.Rope.Nodes[s.To])
	}
	return s.Rope.Nodes[s.From : s.To+1]
}

// has says whether a node is in the stretch.
func (s Stretch) has(node int) bool {
	if s.To < s.From {
		return node >= s.From || node == s.To
	}
	return s.From <= node && node <= s.To
}

// meets says whether two stretches have rope in common.
func (s Stretch) meets(o Stretch) bool {
	if s.Rope != o.Rope {
		return false
	}
	return s.To < s.From || o.To < o.From || s.From < o.To && o.From < s.To
}

// leads says whether a stretch goes from a load to a fixed point, or is of a run that
// people hold or that ends loose.
func (s Stretch) leads(load *model.Part) bool {
	atLoad, atFixed := false, false
	for _, n := range s.nodes() {
		if n.Part != nil {
			atLoad = atLoad || n.Part.Root() == load.Root()
			atFixed = atFixed || n.Part.Fixed()
		}
	}
	return atLoad && atFixed || s.inHand()
}

// inHand says whether the run of a stretch ends at people, or loose.
func (s Stretch) inHand() bool {
	r := s.Rope
	if r.Loop {
		return false
	}
	first, last := s.From, s.To
	for first > 0 && r.Strokes[first-1] != model.Slack {
		first--
	}
	for last < len(r.Strokes) && r.Strokes[last] != model.Slack {
		last++
	}
	return runsOut(r.Nodes[first]) || runsOut(r.Nodes[last])
}

// lost lists what takes a stretch away: its line, or one of its ties where the same line
// does something else too.
func (s Stretch) lost() []Lost {
	list := []Lost{{Kind: LostLine, Part: s.Rope.Line}}
	for i := s.From; i <= s.To; i++ {
		n := s.Rope.Nodes[i]
		switch {
		case n.Part == nil:
		case n.Part.Kind == model.Knot:
			list = append(list, Lost{Kind: LostKnot, Part: n.Part})
		case n.Role == model.Tied && !holdsRope(s.Rope, i):
			list = append(list, Lost{Kind: LostTie, Part: n.Part, Rope: s.Rope, Node: i})
		}
	}
	return list
}

// hangsTogether says whether a load hangs on a stretch, perhaps by others of the list:
// stretches are joined at bodies that move.
func hangsTogether(list []Stretch, from Stretch, load *model.Part) bool {
	reached, joined := map[*model.Part]bool{}, make([]bool, len(list))
	touch := func(s Stretch) {
		for _, n := range s.nodes() {
			if n.Part != nil && n.Part.Moves() {
				reached[n.Part.Root()] = true
			}
		}
	}
	touch(from)
	for more := true; more; {
		more = false
		for i, s := range list {
			if joined[i] || !s.touches(reached) {
				continue
			}
			joined[i], more = true, true
			touch(s)
		}
	}
	return reached[load.Root()]
}

func (s Stretch) touches(bodies map[*model.Part]bool) bool {
	for _, n := range s.nodes() {
		if n.Part != nil && bodies[n.Part.Root()] {
			return true
		}
	}
	return false
}
