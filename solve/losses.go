package solve

import "fairlead/solve/lp"

// losses say how tension changes along the ropes of a network while they run.
type losses struct {
	// links has, for each piece, the tension of each link over that of its first.
	links [][]lp.Num
	// grips has, for each group of grips, the factor with which the tension on the
	// side that is not held counts: the efficiency of a capture that slides.
	grips []lp.Num
	// slides marks the groups of grips that hold nothing; nil leaves it to the program.
	slides []bool
}

// holdsNothing says whether a group of grips is known to slide.
func (l *losses) holdsNothing(group int) bool { return l != nil && l.slides != nil && l.slides[group] }

// along gives the tension of a link over that of its piece's first one.
func (l *losses) along(piece, link int) lp.Num {
	if l == nil {
		return lp.Int(1)
	}
	return l.links[piece][link]
}

// past gives the factor of a piece in the row of a grip at its end.
func (l *losses) past(group int, held bool) lp.Num {
	if l == nil || held {
		return lp.Int(1)
	}
	return l.grips[group]
}
