package syntax

import "fairlead/lang/source"

// TokenKind is the class of a token.
type TokenKind int

// The classes of tokens. White space makes none.
const (
	InvalidToken     TokenKind = iota
	WordToken                  // a word or a dotted name
	NumberToken                // digits, perhaps signed, perhaps with a decimal point
	UnitToken                  // "%": other units are words
	StringToken                // in double quotes
	StrokeToken                // / \ ~
	PunctuationToken           // : , ( )
	CommentToken               // from # to the end of the line
)

// Token is one token with its exact bytes and place.
type Token struct {
	Kind TokenKind
	Text string
	Span source.Span
}
