package syntax

import (
	"errors"
	"io"
	"slices"
	"strings"
	"sync"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
	"golang.org/x/text/unicode/norm"

	"fairlead/lang/quantity"
	"fairlead/lang/source"
)

// The classes of tokens that the grammars tell apart. A word of the notation is
// no name, and a word after a number is its unit.
const (
	invalidClass lexer.TokenType = iota
	nameClass
	keywordClass
	numberClass
	unitClass
	stringClass
	strokeClass
	punctuationClass
	// literalClass is no class of the grammars: a token of it fits only where
	// its very word may stand.
	literalClass
)

// definition is participle's view of the scanner.
type definition struct{}

// Symbols names the classes for the grammars.
func (definition) Symbols() map[string]lexer.TokenType {
	return map[string]lexer.TokenType{
		"EOF": lexer.EOF, "Invalid": invalidClass, "Name": nameClass, "Keyword": keywordClass,
		"Number": numberClass, "Unit": unitClass, "String": stringClass,
		"Stroke": strokeClass, "Punctuation": punctuationClass,
	}
}

// Lex scans a whole text, its comments left out.
func (definition) Lex(filename string, r io.Reader) (lexer.Lexer, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	f := source.New(filename, string(text))
	tokens, _ := scan(f, &reporter{file: f})
	return &feed{tokens: classify(withoutComments(tokens))}, nil
}

// feed hands a grammar the tokens of one statement, or of a piece of one.
type feed struct {
	tokens []lexer.Token
	at     int
}

// Next gives the next token and never fails.
func (f *feed) Next() (lexer.Token, error) {
	if f.at == len(f.tokens) {
		return lexer.EOFToken(lexer.Position{Offset: -1}), nil
	}
	f.at++
	return f.tokens[f.at-1], nil
}

// classify puts tokens into the classes of the grammars. Offsets are kept, and
// the value is the text as written, so that its length is that of the span.
func classify(tokens []Token) []lexer.Token {
	out := make([]lexer.Token, len(tokens))
	for i, t := range tokens {
		out[i] = lexer.Token{Value: t.Text, Pos: lexer.Position{Offset: t.Span.Start}}
		switch t.Kind {
		case WordToken:
			out[i].Type = classOfWord(tokens, i)
		case NumberToken:
			out[i].Type = numberClass
		case UnitToken:
			out[i].Type = unitClass
		case StringToken:
			out[i].Type = stringClass
		case StrokeToken:
			out[i].Type = strokeClass
		case PunctuationToken:
			out[i].Type = punctuationClass
		}
	}
	return out
}

func classOfWord(tokens []Token, i int) lexer.TokenType {
	word := norm.NFC.String(tokens[i].Text)
	switch {
	case i > 0 && tokens[i-1].Kind == NumberToken && isUnit(tokens, i, word):
		return unitClass
	case Reserved(word):
		return keywordClass
	}
	return nameClass
}

// isUnit says whether the word after a number was meant as its unit: it is one,
// or it touches the number. Words at some distance are judged by what they resemble.
func isUnit(tokens []Token, i int, word string) bool {
	_, known := quantity.UnitNamed(word)
	glued := tokens[i-1].Span.End == tokens[i].Span.Start
	if known || glued || spelledUnits[strings.ToLower(word)] != "" {
		return true
	}
	followed := i+1 < len(tokens) && tokens[i+1].Kind == NumberToken
	if followed || Reserved(word) || claimWord(word) || plainClause(tokens[:i-1]) {
		return false
	}
	return len(nearest(word, clauseWords)) == 0 && len(nearest(word, claimWords)) == 0
}

// plainClause says whether the tokens end in a clause, perhaps with the first
// number of its range, that takes numbers without a unit.
func plainClause(tokens []Token) bool {
	if n := len(tokens); n > 2 && tokens[n-1].Text == "to" && tokens[n-2].Kind == NumberToken {
		tokens = tokens[:n-2]
	}
	if len(tokens) == 0 {
		return false
	}
	c, known := ClauseNamed(tokens[len(tokens)-1].Text)
	return known && slices.Contains(c.Dimensions, quantity.None)
}

// grammar makes a parser for one form, built when it is first needed, so that a
// file pays only for the statements that it has. No lookahead: every form is told by
// its next token, and so the first token that does not fit is the culprit.
func grammar[F any]() func() *participle.Parser[F] {
	return sync.OnceValue(func() *participle.Parser[F] {
		return participle.MustBuild[F](participle.Lexer(definition{}), participle.UseLookahead(0))
	})
}

// read fits tokens to a form. It gives the form as far as it was filled, how many
// tokens it took, and whether it is complete; if not, the token at used is the
// first that does not fit, or what is missing stands after the last.
func read[F any](parser func() *participle.Parser[F], tokens []lexer.Token) (form *F, used int, complete bool) {
	peeking, err := lexer.Upgrade(&feed{tokens: tokens})
	if err != nil {
		return new(F), 0, false
	}
	form, err = parser().ParseFromLexer(peeking, participle.AllowTrailing(true))
	if err == nil {
		return form, int(peeking.RawCursor()), true
	}
	if form == nil {
		form = new(F)
	}
	var unexpected *participle.UnexpectedTokenError
	if !errors.As(err, &unexpected) {
		return form, min(int(peeking.RawCursor()), len(tokens)), false
	}
	for i, t := range tokens {
		if t.Pos.Offset == unexpected.Unexpected.Pos.Offset {
			return form, i, false
		}
	}
	return form, len(tokens), false
}

// spanOf gives the place of a token.
func spanOf(t lexer.Token) source.Span {
	return source.Span{Start: t.Pos.Offset, End: t.Pos.Offset + len(t.Value)}
}

// wordOf gives a token as a word of the tree.
func wordOf(t lexer.Token) Word {
	return Word{Text: norm.NFC.String(t.Value), Span: spanOf(t)}
}

// maybeWord is wordOf for a token that may lack.
func maybeWord(t *lexer.Token) *Word {
	if t == nil {
		return nil
	}
	w := wordOf(*t)
	return &w
}
