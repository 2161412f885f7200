package report

import (
	"fmt"
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/report/page"
)

// strokes says how far each haul goes until parts meet and how a height is won. A
// rig without any position is not asked.
func strokes(res *solve.Result, s scale) []fact {
	if !placed(res.Rig) {
		return nil
	}
	var all []fact
	for _, p := range res.Hauls() {
		if p.Stroke == nil {
			continue
		}
		for _, f := range strokeFacts(p.Stroke, s) {
			if len(res.Hauls()) > 1 {
				f.text = page.Clean(p.Hauler.Name) + ": " + f.text
			}
			all = append(all, f)
		}
	}
	return append(all, ropeNeeded(res, s)...)
}

// placed says whether a position or a height is written anywhere in the rig.
func placed(r *model.Rig) bool {
	for _, p := range r.Parts {
		if p.Values.At != nil || p.Values.Raise != nil {
			return true
		}
	}
	return false
}

func strokeFacts(k *solve.Stroke, s scale) []fact {
	const label = "one stroke"
	switch {
	case len(k.Against) > 0:
		var names []string
		for _, st := range k.Against {
			names = append(names, strandName(st))
		}
		return []fact{{label: label, text: "unknown: the positions contradict " + page.List(names)}}
	case len(k.Missing) > 0:
		return []fact{{label: label, text: "unknown: no position for " + some(k.Missing)}}
	case k.First == nil:
		return nil
	}
	words := fmt.Sprintf("raises %s for %s hauled, until %s", s.metres(*k.Rise), s.metres(*k.Hauled), met(k.First))
	if r := raised(k, s); r != "" {
		words += "; " + r
	}
	all := []fact{{label: label, text: words}}
	if list := pairResets(k); len(list) > 1 {
		all = append(all, fact{label: "resets", text: strings.Join(list, ", ")})
	}
	return append(all, together(k, s)...)
}

// raised says how the height that is asked for is won, or where the raise ends.
func raised(k *solve.Stroke, s scale) string {
	r := k.Raise
	switch {
	case r == nil && k.End != nil && k.End != k.First:
		rise, by := k.Limit()
		if by == k.First && rise.Cmp(*k.Rise) == 0 {
			return "there it ends, with no room for a reset"
		}
		return "with resets " + s.metres(*rise) + ", until " + met(by)
	case r == nil && k.End != nil:
		return "there it ends"
	case r == nil:
		return ""
	case r.Endless && r.Reached.Cmp(*k.Rise) > 0:
		return "with resets " + s.metres(r.Reached) + ", where each reset loses what a stroke wins, short of " + s.metres(r.Height)
	case r.Endless:
		return "each reset loses what a stroke wins, so that it never raises " + s.metres(r.Height)
	case r.EndedBy != nil && r.EndedBy == k.First && r.Resets == 0:
		return "there it ends, short of " + s.metres(r.Height)
	}
	words := fmt.Sprintf("%d resets for %s", r.Resets, s.metres(r.Reached))
	switch r.Resets {
	case 0:
		words = "no reset for " + s.metres(r.Reached)
	case 1:
		words = "1 reset for " + s.metres(r.Reached)
	}
	if r.EndedBy != nil {
		words += ", where it ends, short of " + s.metres(r.Height) + ": " + met(r.EndedBy)
	}
	return words
}

// met says that the parts of a pair meet.
func met(p *solve.Pair) string {
	return page.Clean(p.Lower.Name) + " meets " + page.Clean(p.Upper.Name)
}

// pairResets says how often each pair is drawn apart: "runner from top 2 times".
func pairResets(k *solve.Stroke) []string {
	if k.Raise == nil {
		return nil
	}
	var list []string
	for i, n := range k.Raise.PairResets {
		often := fmt.Sprintf("%d times", n)
		if n == 1 {
			often = "once"
		}
		if p := k.Pairs[i]; n > 0 {
			list = append(list, page.Clean(p.Lower.Name)+" from "+page.Clean(p.Upper.Name)+" "+often)
		}
	}
	return list
}

// together says where the stages of a compound rig start to run out at once, if that
// makes the stroke longer.
func together(k *solve.Stroke, s scale) []fact {
	if k.Together == nil || k.Together.Rise.Cmp(*k.Rise) <= 0 {
		return nil
	}
	var starts []string
	for _, st := range k.Together.Starts {
		starts = append(starts, page.Clean(st.Part.Name)+" at "+s.metres(st.At))
	}
	return []fact{{label: "best start", text: page.List(starts) + ": all stages then run out together, at " +
		s.metres(k.Together.Rise)}}
}

// ropeNeeded says how much of each line the rig takes; a line that is too short
// stands out.
func ropeNeeded(res *solve.Result, s scale) []fact {
	var words []string
	style := page.Plain
	for _, n := range res.Rope {
		if n.Needed == nil {
			continue
		}
		w := page.Clean(n.Rope.Line.Name) + " " + s.metres(*n.Needed)
		switch {
		case n.Short:
			w += ", but it has only " + s.metres(*n.Length)
			style = page.Strong
		case n.Length != nil:
			w += " of " + s.metres(*n.Length)
		}
		words = append(words, w)
	}
	if len(words) == 0 {
		return nil
	}
	return []fact{{label: "rope needed", text: strings.Join(words, "; "), style: style}}
}
