package report

import (
	"fairlead/solve"
	"fairlead/solve/lp"
)

type held struct {
	// Released is the whistle test; nil if the rig is unsolved.
	Released *solve.Answer `json:"released"`
	// Without has the answer for each part that can be lost.
	Without map[string]solve.Answer `json:"without"`
	// Losses has one entry for everything that can be lost: parts, holds, clips, ties.
	Losses []loss `json:"losses"`
}

type loss struct {
	Kind   solve.LostKind `json:"kind"`
	Part   string         `json:"part"`
	Rope   *string        `json:"rope"`
	Node   *int           `json:"node"`
	Answer solve.Answer   `json:"answer"`
	DropM  *figure        `json:"drop_m"`
	// AtMost says that rope of unknown length may catch it sooner.
	AtMost bool `json:"drop_at_most"`
}

// mostUnheld is the size, in parts, up to which a rig that is not held anyhow is
// still asked what each loss does: that takes time, and adds little.
const mostUnheld = 400

func lossesOf(res *solve.Result) []solve.Loss {
	if res.Released.Answer != solve.Held && len(res.Rig.Parts) > mostUnheld {
		return nil
	}
	return res.Losses()
}

func heldOf(res *solve.Result) held {
	h := held{Without: map[string]solve.Answer{}, Losses: []loss{}}
	if res.Status == solve.Unsolved {
		return h
	}
	if res.Released.Answer != "" {
		h.Released = &res.Released.Answer
	}
	for _, l := range lossesOf(res) {
		out := loss{Kind: l.Kind, Part: l.Part.Name, Answer: l.Answer,
			DropM: figureOf(l.Drop.Most()), AtMost: l.Drop.Known() && l.Drop.AtMost}
		if l.Rope != nil {
			out.Rope, out.Node = &l.Rope.Line.Name, &l.Node
		}
		if l.Whole() {
			h.Without[l.Part.Name] = l.Answer
		}
		h.Losses = append(h.Losses, out)
	}
	return h
}

// strokeOut is how far a haul goes until parts meet. Lengths are in metres.
type strokeOut struct {
	// RiseM and HauledM are nil where unknown or where nothing meets.
	RiseM   *figure   `json:"rise_m"`
	HauledM *figure   `json:"hauled_m"`
	Pairs   []pairOut `json:"pairs"`
	// EndM is the rise that no reset can exceed.
	EndM     *figure `json:"end_m"`
	SetBackM *figure `json:"set_back_m"`
	// SlipM is what is hauled at the start of each stroke before the grips that pull hold.
	SlipM    *figure      `json:"slip_m"`
	Missing  []string     `json:"missing"`
	Together *togetherOut `json:"together"`
	Raise    *raiseOut    `json:"raise"`
}

type pairOut struct {
	Lower  string  `json:"lower"`
	Upper  string  `json:"upper"`
	GapM   *figure `json:"gap_m"`
	Rate   *figure `json:"rate"`
	MeetsM *figure `json:"meets_m"`
	// Resettable says that the pair can be drawn apart again.
	Resettable bool `json:"resettable"`
	// Resets is how often over the raise; nil without one.
	Resets *int `json:"resets"`
}

type togetherOut struct {
	RiseM  *figure    `json:"rise_m"`
	Starts []startOut `json:"starts"`
}

type startOut struct {
	Part string  `json:"part"`
	AtM  *figure `json:"at_m"`
}

type raiseOut struct {
	HeightM  *figure `json:"height_m"`
	ReachedM *figure `json:"reached_m"`
	HauledM  *figure `json:"hauled_m"`
	Resets   int     `json:"resets"`
	// Endless says that from reached_m on no reset wins anything.
	Endless bool `json:"endless"`
}

// strokeOf gives nil where a haul has no stroke to speak of.
func strokeOf(k *solve.Stroke) *strokeOut {
	if k == nil {
		return nil
	}
	out := &strokeOut{RiseM: figureOf(k.Rise), HauledM: figureOf(k.Hauled), Pairs: []pairOut{}, Missing: names(k.Missing)}
	for i, p := range k.Pairs {
		pair := pairOut{Lower: p.Lower.Name, Upper: p.Upper.Name, GapM: figureOf(p.Gap), Rate: figureOf(&p.Rate),
			MeetsM: figureOf(p.Meets), Resettable: p.Resettable}
		if k.Raise != nil {
			pair.Resets = &k.Raise.PairResets[i]
		}
		out.Pairs = append(out.Pairs, pair)
	}
	if !k.Known() {
		return out
	}
	out.SetBackM, out.SlipM = figureOf(&k.SetBack), figureOf(&k.Slip)
	end, _ := k.Limit()
	out.EndM = figureOf(end)
	if t := k.Together; t != nil {
		out.Together = &togetherOut{RiseM: figureOf(&t.Rise), Starts: []startOut{}}
		for _, s := range t.Starts {
			out.Together.Starts = append(out.Together.Starts, startOut{s.Part.Name, figureOf(&s.At)})
		}
	}
	if r := k.Raise; r != nil {
		out.Raise = &raiseOut{figureOf(&r.Height), figureOf(&r.Reached), figureOf(&r.Hauled), r.Resets, r.Endless}
	}
	return out
}

// ropeNeededOf gives the rope needed by line; nil where it is unknown.
func ropeNeededOf(res *solve.Result) map[string]*figure {
	needed := map[string]*figure{}
	for _, n := range res.Rope {
		needed[n.Rope.Line.Name] = figureOf(n.Needed)
	}
	return needed
}

// drops has how far the load drops hands off, and without each part: nil where it
// does not drop or nothing says how far.
type drops struct {
	Released *figure            `json:"released"`
	Without  map[string]*figure `json:"without"`
}

func dropsOf(res *solve.Result) drops {
	d := drops{Without: map[string]*figure{}}
	if res.Status == solve.Unsolved {
		return d
	}
	drop := func(s solve.Stay) *lp.Num { return s.Drop.Most() }
	d.Released = figureOf(drop(res.Released))
	for _, l := range lossesOf(res) {
		if l.Whole() && drop(l.Stay) != nil {
			d.Without[l.Part.Name] = figureOf(drop(l.Stay))
		}
	}
	return d
}
