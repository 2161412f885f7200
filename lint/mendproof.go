package lint

import (
	"cmp"
	"maps"
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/load"
)

// examine looks at a file with all rules.
func (m *mender) examine(f *load.Loaded) *examined {
	return &examined{f, Examine([]*load.Loaded{f}, m.rules)}
}

// objection is why fixes are not proved to make a file better.
type objection struct {
	// worse is what would be found then; empty if nothing as grave.
	worse string
	// other says what else stands against them.
	other string
}

// String says it as the end of a sentence.
func (o *objection) String() string {
	if o.worse != "" {
		return "then " + o.worse
	}
	return o.other
}

// against says why a file with some more fixes is not proved to be better; nil if it
// is.
func (x *examined) against(after *examined, mended []candidate, rules []*Rule) *objection {
	before, now := x.censusOf(x.all()), after.censusOf(after.all())
	least := diag.Error
	for _, c := range mended {
		least = min(least, c.Severity)
	}
	for _, d := range after.all() {
		k := after.kindOf(d)
		if x.dim[k.rig] && isLatent(rules, d) {
			continue
		}
		if d.Severity >= least && now[k] > before[k] {
			return &objection{worse: d.Message}
		}
	}
	if o := cmp.Or(x.hides(after, mended), x.silences(after)); o != nil {
		return o
	}
	wanted := census{}
	for _, c := range mended {
		wanted.add(x.kindOf(c.Diagnostic))
	}
	for k, n := range wanted {
		if now[k] > before[k]-n {
			return &objection{other: "it would be found again"}
		}
	}
	return nil
}

// stillHidden is why fixes in a rig are not made while others must be.
const stillHidden = "errors still hide what the rig does"

// hides says what of a file could not be seen any more after fixes, or still not
// where they are; nil if nothing.
func (x *examined) hides(after *examined, mended []candidate) *objection {
	if claims(after.file) < claims(x.file) {
		return &objection{other: "then a claim is lost"}
	}
	if !slices.Equal(houseRules(x.file), houseRules(after.file)) {
		return &objection{other: "then other house rules hold"}
	}
	before, now := x.legible(), after.legible()
	for _, r := range x.file.Model.Rigs {
		if before[r.Name] && !now[r.Name] {
			return &objection{other: "then errors hide what " + Clipped(r.Name) + " does"}
		}
	}
	for _, c := range mended {
		clear, there := now[c.rig]
		if !there { // it concerns every rig
			clear = !slices.Contains(slices.Collect(maps.Values(now)), false)
		}
		if !clear {
			return &objection{other: stillHidden}
		}
	}
	return nil
}

// silences says which finding that is reported would be accepted or expected after
// fixes; nil if none.
func (x *examined) silences(after *examined) *objection {
	reported, still := x.censusOf(x.Findings), after.censusOf(after.Findings)
	silent, silenced := x.censusOf(x.silent()), after.censusOf(after.silent())
	for _, d := range after.silent() {
		if k := after.kindOf(d); silenced[k] > silent[k] && still[k] < reported[k] {
			return &objection{other: "then it is not reported that " + d.Message}
		}
	}
	return nil
}

// legible says of every rig, by its name, whether it is the one that its author means.
func (x *examined) legible() map[string]bool {
	rigs := map[string]bool{}
	for _, r := range x.file.Model.Rigs {
		other, there := rigs[r.Name]
		rigs[r.Name] = legible(x.file.Problems, r) && (other || !there)
	}
	return rigs
}

// houseRules lists the house rules of a file as they are written: those of a policy file
// hold for other files too, which nobody looks at here.
func houseRules(f *load.Loaded) []string {
	var lines []string
	for _, l := range HouseOf(f).Lines() {
		lines = append(lines, l.Written())
	}
	return lines
}

func claims(f *load.Loaded) int {
	n := 0
	for _, r := range f.Model.Rigs {
		n += len(r.Claims)
	}
	return n
}
