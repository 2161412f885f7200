package report

import (
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/report/page"
)

// atRest says how far friction may shift what the fixed points carry where rope
// stands over a bend: it may hold some of the force back, or wedge it in.
func atRest(res *solve.Result, s scale) []fact {
	var said []string
	for _, ph := range inOrder(res) {
		band := res.Band(ph)
		if !band.Known() {
			continue
		}
		var shifted []string
		for _, p := range res.Rig.Parts {
			wide := band.Parts[p.Index].Force
			if anchors(p) && wide.Ranges() && wider(wide, loadOf(ph, p).Force) {
				rough := s
				rough.rough = true
				shifted = append(shifted, page.Clean(p.Name)+" "+rough.sayForce(wide))
			}
		}
		if len(shifted) > 0 {
			said = append(said, strings.Join(shifted, ", ")+" "+when(res, ph))
		}
	}
	if len(said) == 0 {
		return nil
	}
	return []fact{{label: "rope at rest", text: "friction can shift it: " + strings.Join(said, "; ")}}
}

// wider says whether a force can be more or less than another one.
func wider(a, than solve.Force) bool {
	if !a.Known() || !than.Known() || a.High == nil || than.High == nil {
		return false
	}
	return a.Low.Cmp(*than.Low) < 0 || a.High.Cmp(*than.High) > 0
}

// anchors says whether a part is a fixed point of its own, not one that others say
// everything of.
func anchors(p *model.Part) bool {
	return p.Kind.IsFixed() && p.Kind != model.Focal && p.On == nil
}
