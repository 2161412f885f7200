package solve

import (
	"math"
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// Pull is what draws a part in one direction.
type Pull struct {
	// By are the lines that do, the parts clipped to it, or what it is itself on.
	By []*model.Part
	// Force is the size of all together; nil where statics leaves it open.
	Force *lp.Num
}

// ThreeWays says whether a part is drawn three ways in a phase: by three forces any two
// of which are so far apart that one does not say of the angle between them, in
// degrees, that they count as one. Apart is the smallest of the three angles.
//
// A rope that bends round the part draws it once, along the resultant. To which side of
// the haul line something leans is mostly not said: that way counts that draws the part
// least apart. ok is false also where the directions are not known.
func (r *Result) ThreeWays(ph *Phase, p *model.Part, one func(degrees lp.Num) bool) (pulls [3]Pull, apart lp.Num, ok bool) {
	if !ph.Solved() || ph.usual == nil {
		return pulls, apart, false
	}
	d := r.drawnIn(ph)
	groups, known := d.groups(p)
	if !known || len(groups) < 2 || d.sides > mostSides {
		return pulls, apart, false
	}
	least := math.Inf(1)
	for sides := range 1 << d.sides {
		if d.leansOver(p, groups, sides) {
			continue
		}
		three, angle := widest(d.vectors(p, d.kept(p, groups, sides), sides))
		if three == nil || one(lp.Approx(angle)) {
			return pulls, apart, false
		}
		if angle < least {
			least = angle
			for i, v := range three {
				pulls[i] = Pull{By: v.by}
				if size := lp.Approx(v.size()); !v.open {
					pulls[i].Force = &size
				}
			}
		}
	}
	if math.IsInf(least, 1) {
		return pulls, apart, false
	}
	return pulls, lp.Approx(least), true
}

// mostSides is of how many forces either side is tried.
const mostSides = 8

// lean is a force at so many radians from up the haul line, to the side that a bit of
// an arrangement of sides says; side -1: it leans to none. Open says that statics leaves
// the force open.
type lean struct {
	force, angle float64
	side         int
	open         bool
}

// group is what draws a part by one line, by one part clipped to it.
type group struct {
	by    *model.Part
	leans []lean
}

// vector is a force across and up the haul line.
type vector struct {
	by         []*model.Part
	across, up float64
	open       bool
}

func (v vector) size() float64 { return math.Hypot(v.across, v.up) }

// vectors gives the forces on a part once the sides are chosen: those in one direction
// together, and that of what the part is on, which balances them.
func (d *drawn) vectors(p *model.Part, groups []group, sides int) []vector {
	var list []vector
	whole := vector{by: []*model.Part{p.On}, up: d.weight(p).Float()}
	most := 0.0
	for _, g := range groups {
		v := g.vector(sides)
		whole.across -= v.across
		whole.up -= v.up
		whole.open = whole.open || v.open
		most = max(most, v.size())
		list = append(list, v)
	}
	if p.On != nil {
		list = append(list, whole)
	}
	list = slices.DeleteFunc(list, func(v vector) bool { return v.size() <= most*nothing })
	var merged []vector
	for _, v := range list {
		i := slices.IndexFunc(merged, func(m vector) bool { return between(m, v) < 1e-6 })
		if i < 0 {
			merged = append(merged, v)
			continue
		}
		merged[i] = vector{slices.Concat(merged[i].by, v.by), merged[i].across + v.across, merged[i].up + v.up, merged[i].open || v.open}
	}
	return merged
}

// nothing is the share of the largest force below which one counts as none.
const nothing = 1e-9

func (g group) vector(sides int) vector {
	v := vector{by: []*model.Part{g.by}}
	for _, l := range g.leans {
		v.up += l.force * math.Cos(l.angle)
		v.across += l.sideways(sides)
		v.open = v.open || l.open
	}
	return v
}

// kept gives the groups with the forces of two that lean to two sides of a part that is
// on nothing: their tensions are open as far as the haul line goes, but across it they
// must be equal. With α and β from the line and F along it to bear, the one has
// F·sin β / sin(α + β), the other F·sin α / sin(α + β).
func (d *drawn) kept(p *model.Part, groups []group, sides int) []group {
	var leaning []int
	along := -d.weight(p).Float()
	for i, g := range groups {
		if len(g.leans) == 1 && g.leans[0].side >= 0 {
			leaning = append(leaning, i)
			continue
		}
		v := g.vector(sides)
		along += v.up
		if v.open || v.across != 0 {
			return groups
		}
	}
	if p.On != nil || len(leaning) != 2 {
		return groups
	}
	first, second := groups[leaning[0]].leans[0], groups[leaning[1]].leans[0]
	if sum := math.Sin(first.angle + second.angle); math.Abs(sum) > nothing {
		groups = slices.Clone(groups)
		groups[leaning[0]].leans = []lean{{math.Abs(along * math.Sin(second.angle) / sum), first.angle, first.side, false}}
		groups[leaning[1]].leans = []lean{{math.Abs(along * math.Sin(first.angle) / sum), second.angle, second.side, false}}
	}
	return groups
}

// sideways is the part of a force across the haul line, right positive.
func (l lean) sideways(sides int) float64 {
	switch {
	case l.side < 0:
		return 0
	case sides>>l.side&1 == 1:
		return -l.force * math.Sin(l.angle)
	}
	return l.force * math.Sin(l.angle)
}

// leansOver says whether all that leans does so to one side of a part that is on nothing
// and so could not stay: no such arrangement is.
func (d *drawn) leansOver(p *model.Part, groups []group, sides int) bool {
	left, right := false, false
	for _, g := range groups {
		for _, l := range g.leans {
			across := l.sideways(sides)
			left, right = left || across < 0, right || across > 0
		}
	}
	return p.On == nil && left != right
}

// widest gives the three forces that are farthest apart, and the smallest angle in
// degrees between two of them; nil without three.
func widest(list []vector) (three []vector, degrees float64) {
	for i := range list {
		for j := range i {
			for k := range j {
				angle := min(between(list[i], list[j]), between(list[j], list[k]), between(list[i], list[k]))
				if three == nil || angle > degrees {
					three, degrees = []vector{list[k], list[j], list[i]}, angle
				}
			}
		}
	}
	return three, degrees
}

// between gives the angle between two forces in degrees.
func between(a, b vector) float64 {
	cross, dot := a.across*b.up-a.up*b.across, a.across*b.across+a.up*b.up
	return math.Abs(math.Atan2(cross, dot)) * 180 / math.Pi
}
