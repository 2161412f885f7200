package resolve

import (
	"math/big"
	"slices"
	"strings"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// bond says how the rigs that a join brings together lie to one another.
type bond struct {
	join *model.Join
	// from and to are the names of the two copies, empty for the rig's own parts. The
	// second is turned over if way is -1.
	from, to string
	way      int
	// hauls says that the end of the one is what pulls the load of the other.
	hauls bool
	// fromAt and toAt are where the two ends are in their own rigs; nil if not said.
	fromAt, toAt *big.Rat
	// end is the line of the end that is gone, and stays of what is in its place.
	end, stays *entry
}

// bind notes a bond.
func (j *joining) bind(join *model.Join, end, stays *entry, from string, way int) {
	hauls := j.class(end) == pulled && j.class(stays) != pulled
	b := bond{join: join, from: from, to: stays.copy, way: way, hauls: hauls, end: end, stays: stays, toAt: position(stays)}
	if from == end.copy {
		b.fromAt = position(end)
	}
	j.bonds = append(j.bonds, b)
}

// position gives the middle of where a part is said to be; nil if nothing is said.
func position(l *entry) *big.Rat {
	use := l.clause("at")
	if use == nil || use.Amount == nil || use.Amount.Low == nil {
		return nil
	}
	return use.Amount.Middle()
}

// lie is how one copy lies along the haul line: its positions times way, plus shift.
type lie struct {
	way   int
	shift *big.Rat
	// lost says that it is not known where it lies.
	lost bool
	// by is the join that says so; nil where nothing is changed.
	by *model.Join
}

// settle turns over and moves the copies that are joined, and puts what stays in the
// place of what is gone.
func (j *joining) settle() {
	lies := map[string]*lie{}
	for _, root := range j.roots() {
		if lies[root] == nil {
			j.lay(root, lies)
		}
	}
	j.lines = slices.DeleteFunc(j.lines, func(l *entry) bool {
		p := l.part()
		return p != nil && j.parts[p.Name.Text] == l && j.now(p.Name.Text) != p.Name.Text
	})
	for _, l := range j.lines {
		if of := lies[l.copy]; of != nil {
			j.layDown(l, of)
		}
	}
	for _, b := range j.bonds {
		b.placeTie(lies[b.from])
	}
	if len(j.joined) == 0 {
		return
	}
	for _, l := range j.lines {
		l.rename(j.now)
	}
}

// roots lists the copies from which the others are laid: first those whose loads no
// other one hauls, the rig's own parts before its copies.
func (j *joining) roots() []string {
	hauled := map[string]bool{}
	var all []string
	for _, b := range j.bonds {
		hauled[b.to] = hauled[b.to] || b.hauls
		all = append(all, b.from, b.to)
	}
	rank := func(name string) int {
		switch {
		case hauled[name]:
			return 2
		case name == "":
			return 0
		}
		return 1
	}
	all = uniqueNames(all)
	slices.SortStableFunc(all, func(a, b string) int { return rank(a) - rank(b) })
	return all
}

// lay finds how the copies lie that are joined to one.
func (j *joining) lay(root string, lies map[string]*lie) {
	lies[root] = &lie{way: +1, shift: new(big.Rat)}
	group := []string{root}
	for i := 0; i < len(group); i++ {
		for _, b := range j.bonds {
			b = b.seenFrom(group[i])
			switch {
			case b.from != group[i]:
			case lies[b.to] == nil:
				lies[b.to] = &lie{way: lies[b.from].way * b.way, by: b.join}
				group = append(group, b.to)
			case lies[b.to].way != lies[b.from].way*b.way:
				j.contradict(b.join, "%s has to be turned over by this join, and by another one it must not be", called(b.to))
			}
		}
	}
	placed := false
	for _, name := range group {
		switch of := lies[name]; {
		case of.shift != nil && name != root: // moved with another one
		case placed && j.hasPositions(name):
			of.lost, of.shift = true, new(big.Rat)
			j.shift(name, lies)
			j.reportLost(name, of.by)
		default:
			of.shift = new(big.Rat)
			placed = j.shift(name, lies) || placed
		}
	}
	keepOwn(group, lies)
}

// keepOwn leaves the positions of the rig's own parts as they are written, where these
// are not turned over, and moves the copies instead.
func keepOwn(group []string, lies map[string]*lie) {
	own := lies[""]
	if own == nil || own.way < 0 || own.lost || !slices.Contains(group, "") {
		return
	}
	back := new(big.Rat).Set(own.shift)
	for _, name := range group {
		if of := lies[name]; !of.lost {
			of.shift = new(big.Rat).Sub(of.shift, back)
		}
	}
}

// seenFrom gives a bond with the named copy first, if it is one of the two.
func (b bond) seenFrom(name string) bond {
	if b.to == name {
		b.from, b.to, b.fromAt, b.toAt = b.to, b.from, b.toAt, b.fromAt
	}
	return b
}

// called gives the words for a copy.
func called(copy string) phrase {
	if copy == "" {
		return "this rig's own part"
	}
	return phrase(clipped(copy))
}

// shift moves the copies whose ends have positions so that the ends meet, beginning
// with one that lies. It says whether any of them has a position.
func (j *joining) shift(first string, lies map[string]*lie) (positions bool) {
	group := []string{first}
	for i := 0; i < len(group); i++ {
		positions = positions || j.hasPositions(group[i])
		for _, b := range j.bonds {
			b = b.seenFrom(group[i])
			if b.from != group[i] || b.fromAt == nil || b.toAt == nil {
				continue
			}
			from, to := lies[b.from], lies[b.to]
			meets := from.of(b.fromAt)
			where := new(big.Rat).Sub(meets, (&lie{way: to.way, shift: new(big.Rat)}).of(b.toAt))
			switch {
			case to.shift == nil:
				to.shift, to.lost = where, from.lost
				group = append(group, b.to)
			case to.lost == from.lost && to.shift.Cmp(where) != 0:
				j.contradict(b.join, "%s and %s have positions that do not meet, since %s is joined elsewhere too",
					b.join.A.Text, b.join.B.Text, called(b.to))
			}
		}
	}
	return positions
}

// of gives where something lies that is at a place in its own rig.
func (l *lie) of(at *big.Rat) *big.Rat {
	n := new(big.Rat).Mul(at, big.NewRat(int64(l.way), 1))
	return n.Add(n, l.shift)
}

func (j *joining) hasPositions(copy string) bool {
	return slices.ContainsFunc(j.lines, func(l *entry) bool { return l.copy == copy && l.part() != nil && l.clause("at") != nil })
}

// reportLost says that the positions of a copy are not those in the rig.
func (j *joining) reportLost(copy string, by *model.Join) {
	for _, b := range j.bonds {
		if b.join != by {
			continue
		}
		lacks := b.stays
		if b.fromAt == nil {
			lacks = b.end
		}
		missing := by.B
		if by.A.Text == nameOf(lacks) {
			missing = by.A
		}
		j.report(joinUnplaced, missing.Span, missing.Text,
			"%s has no position, so that it is not known where %s lies; its positions are left out", missing.Text, called(copy))
		return
	}
}

// layDown turns a line over, and moves its position.
func (j *joining) layDown(l *entry, of *lie) {
	if l.copy == "" && of.way < 0 { // the text of an own line says something else now
		l.file = j.turnedOwn(of.by)
	}
	switch body := l.Body.(type) {
	case *syntax.Reeve:
		if of.way < 0 {
			l.setBody(turnedOver(body))
		}
	case *syntax.Part:
		switch {
		case of.lost:
			l.drop(func(word string) bool { return word == "at" })
		case l.clause("at") != nil && (of.way < 0 || of.shift.Sign() != 0):
			l.move(of)
		}
	}
}

// turnedOwn gives the copy of the file in which the rig's own lines are turned over.
func (j *joining) turnedOwn(by *model.Join) *source.File {
	if j.own == nil {
		j.own = j.file.Copy(by.Place)
	}
	return j.own
}

func turnedOver(r *syntax.Reeve) *syntax.Reeve {
	turned := *r
	turned.Strokes = slices.Clone(r.Strokes)
	for i, s := range turned.Strokes {
		turned.Strokes[i].Kind = syntax.StrokeKind(flipped(s.Kind)[0])
	}
	return &turned
}

// move writes a line's position anew.
func (l *entry) move(to *lie) {
	move := func(clauses []syntax.ClauseUse) []syntax.ClauseUse {
		clauses = slices.Clone(clauses)
		for i, use := range clauses {
			if use.Word.Text == "at" && use.Amount != nil && use.Amount.Low != nil {
				clauses[i].Amount = moved(use.Amount, to)
			}
		}
		return clauses
	}
	p := *l.part()
	p.Clauses = move(p.Clauses)
	l.setBody(&p)
	l.changes = slices.Clone(l.changes)
	for i := range l.changes {
		l.changes[i].clauses = move(l.changes[i].clauses)
	}
}

// moved gives a position as it is after turning and moving, in metres.
func moved(a *syntax.Amount, to *lie) *syntax.Amount {
	low, high := to.of(a.Low), to.of(a.High)
	if to.way < 0 {
		low, high = high, low
	}
	now := *a
	now.Quantity = quantity.Quantity{Low: low, High: high, Dimension: quantity.Length, Unit: "m", Written: metres(low)}
	if low.Cmp(high) != 0 {
		now.Written += " to " + metres(high)
	}
	return &now
}

// metres writes a length to the millimetre.
func metres(n *big.Rat) string {
	text := strings.TrimRight(strings.TrimRight(n.FloatString(3), "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

// placeTie gives a tie without a position that of the hauler that was there.
func (b bond) placeTie(from *lie) {
	if !b.hauls || b.fromAt == nil || b.stays.clause("at") != nil || from.lost {
		return
	}
	for _, of := range b.end.clauses() {
		for _, use := range of.clauses {
			if use.Word.Text == "at" {
				use.Amount = moved(use.Amount, from)
				b.stays.changes = append(slices.Clone(b.stays.changes), change{of.file, []syntax.ClauseUse{use}})
			}
		}
	}
}
