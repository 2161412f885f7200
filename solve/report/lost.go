package report

import (
	"slices"
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/report/page"
)

// severity orders the answers, the worst last.
var severity = []solve.Answer{solve.Held, solve.Caught, solve.Jams, solve.Down}

// worse says whether an answer is worse than another.
func worse(a, than solve.Answer) bool {
	return slices.Index(severity, a) > slices.Index(severity, than)
}

// lost says what happens when one thing fails, where the rig is held at all: "falls
// without head, top or long".
func lost(res *solve.Result, s scale) []fact {
	if res.Released.Answer != solve.Held {
		return nil
	}
	all := res.Losses()
	if len(all) == 0 {
		return nil
	}
	var said []string
	for _, a := range []solve.Answer{solve.Down, solve.Jams, solve.Caught} {
		said = append(said, without(telling(all), a, s)...)
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

// telling leaves out what a larger loss says: a part's hold or clip where losing the
// part is as bad, a tie where losing the line or the part is.
func telling(all []solve.Loss) []solve.Loss {
	whole := map[*model.Part]solve.Answer{}
	for _, l := range all {
		if isWhole(l.Lost) {
			whole[l.Part] = l.Answer
		}
	}
	var told []solve.Loss
	for _, l := range all {
		larger := []*model.Part{l.Part}
		if l.Rope != nil {
			larger = append(larger, l.Rope.Line)
		}
		said := slices.ContainsFunc(larger, func(p *model.Part) bool { return !worse(l.Answer, whole[p]) })
		if isWhole(l.Lost) || !said {
			told = append(told, l)
		}
	}
	return told
}

// isWhole says whether a loss is that of a part as such.
func isWhole(l solve.Lost) bool {
	switch l.Kind {
	case solve.LostHold, solve.LostClip, solve.LostTie:
		return false
	}
	return true
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
