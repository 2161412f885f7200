package syntax

import (
	"fmt"
	"strings"
)

// dumpTree writes what the good statements say, a line for each, in one fixed form.
func dumpTree(tree *Tree) string {
	var lines []string
	for _, st := range tree.Statements {
		if line := dump(st.Body); line != "" {
			lines = append(lines, line)
		}
	}
	return strings.Join(lines, "\n")
}

func dump(body Body) string {
	switch b := body.(type) {
	case *Rig:
		return "rig " + b.Name.Text + dumpText(b.Title)
	case *Policy:
		return "policy " + b.Name.Text + dumpText(b.Title)
	case *Use:
		return "use" + dumpText(&b.Path)
	case *Join:
		return "join " + b.A.Text + " + " + b.B.Text
	case *Units:
		return "units" + dumpWords("", b.Words)
	case *RuleSetting:
		return "rule " + b.Rule.Text + " = " + b.Severity.Text
	case *Accept:
		return "accept " + b.Rule.Text + dumpWord(" at ", b.At) + dumpText(&b.Because)
	case *Part:
		return b.Kind.Text + " " + b.Name.Text + dumpWord(" model ", b.Model) + dumpWord(" on ", b.On) + dumpClauses(b.Clauses)
	case *Stock:
		return "stock " + b.Kind.Text + " " + b.Model.Text + dumpClauses(b.Clauses)
	case *Include:
		out := "include " + b.Rig.Text + " as " + b.As.Text
		for _, c := range b.With {
			out += " with " + c.Part.Text + dumpClauses(c.Clauses)
		}
		return out + dumpWords(" without", b.Without)
	case *Reeve:
		return dumpReeve(b)
	case *Expect:
		return dumpExpect(b)
	case *Require:
		out := "require " + b.Subject.Text + dumpAmount(string(b.Compare), b.Amount) + dumpWord(" for ", b.For)
		return out + dumpFlag(" per person", b.PerPerson)
	}
	return ""
}

func dumpExpect(e *Expect) string {
	out := "expect" + dumpWord(" ", e.Not) + " " + string(e.Subject) + dumpWord(" of ", e.Of)
	if e.Ratio != nil {
		out += fmt.Sprintf(" %s %s:%s", e.Compare, e.Ratio.A, e.Ratio.B)
	}
	out += dumpAmount(string(e.Compare), e.Amount) + dumpAmount("per", e.Per) + dumpFlag(" per person", e.PerPerson)
	out += dumpWord(" class ", e.Class) + dumpWord(" rule ", e.Rule) + dumpWord(" by ", e.By)
	return out + dumpFlag(" released", e.WhenReleased) + dumpFlag(" hauling", e.WhileHauling)
}

func dumpReeve(r *Reeve) string {
	out := r.Rope.Text + ":"
	for i, n := range r.Nodes {
		out += " " + n.Name.Text + dumpClauses(n.Clauses) + dumpWord(" tied ", n.Knot)
		if i < len(r.Strokes) {
			out += " " + string(rune(r.Strokes[i].Kind))
		}
	}
	return out + dumpWord(" ", r.Loop)
}

func dumpClauses(uses []ClauseUse) string {
	var out []string
	for _, u := range uses {
		out = append(out, u.Word.Text+dumpWord(" ", u.Name)+dumpAmount("", u.Amount)+dumpAmount("lowering", u.Second))
	}
	if out == nil {
		return ""
	}
	return " [" + strings.Join(out, ", ") + "]"
}

func dumpAmount(before string, a *Amount) string {
	if a == nil {
		return ""
	}
	return " " + strings.TrimSpace(before+" "+a.String())
}

func dumpWord(before string, w *Word) string {
	if w == nil {
		return ""
	}
	return before + w.Text
}

func dumpWords(before string, words []Word) string {
	out := ""
	for _, w := range words {
		out += before + " " + w.Text
	}
	return out
}

func dumpText(text *Text) string {
	if text == nil {
		return ""
	}
	return fmt.Sprintf(" %q", text.Value)
}

func dumpFlag(text string, set bool) string {
	if !set {
		return ""
	}
	return text
}
