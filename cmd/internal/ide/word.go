package ide

import (
	"slices"
	"strings"

	"fairlead/lang/quantity"
	"fairlead/lang/reference"
	"fairlead/lang/syntax"
	"fairlead/lint"
)

// wordHover says what the manual says of a word of the notation, where it stands.
func (d *Document) wordHover(st *syntax.Statement, token syntax.Token) string {
	word := token.Text
	i := slices.IndexFunc(st.Tokens, func(t syntax.Token) bool { return t.Span == token.Span })
	switch {
	case i < 0:
		return ""
	case i > 0 && st.Tokens[i-1].Kind == syntax.NumberToken:
		if said := unitText(word); said != "" {
			return said
		}
	case i == 0 || i == 1 && st.Keyword.Text == "stock":
		if said := kindText(word); said != "" {
			return said
		}
	}
	switch st.Keyword.Text {
	case "expect":
		return claimText(st, i)
	case "require":
		return d.figureText(st, i)
	}
	return clauseText(word)
}

// kindText says what a kind of part is, and which clauses it takes.
func kindText(word string) string {
	kind, known := syntax.KindNamed(word)
	if !known {
		return ""
	}
	return code(word) + ": " + kind.Meaning + "\n\nIt takes " + strings.Join(codes(syntax.ClausesOf(word)), ", ") + "."
}

// clauseText says what a clause or another word means, and how it is written.
func clauseText(word string) string {
	said, _ := reference.Word(word)
	clause, known := syntax.ClauseNamed(word)
	if !known {
		if said == "" || strings.HasPrefix(said, "`"+word+" ") {
			return said
		}
		return code(word) + "\n\n" + said
	}
	text := code(clause.Example)
	if said != "" {
		text += "\n\n" + said
	}
	return text
}

// unitText says what a unit is.
func unitText(word string) string {
	unit, known := quantity.UnitNamed(word)
	if !known {
		return ""
	}
	for _, u := range quantity.Units() {
		if u.Dimension == unit.Dimension && u.SI.IsInt() && u.SI.Num().Int64() == 1 && u.Word != word {
			exact := strings.TrimRight(strings.TrimRight(unit.SI.FloatString(16), "0"), ".")
			return "1 " + word + " = " + exact + " " + u.Word
		}
	}
	return "the unit in which the program computes"
}

// claimText says what a claim compares, from the manual's table of claims.
func claimText(st *syntax.Statement, at int) string {
	if at == 0 {
		return clauseText("expect")
	}
	subject := ""
	for _, t := range st.Tokens[1:] {
		if t.Kind != syntax.WordToken || len(reference.Rows("expect "+strings.TrimSpace(subject+" "+t.Text))) == 0 {
			break
		}
		subject = strings.TrimSpace(subject + " " + t.Text)
	}
	var lines []string
	for _, r := range reference.Rows("expect " + subject) {
		if subject != "" {
			lines = append(lines, code(r[0])+": "+r[1])
		}
	}
	return strings.Join(lines, "\n\n")
}

// figureText says what a house rule asks for, and what is in force here.
func (d *Document) figureText(st *syntax.Statement, at int) string {
	body, ok := st.Body.(*syntax.Require)
	if !ok || at == 0 {
		return clauseText("require")
	}
	figure, _ := syntax.FigureNamed(body.Subject.Text)
	text := figure.Meaning + "\n\n" + code(figure.Example)
	for _, line := range lint.HouseOf(d.Loaded).Lines() {
		if line.Require == nil || line.Require.Subject.Text != figure.Name || line.Over != nil {
			continue
		}
		text += "\n\nin force: " + code(line.Written()) + " (" + escape(line.Name()) + ")"
		if line.Require.Source != "" {
			text += ": " + escape(line.Require.Source)
		}
	}
	return text
}

func codes(words []string) []string {
	var list []string
	for _, w := range words {
		list = append(list, code(w))
	}
	return list
}
