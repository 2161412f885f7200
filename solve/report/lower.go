package report

import (
	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/report/page"
)

// lowering says for each hauler what happens when rope is given out.
func lowering(res *solve.Result, s scale) []fact {
	var all []fact
	for _, p := range res.Lowers {
		words := lowered(p, s)
		if words == "" {
			continue
		}
		if len(res.Lowers) > 1 {
			words = "with " + page.Clean(p.Hauler.Name) + ": " + words
		}
		all = append(all, fact{label: "lowering", text: words})
	}
	return all
}

func lowered(p *solve.Phase, s scale) string {
	switch p.Status {
	case solve.Lowers:
		s = s.in(p)
		if idealOnly(p) {
			return "the hand holds at most " + s.sayForce(pullOf(p)) + ": friction is unknown"
		}
		return "the hand holds " + s.sayForce(pullOf(p))
	case solve.StaysUp:
		if len(p.Holding) == 0 {
			return ""
		}
		return "not under load: " + partList(p.Holding) + " " + agreeing(p.Holding, "holds", "hold")
	}
	return ""
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
