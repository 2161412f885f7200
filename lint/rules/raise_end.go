package rules

import (
	"fmt"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

// ending is what keeps a raise from its height.
type ending int

const (
	noEnd     ending = iota
	atKnot           // a knot is drawn up to a bend
	atBlock          // two blocks are drawn together
	atNoReset        // a stage runs out that cannot be reset, or the load is up
	atNoRoom         // a stage runs out that there is no room to reset
)

// raiseEnd gives the pair of parts that meets before the load is as high as asked, and
// cannot be drawn apart, and what that is; noEnd if none does.
func raiseEnd(p *lint.Pass) (s *solve.Stroke, pair *solve.Pair, how ending) {
	s = strokeOf(p)
	if s == nil || s.Raise == nil || s.Raise.EndedBy == nil {
		return nil, nil, noEnd
	}
	pair = s.Raise.EndedBy
	switch {
	case isFreeKnot(p, pair.Lower) && isBend(p, pair.Upper), isFreeKnot(p, pair.Upper) && isBend(p, pair.Lower):
		return s, pair, atKnot
	case pair.Resettable:
		return s, pair, atNoRoom
	case isBlock(p, pair.Lower) && isBlock(p, pair.Upper):
		return s, pair, atBlock
	}
	return s, pair, atNoReset
}

// isFreeKnot says whether a part is a knot in the rope alone, not one on a load.
func isFreeKnot(p *lint.Pass, part *model.Part) bool {
	body := bodyOf(p.Result, part)
	return part.Kind == model.Knot && (body == nil || len(body.Loads) == 0)
}

// isBend says whether a rope bends round a part.
func isBend(p *lint.Pass, part *model.Part) bool {
	for _, r := range p.Rig.Ropes {
		for _, n := range r.Nodes {
			if n.Part == part && (n.Role == model.Bend || n.Role == model.Capture) {
				return true
			}
		}
	}
	return false
}

// isBlock says whether a rope bends round a part, or round one that it is joined to, and
// none of these is a grip: that would be a tractor.
func isBlock(p *lint.Pass, part *model.Part) bool {
	bends := false
	for _, q := range p.Rig.Parts {
		if q.Root() != part.Root() {
			continue
		}
		if q.Kind.IsGrip() && q.Moves() {
			return false
		}
		bends = bends || isBend(p, q)
	}
	return bends
}

// blockOf gives a part if rope bends round it, else the first that it is joined to of
// which that is so.
func blockOf(p *lint.Pass, part *model.Part) *model.Part {
	if isBend(p, part) {
		return part
	}
	for _, q := range p.Rig.Parts {
		if q.Root() == part.Root() && isBend(p, q) {
			return q
		}
	}
	return part
}

// shortOf says how far a raise comes: "after 4 m of the 10 m that litter is to be raised".
func shortOf(p *lint.Pass, s *solve.Stroke) string {
	return fmt.Sprintf("after %s of the %s that %s is to be raised",
		p.LengthBeside(s.Raise.Reached, s.Raise.Height), p.LengthBeside(s.Raise.Height, s.Raise.Reached), lint.BodyName(s.Load))
}

// endsBy makes the finding about a raise that two parts end.
func endsBy(p *lint.Pass, s *solve.Stroke, pair *solve.Pair, meets, why string) diag.Diagnostic {
	d := meeting(p, s, pair)
	d.Message = meets + " " + shortOf(p, s) + ", " + why
	return d
}
