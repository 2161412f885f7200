package report

import (
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/report/page"
)

// lossable says whether a part can be lost: what is moved and who pulls cannot.
func lossable(p *model.Part) bool { return !p.Kind.IsWeight() && !p.Kind.IsPerson() }

// losses asks of every part that can be lost whether the rig stays up without it,
// in file order.
func losses(res *solve.Result) []loss {
	var list []loss
	if res.Status == solve.Unsolved {
		return nil
	}
	for _, p := range res.Rig.Parts {
		if lossable(p) {
			list = append(list, loss{p, res.Without(p)})
		}
	}
	return list
}

// loss is a part and what happens without it.
type loss struct {
	part *model.Part
	stay solve.Stay
}

// lost says what happens when one part fails, where the rig is held at all: "falls
// without head, top or long".
func lost(res *solve.Result) []fact {
	if res.Released.Answer != solve.Held {
		return nil
	}
	without := map[solve.Answer][]string{}
	all := losses(res)
	for _, l := range all {
		without[l.stay.Answer] = append(without[l.stay.Answer], page.Clean(l.part.Name))
	}
	var said []string
	for _, a := range []struct {
		answer solve.Answer
		words  string
	}{
		{solve.Down, "falls without "}, {solve.Jams, "drops until parts jam without "},
		{solve.Caught, "drops, then is caught without "},
	} {
		if names := without[a.answer]; len(names) > 0 {
			said = append(said, a.words+orList(names))
		}
	}
	switch {
	case len(all) == 0:
		return nil
	case len(said) == 0:
		said = []string{"held, whichever it is"}
	}
	return []fact{{label: "one part lost", text: strings.Join(said, "; ")}}
}

// orList joins words as a choice: "a, b or c".
func orList(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " or " + words[n-1]
	}
	return strings.Join(words, "")
}
