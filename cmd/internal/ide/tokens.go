package ide

import (
	"slices"

	"fairlead/lang/quantity"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// TokenSort says what a piece of text is, for colouring.
type TokenSort int

const (
	KeywordToken   TokenSort = iota // statements, kinds, words of structure and of claims
	PropertyToken                   // clauses and figures of house rules
	VariableToken                   // parts
	NamespaceToken                  // rigs, copies, house rules
	TypeToken                       // models
	FunctionToken                   // rules
	MemberToken                     // one of a few words: a severity, a class
	NumberToken                     // numbers and their units
	StringToken
	OperatorToken // strokes
	CommentToken
)

// TokenSorts are the sorts in their order, each as the name that editors know it by.
var TokenSorts = []string{
	"keyword", "property", "variable", "namespace", "type", "function", "enumMember",
	"number", "string", "operator", "comment",
}

// Token is a piece of text with what it is.
type Token struct {
	Span source.Span
	Sort TokenSort
	// Declares says that a name is given here.
	Declares bool
}

// Tokens gives the pieces of text in a span, in file order. None reaches over a line.
func (d *Document) Tokens(within source.Span) []Token {
	names := d.all()
	next := 0
	var list []Token
	first, last := d.File.Line(within.Start), d.File.Line(within.End)
	for i := first; i <= last && i < len(d.Tree.Lines); i++ {
		line := d.Tree.Lines[i]
		for _, t := range line.Tokens {
			for next < len(names) && names[next].span.Start < t.Span.Start {
				next++
			}
			named := false
			for k := next; k < len(names) && names[k].span.End <= t.Span.End; k++ {
				if !names[k].vague {
					list, named = append(list, names[k].token()), true
				}
			}
			if sort, ok := d.sortOf(line.Statement, t); ok && !named {
				list = append(list, Token{Span: t.Span, Sort: sort})
			}
		}
	}
	return list
}

// token gives a name as a piece of text.
func (m mention) token() Token {
	sort := map[sort]TokenSort{
		partName: VariableToken, rigName: NamespaceToken, copyName: NamespaceToken,
		modelName: TypeToken, ruleName: FunctionToken, policyName: NamespaceToken, fileName: StringToken,
	}[m.sort]
	return Token{Span: m.span, Sort: sort, Declares: m.declares}
}

// sortOf says what a token is that is no name; ok is false for punctuation and for what
// cannot be read.
func (d *Document) sortOf(st *syntax.Statement, t syntax.Token) (sort TokenSort, ok bool) {
	switch t.Kind {
	case syntax.CommentToken:
		return CommentToken, true
	case syntax.NumberToken, syntax.UnitToken:
		return NumberToken, true
	case syntax.StringToken:
		return StringToken, true
	case syntax.StrokeToken:
		return OperatorToken, true
	case syntax.WordToken:
		return wordSort(st, t)
	}
	return 0, false
}

func wordSort(st *syntax.Statement, t syntax.Token) (TokenSort, bool) {
	i := slices.IndexFunc(st.Tokens, func(of syntax.Token) bool { return of.Span == t.Span })
	_, isUnit := quantity.UnitNamed(t.Text)
	_, isClause := syntax.ClauseNamed(t.Text)
	switch {
	case i <= 0:
		return KeywordToken, syntax.StartsStatement(t.Text)
	case isUnit && (st.Tokens[i-1].Kind == syntax.NumberToken || st.Keyword.Text == "units"):
		return NumberToken, true
	}
	switch body := st.Body.(type) {
	case *syntax.Expect:
		if body.Class != nil && body.Class.Span == t.Span {
			return MemberToken, true
		}
		return KeywordToken, true
	case *syntax.RuleSetting:
		return MemberToken, true
	case *syntax.Join:
		return KeywordToken, true
	case *syntax.Include:
		if !isClause {
			return KeywordToken, true
		}
	case *syntax.Require:
		if body.Subject.Span.Contains(t.Span) {
			return PropertyToken, true
		}
		return KeywordToken, true
	case *syntax.Stock:
		if i == 1 {
			return KeywordToken, true
		}
	}
	switch {
	case isClause && t.Text != "at":
		return PropertyToken, true
	case isClause:
		_, inPart := st.Body.(*syntax.Part)
		if inPart {
			return PropertyToken, true
		}
		return KeywordToken, true
	case syntax.Reserved(t.Text):
		return KeywordToken, true
	}
	_, bad := st.Body.(*syntax.Bad)
	return MemberToken, !bad // a free word, such as that of a material
}
