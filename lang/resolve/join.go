package resolve

import (
	"maps"
	"slices"

	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// join makes one body of the two ends that each "join" names, and turns over and
// moves the rigs that this brings together.
func (x *expansion) join() {
	if len(x.joins) == 0 {
		return
	}
	j := &joining{
		expansion: x, parts: map[string]*entry{}, nodes: map[string][]nodeOf{},
		tie: map[string]bool{}, contradicted: map[*model.Join]bool{},
	}
	for _, l := range x.lines {
		if p := l.part(); p != nil && j.parts[p.Name.Text] == nil {
			j.parts[p.Name.Text] = l
		}
		if r := l.reeve(); r != nil {
			for i, n := range r.Nodes {
				j.nodes[n.Name.Text] = append(j.nodes[n.Name.Text], nodeOf{l, i})
			}
		}
	}
	for _, join := range x.joins {
		if !j.ends(join) {
			x.incomplete = true
		}
	}
	j.settle()
}

// joining is the joins of one rig while they are made.
type joining struct {
	*expansion
	// parts finds the line of each part, nodes where ropes touch it or what it is in the
	// place of.
	parts map[string]*entry
	nodes map[string][]nodeOf
	// tie are the loads that joins made ties.
	tie map[string]bool
	// bonds say how the rigs lie to one another.
	bonds []bond
	// contradicted are the joins that were reported not to go with the others.
	contradicted map[*model.Join]bool
	// own is the copy of the file in which the rig's own lines are turned over.
	own *source.File
}

// nodeOf is a node of a reeving line.
type nodeOf struct {
	line *entry
	node int
}

// class sorts parts by what a join can make of them.
type class int

const (
	fast   class = iota // stays as it is, and a rope can be tied to it
	pulled              // a hauler
	loaded              // a load
	point               // an anchor
	barred              // nothing can be joined to it
)

// ends makes one join; false if that cannot be, which is reported.
func (j *joining) ends(join *model.Join) bool {
	a, known := j.end(join.A)
	b, too := j.end(join.B)
	if !known || !too {
		return false
	}
	classA, classB := j.class(a), j.class(b)
	names := []any{join.A.Text, join.B.Text}
	switch {
	case a == b:
		return j.refuse(join.A, "%s and %s are one part already", names...)
	case classA == barred:
		return j.refuseKind(join.A, a)
	case classB == barred:
		return j.refuseKind(join.B, b)
	case a.copy == b.copy && a.copy == "":
		return j.refuse(join.A, "%s and %s are both written in this rig; tie them in its reeving lines", names...)
	case a.copy == b.copy:
		return j.refuse(join.A, "%s and %s are both of %s; join them in the rig that it copies", append(names, a.copy)...)
	}
	switch {
	case classA == classB && classA != fast:
		return j.merge(join, a, b)
	case classA == pulled && (classB == loaded || j.tie[nameOf(b)]):
		return j.haul(join, a, b)
	case classB == pulled && (classA == loaded || j.tie[nameOf(a)]):
		return j.haul(join, b, a)
	case classA == pulled || classA == loaded:
		return j.tieTo(join, a, b)
	case classB == pulled || classB == loaded:
		return j.tieTo(join, b, a)
	}
	return j.refuse(join.A, "neither %s nor %s is a hauler or a load; clip them to one another with on", names...)
}

// end finds the line of an end, or of what an earlier join put in its place; a hauler
// that hauls no more can be joined to nothing else. A name that no part has is reported
// later, when all names are.
func (j *joining) end(name syntax.Word) (l *entry, ok bool) {
	l = j.parts[name.Text]
	if to := j.now(name.Text); to != name.Text {
		if stays := j.parts[to]; j.class(l) != pulled || j.class(stays) == pulled {
			return stays, true
		}
		return nil, j.refuse(name, "%s is joined to %s already", name.Text, to)
	}
	if l == nil {
		j.unjoined = append(j.unjoined, name)
	}
	return l, l != nil
}

func nameOf(l *entry) string { return l.part().Name.Text }

func (j *joining) class(l *entry) class {
	switch kind := model.Kind(l.part().Kind.Text); kind {
	case model.Hauler:
		return pulled
	case model.Load:
		return loaded
	case model.Anchor:
		return point
	case model.Tender, model.Leg, model.Edge:
		return barred
	default:
		if kind.IsLine() && l.part().On == nil {
			return barred
		}
		return fast
	}
}

func (j *joining) refuseKind(name syntax.Word, l *entry) bool {
	return j.refuse(name, "%s is %s, which is no end; join a hauler, a load or what a rope is tied to",
		name.Text, article(model.Kind(l.part().Kind.Text)))
}

func (j *joining) refuse(at syntax.Word, format string, args ...any) bool {
	j.report(wrongJoin, at.Span, at.Text, format, args...)
	return false
}

// haul makes a tie of the load of one rig and the hauled end of another: the hauler and
// the load are gone.
func (j *joining) haul(join *model.Join, hauler, load *entry) bool {
	if !j.pulls(join, hauler, load) {
		return false
	}
	p := *load.part()
	p.Kind.Text, p.Model = string(model.Knot), nil
	load.setBody(&p)
	load.drop(func(word string) bool { return word != "at" })
	j.tie[nameOf(load)] = true
	j.take(hauler, load)
	j.remains[join] = nameOf(load)
	return true
}

// merge makes one of two haulers, two loads or two anchors: the second stays, with
// what both say.
func (j *joining) merge(join *model.Join, a, b *entry) bool {
	if on := a.part().On; on != nil {
		if b.part().On != nil {
			return j.refuse(join.A, "%s and %s are both on a part, and one of them can only be on one", nameOf(a), nameOf(b))
		}
		p := *b.part()
		p.On = on
		b.setBody(&p)
	}
	if m := a.part().Model; m != nil && (b.part().Model == nil || b.part().Model.Text != m.Text || a.work != b.work) {
		return j.refuse(join.A, "%s is of the model %s, which would be lost: the second end stays, with its own", nameOf(a), m.Text)
	}
	if !j.agree(join, a, b) {
		return false
	}
	j.bind(join, a, b, a.copy, +1)
	j.take(a, b)
	j.remains[join] = nameOf(b)
	return true
}

// agree gives a part the clauses of another one; false if they say two things. A
// position says where the one rig lies to the other, and so may be another one.
func (j *joining) agree(join *model.Join, from, to *entry) bool {
	for _, of := range from.clauses() {
		for _, use := range of.clauses {
			word := use.Word.Text
			old := to.clause(word)
			switch {
			case word == "at":
			case old == nil:
				to.changes = append(slices.Clone(to.changes), change{of.file, []syntax.ClauseUse{use}})
			case old.Amount != nil && use.Amount != nil && !sameAmount(old.Amount, use.Amount):
				return j.refuse(join.A, "%s has %s %s and %s has %s: one part cannot have both; say the same with include … with",
					nameOf(from), word, use.Amount.String(), nameOf(to), old.Amount.String())
			}
		}
	}
	return true
}

func sameAmount(a, b *syntax.Amount) bool {
	if a.Low == nil || b.Low == nil || a.High == nil || b.High == nil {
		return a.Low == b.Low
	}
	return a.Dimension == b.Dimension && a.Low.Cmp(b.Low) == 0 && a.High.Cmp(b.High) == 0
}

// tieTo ties what ends at a hauler or a load to another part; the end is gone.
func (j *joining) tieTo(join *model.Join, end, to *entry) bool {
	if on := end.part().On; on != nil {
		return j.refuse(join.A, "%s is on %s and cannot be joined to %s; clip %s to it instead",
			nameOf(end), on.Text, nameOf(to), on.Text)
	}
	j.bind(join, end, to, end.copy, +1)
	j.take(end, to)
	j.remains[join] = nameOf(to)
	return true
}

// pulls notes how the rig of a load lies to that of the hauler's ropes: if the hauler
// pulls down the line, what is joined there must be raised by going down.
func (j *joining) pulls(join *model.Join, hauler, load *entry) bool {
	name := nameOf(hauler)
	if on := hauler.part().On; on != nil {
		return j.refuse(join.A, "%s is on %s and pulls from there; only a hauler on the ground can be joined to a load", name, on.Text)
	}
	ways := map[string]int{} // by the copy that the rope is of
	for _, at := range j.nodes[name] {
		for _, way := range towards(at.line.reeve(), at.node) {
			if old := ways[at.line.copy]; old != 0 && old != way {
				return j.refuse(join.A, "%s pulls one end up and one end down, and no load can be at both", name)
			}
			ways[at.line.copy] = way
		}
	}
	if len(ways) == 0 {
		return j.refuse(join.A, "%s pulls no rope", name)
	}
	for _, copy := range slices.Sorted(maps.Keys(ways)) {
		j.bind(join, hauler, load, copy, ways[copy])
	}
	return true
}

// towards gives the ways in which the taut strands beside node i lead to it.
func towards(r *syntax.Reeve, i int) []int {
	var ways []int
	if i > 0 && i-1 < len(r.Strokes) && r.Strokes[i-1].Kind != syntax.Slack {
		ways = append(ways, wayOf(r.Strokes[i-1].Kind))
	}
	if i < len(r.Strokes) && i < len(r.Nodes)-1 && r.Strokes[i].Kind != syntax.Slack {
		ways = append(ways, -wayOf(r.Strokes[i].Kind))
	}
	return ways
}

func wayOf(kind syntax.StrokeKind) int { return int(strokeOf(kind)) }

// contradict reports, once, a join that does not go with the others.
func (j *joining) contradict(join *model.Join, format string, args ...any) {
	j.incomplete = true
	if !j.contradicted[join] {
		j.contradicted[join] = true
		j.refuse(join.A, format, args...)
	}
}

// take puts one part in the place of another everywhere.
func (j *joining) take(gone, stays *entry) {
	from, to := nameOf(gone), nameOf(stays)
	j.joined[from] = to
	j.nodes[to] = append(j.nodes[to], j.nodes[from]...)
}
