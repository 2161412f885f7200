package report

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/report/page"
)

// lowering says for each hauler what happens when rope is given out.
func lowering(res *solve.Result, s scale) []fact {
	var all []fact
	for _, p := range res.Lowers {
		hand, who := "the hand", ""
		if len(res.Lowers) > 1 {
			hand = page.Clean(p.Hauler.Name)
			who = " by " + hand
		}
		switch {
		case p.Status == solve.StaysUp && len(p.Holding) > 0:
			all = append(all, fact{label: "lowering", text: "not under load" + who + ": " + partList(p.Holding) +
				" " + agreeing(p.Holding, "holds", "hold")})
		case p.Status == solve.StaysUp && len(res.Lowers) > 1 && ropesHold(p):
			all = append(all, fact{label: "lowering", text: "not under load" + who + " alone"})
		case p.Status == solve.Lowers:
			all = append(all, fact{label: "lowering", text: hand + " holds " + handForce(p, s)})
		}
	}
	return all
}

// ropesHold says whether a rope carries something in a phase: the load is not kept by the
// slope alone.
func ropesHold(p *solve.Phase) bool {
	return slices.ContainsFunc(p.Strands, func(s solve.Strand) bool { return s.Value != nil && s.Value.Sign() > 0 })
}

// handForce says what hands hold while the load comes down. Friction helps them, so
// that without it they hold the most.
func handForce(p *solve.Phase, s scale) string {
	force := s.in(p).sayForce(pullOf(p))
	if idealOnly(p) {
		return "at most " + force + ": friction is unknown"
	}
	return force
}

func partList(parts []*model.Part) string {
	var names []string
	for _, p := range parts {
		names = append(names, page.Clean(p.Name))
	}
	return page.List(names)
}

func agreeing(parts []*model.Part, one, many string) string {
	if len(parts) == 1 {
		return one
	}
	return many
}
