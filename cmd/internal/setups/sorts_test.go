package setups

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"fairlead/lang/quantity"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// sort says what a token is to a reader of a rig, as far as a highlighter can tell it
// from the line that it stands in.
type sort string

const (
	statement   sort = "statement" // rig, reeve, expect …
	kind        sort = "kind"      // anchor, pulley …
	clause      sort = "clause"    // strength, holds …
	structure   sort = "structure" // on, to, per …
	claim       sort = "claim"     // the words of claims and house rules
	figure      sort = "figure"    // what a house rule bounds
	choice      sort = "choice"    // one of a few words: simple, error, off
	number      sort = "number"
	unit        sort = "unit"
	quoted      sort = "string"
	stroke      sort = "stroke"
	punctuation sort = "punctuation"
	comment     sort = "comment"
	title       sort = "title"    // the name of a rig, a copy of one, house rules
	declared    sort = "declared" // a part's name where it is given
	name        sort = "name"     // a part's name where it is used
	model       sort = "model"
	rule        sort = "rule"
	word        sort = "word"    // a knot, a material
	strange     sort = "strange" // a text that is not closed, a character of no meaning
)

// token is one token of a text with what it is.
type token struct {
	source.Span
	text string
	sort sort
}

// tokensOf gives the tokens of a text, each with its sort as the syntax tree has it. Of
// a statement that is wrong only the sorts that need no understanding are told.
func tokensOf(text string) []token {
	tree := syntax.Parse(source.New("test.rig", text))
	var list []token
	for _, line := range tree.Lines {
		var known map[source.Span]sort
		if st := line.Statement; st != nil && !st.Faulty {
			known = sortsOf(st)
		}
		for _, t := range line.Tokens {
			s, ok := plainSort(t)
			if !ok {
				s, ok = known[t.Span]
			}
			if ok {
				list = append(list, token{Span: t.Span, text: t.Text, sort: s})
			}
		}
	}
	return list
}

// plainSort gives the sort of a token that its form alone tells.
func plainSort(t syntax.Token) (sort, bool) {
	// What is a number or a name but for its form has the colour of none or of its kind.
	first, _ := utf8.DecodeRuneInString(t.Text)
	if t.Kind == syntax.InvalidToken && !unicode.IsLetter(first) && !unicode.IsControl(first) && !strings.ContainsRune("+-_.0123456789", first) {
		return strange, true
	}
	s, ok := map[syntax.TokenKind]sort{
		syntax.NumberToken: number, syntax.UnitToken: unit, syntax.StringToken: quoted,
		syntax.StrokeToken: stroke, syntax.PunctuationToken: punctuation, syntax.CommentToken: comment,
	}[t.Kind]
	return s, ok
}

// sorting collects the sorts of the words of one statement.
type sorting map[source.Span]sort

func (s sorting) word(w syntax.Word, is sort) { s[w.Span] = is }

func (s sorting) maybe(w *syntax.Word, is sort) {
	if w != nil {
		s[w.Span] = is
	}
}

func (s sorting) amount(a *syntax.Amount) {
	if a != nil && a.UnitSpan.Len() > 0 {
		s[a.UnitSpan] = unit
	}
}

func (s sorting) clauses(list []syntax.ClauseUse) {
	for _, c := range list {
		s.word(c.Word, clause)
		s.amount(c.Amount)
		s.amount(c.Second)
		is := name
		if known, _ := syntax.ClauseNamed(c.Word.Text); known.Shape == syntax.FreeWord {
			is = word
		}
		s.maybe(c.Name, is)
	}
}

// sortsOf gives the sorts of the words of a statement by their places.
func sortsOf(st *syntax.Statement) map[source.Span]sort {
	s := sorting{}
	s.rest(st)
	switch body := st.Body.(type) {
	case *syntax.Part:
		s.word(body.Kind, kind)
		s.word(body.Name, declared)
		s.maybe(body.Model, model)
		s.maybe(body.On, name)
		s.clauses(body.Clauses)
	case *syntax.Stock:
		s.word(body.Kind, kind)
		s.word(body.Model, model)
		s.clauses(body.Clauses)
	case *syntax.Reeve:
		s.reeve(body)
	case *syntax.Expect:
		s.maybe(body.Of, name)
		s.maybe(body.By, name)
		s.maybe(body.Class, choice)
		s.maybe(body.Rule, rule)
		s.amount(body.Amount)
		s.amount(body.Per)
	case *syntax.Require:
		s.maybe(body.For, kind)
		s.amount(body.Amount)
	default:
		s.other(st)
	}
	return s
}

func (s sorting) reeve(r *syntax.Reeve) {
	s.word(r.Rope, name)
	s.maybe(r.Loop, structure)
	for _, n := range r.Nodes {
		if s.word(n.Name, name); n.Name.Text == "tail" {
			s.word(n.Name, structure)
		}
		s.clauses(n.Clauses)
		s.maybe(n.Knot, word)
	}
}

// other takes the statements that name no clause of a part of their own.
func (s sorting) other(st *syntax.Statement) {
	switch body := st.Body.(type) {
	case *syntax.Rig:
		s.word(body.Name, title)
	case *syntax.Policy:
		s.word(body.Name, title)
	case *syntax.Include:
		s.word(body.Rig, title)
		s.word(body.As, title)
		for _, w := range body.Without {
			s.word(w, name)
		}
		for _, c := range body.With {
			s.word(c.Part, name)
			s.clauses(c.Clauses)
		}
	case *syntax.Join:
		s.word(body.A, name)
		s.word(body.B, name)
	case *syntax.Accept:
		s.word(body.Rule, rule)
		s.maybe(body.At, name)
	case *syntax.RuleSetting:
		s.word(body.Rule, rule)
		s.word(body.Severity, choice)
	case *syntax.Units:
		for _, w := range body.Words {
			s.word(w, unit)
		}
	}
}

// rest takes the words that are no names: the first says what the statement is, those of
// the vocabulary give structure, and those of a claim or a house rule are its own.
func (s sorting) rest(st *syntax.Statement) {
	require, _ := st.Body.(*syntax.Require)
	_, isClaim := st.Body.(*syntax.Expect)
	for i, t := range st.Tokens {
		second, _ := syntax.ClauseNamed("efficiency")
		switch {
		case i == 0:
			s[t.Span] = statement
		case require != nil && require.Subject.Span.Contains(t.Span):
			s[t.Span] = figure
		case t.Text == second.Second:
			s[t.Span] = clause
		case (isClaim || require != nil) && !inStructure(t.Text):
			s[t.Span] = claim
		default:
			s[t.Span] = structure
		}
	}
}

func inStructure(text string) bool {
	for _, w := range syntax.Structure() {
		if w == text {
			return true
		}
	}
	return false
}

// unitWords lists the units of the notation.
func unitWords() []string {
	var list []string
	for _, u := range quantity.Units() {
		list = append(list, u.Word)
	}
	return list
}

// runes gives a byte offset of a text as a number of characters.
func runes(text string, offset int) int { return utf8.RuneCountInString(text[:offset]) }
