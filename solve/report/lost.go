package report

import (
	"strings"

	"fairlead/solve"
	"fairlead/solve/report/page"
)

// lost says what happens when one thing fails, where the rig is held at all: "falls
// without head, top or long".
func lost(res *solve.Result, s scale) []fact {
	if res.Released.Answer != solve.Held {
		return nil
	}
	all, _ := res.TellingLosses(nil)
	if len(all) == 0 {
		return nil
	}
	var said []string
	for _, a := range []solve.Answer{solve.Down, solve.Jams, solve.Caught} {
		said = append(said, without(all, a, s)...)
	}
	if len(said) == 0 {
		said = []string{"held, whichever it is"}
	}
	return []fact{{label: "one part lost", text: strings.Join(said, "; ")}}
}

// without says which losses have an answer, those that drop alike together.
func without(all []solve.Loss, answer solve.Answer, s scale) []string {
	var ways []string
	named := map[string][]string{}
	for _, l := range all {
		if l.Answer != answer {
			continue
		}
		way := dropping(l.Stay, s)
		if _, known := named[way]; !known {
			ways = append(ways, way)
		}
		named[way] = append(named[way], thing(l.Lost))
	}
	var said []string
	for _, way := range ways {
		said = append(said, way+" without "+orList(named[way]))
	}
	return said
}

// dropping says in short what happens.
func dropping(stay solve.Stay, s scale) string {
	far := ""
	if d := dropped(stay.Drop, s); d != "" {
		far = " " + d
	}
	switch stay.Answer {
	case solve.Caught:
		return "drops" + far + ", then is caught"
	case solve.Jams:
		return "drops" + far + " until parts jam"
	}
	return "falls"
}

// dropped gives the length of a drop: "0.6 m" or "at most 0.6 m"; empty if unknown.
func dropped(d *solve.Drop, s scale) string {
	most := d.Most()
	switch {
	case most == nil:
		return ""
	case d.AtMost:
		return "at most " + s.metres(*most)
	}
	return s.metres(*most)
}

// thing names what is lost.
func thing(l solve.Lost) string {
	name := page.Clean(l.Part.Name)
	switch l.Kind {
	case solve.LostHold:
		return "the hold of " + name
	case solve.LostClip:
		return "the clip of " + name
	case solve.LostTie:
		return "the tie of " + page.Clean(l.Rope.Line.Name) + " at " + name
	}
	return name
}

// orList joins words as a choice: "a, b or c".
func orList(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " or " + words[n-1]
	}
	return strings.Join(words, "")
}
