package rules

import (
	"slices"
	"strconv"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lint"
	"fairlead/solve"
)

// criticals lists the losses each of which alone lets a load fall: those of the fixed
// points first, of which that comes first that carries most, then the others in file
// order. Of a rig that nothing holds with all parts whole there are none. An edge is the
// ground's and is not lost.
func criticals(p *lint.Pass) []solve.Loss {
	if p.Result.Status == solve.Unsolved || !p.Keeps(p.Result.Released) {
		return nil
	}
	var list []solve.Loss
	for _, l := range p.Losses() {
		if l.Answer.WorseThan(solve.Caught) && !p.Keeps(l.Stay) && l.Part.Kind != model.Edge {
			list = append(list, l)
		}
	}
	hold := p.Result.Hold().Parts
	slices.SortStableFunc(list, func(a, b solve.Loss) int {
		if a.Kind == solve.LostAnchor && b.Kind == solve.LostAnchor {
			return hold[b.Part.Index].Most().Cmp(hold[a.Part.Index].Most())
		}
		return isLater(a) - isLater(b)
	})
	return list
}

func isLater(l solve.Loss) int {
	if l.Kind == solve.LostAnchor {
		return 0
	}
	return 1
}

// reportLosses reports some losses that belong together in one finding. Those that the
// author accepts, at their part or at every load that goes down, have one of their own.
func reportLosses(p *lint.Pass, losses []solve.Loss, say func([]solve.Loss) string, related ...diag.Related) {
	var left, accepted []solve.Loss
	for _, l := range losses {
		loads := loadsOf([]solve.Loss{l})
		refused := func(load *model.Part) bool { return !p.Accepts(load) }
		if slices.ContainsFunc(partsOf(l), p.Accepts) || len(loads) > 0 && !slices.ContainsFunc(loads, refused) {
			accepted = append(accepted, l)
		} else {
			left = append(left, l)
		}
	}
	if len(left) > 0 {
		reportTogether(p, left, p.Accepts, diag.Diagnostic{Message: say(left), Related: related})
	}
	if len(accepted) > 0 {
		none := func(*model.Part) bool { return false }
		reportTogether(p, accepted, none, diag.Diagnostic{Message: say(accepted), Related: related})
	}
}

// reportTogether reports losses in one finding, at the first of them. Its subject is a
// load that goes down; claims can name each load and each part that is lost too, unless
// it is barred.
func reportTogether(p *lint.Pass, losses []solve.Loss, barred func(*model.Part) bool, d diag.Diagnostic) {
	d.Place = losses[0].Part.NamePlace
	if rope := losses[0].Rope; rope != nil {
		d.Place = rope.Nodes[losses[0].Node].NamePlace
	}
	parts := loadsOf(losses)
	for _, l := range losses {
		parts = append(parts, partsOf(l)...)
	}
	for _, part := range parts {
		switch {
		case barred(part):
		case d.Subject == "":
			d.Subject = part.Name
		case d.Subject != part.Name && !slices.Contains(d.Also, part.Name):
			d.Also = append(d.Also, part.Name)
		}
	}
	p.ReportAs(hazard(p, sinking(losses)), d)
}

// partsOf lists the parts by whose names a loss may be named.
func partsOf(l solve.Loss) []*model.Part {
	switch {
	case l.Rope == nil:
		return []*model.Part{l.Part}
	case l.Part.Kind.IsWeight():
		return []*model.Part{l.Rope.Line}
	}
	return []*model.Part{l.Rope.Line, l.Part}
}

// sinking lists the bodies that go down by any of the losses, one of each set of loads.
func sinking(losses []solve.Loss) []*solve.Body {
	var list []*solve.Body
	for _, l := range losses {
		for _, b := range l.Sinking {
			if len(b.Loads) > 0 && !slices.ContainsFunc(list, func(o *solve.Body) bool { return slices.Equal(o.Loads, b.Loads) }) {
				list = append(list, b)
			}
		}
	}
	return list
}

// loadsOf lists the loads that go down by any of the losses.
func loadsOf(losses []solve.Loss) []*model.Part {
	var list []*model.Part
	for _, b := range sinking(losses) {
		for _, load := range b.Loads {
			if !slices.Contains(list, load) {
				list = append(list, load)
			}
		}
	}
	return list
}

// mostListed is how many losses a message names before it counts the rest.
const mostListed = 10

// lossWords says what happens by which losses: "litter falls if head, top or long is
// lost". Losses with the same outcome stand together, in the order of the first.
func lossWords(p *lint.Pass, losses []solve.Loss) string {
	var ways []string
	of := map[string][]solve.Loss{}
	for _, l := range losses {
		way := lint.Fall(p.Rig, l.Stay, "")
		if len(of[way]) == 0 {
			ways = append(ways, way)
		}
		of[way] = append(of[way], l)
	}
	words := ""
	for i, way := range ways {
		if i > 0 {
			words += "; "
		}
		words += way + " if " + lint.OrList(lossNames(of[way])) + " is lost"
	}
	return words
}

// lossNames names losses, the first of very many.
func lossNames(losses []solve.Loss) []string {
	var names []string
	for _, l := range losses[:min(len(losses), mostListed)] {
		names = append(names, lint.LostName(l.Lost))
	}
	if more := len(losses) - mostListed; more > 0 {
		names = append(names, "any of "+strconv.Itoa(more)+" more")
	}
	return names
}

// them is the pronoun for what goes down.
func them(losses []solve.Loss) string {
	if len(loadsOf(losses)) > 1 {
		return "them"
	}
	return "it"
}
