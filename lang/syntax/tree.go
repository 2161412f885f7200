package syntax

import (
	"fairlead/lang/diag"
	"fairlead/lang/quantity"
	"fairlead/lang/source"
)

// Tree is a whole file: its statements in file order, good and bad, and every
// fault of its text.
type Tree struct {
	File       *source.File
	Statements []*Statement
	Problems   []diag.Diagnostic
	// Lines are the lines of the file, blank ones and comments included: line i
	// is that of source.File.LineSpan(i).
	Lines []Line
}

// Line is one line of a file as written.
type Line struct {
	// Tokens are the tokens of the line, its comment last. A blank line has none.
	Tokens []Token
	// Statement is the one that the line belongs to, as its first line or one
	// that goes on. It is nil for blank lines and for comments between statements.
	Statement *Statement
}

// Statement is one statement with its place, which runs from the first to the
// last token, continued lines included, comments not.
type Statement struct {
	Span source.Span
	// Keyword is the first word; its text is empty if the line begins with none.
	Keyword Word
	// Tokens are all tokens of the statement, comments between them included.
	Tokens []Token
	// Trailing is the comment after the last token on its line; nil without one.
	Trailing *Token
	// Doc are the comment lines directly above; blank lines cut them off.
	Doc []Token
	// Body is what the statement says; *Bad if that cannot be told.
	Body Body
	// Faulty says that an error was reported in the statement, so that its body
	// may lack what was bad.
	Faulty bool
}

// Body is one of *Rig, *Use, *Include, *Join, *Part, *Reeve, *Expect, *Accept,
// *Units, *Stock, *Policy, *Require, *RuleSetting and *Bad.
type Body interface{ body() }

// Word is one word or dotted name, NFC-normalised, with its place.
type Word struct {
	Text string
	Span source.Span
}

// Text is a string in quotes: its content without quotes and escapes.
type Text struct {
	Value string
	Span  source.Span
}

// Amount is a quantity as it stands in a file.
type Amount struct {
	quantity.Quantity
	Span source.Span
	// LowSpan and HighSpan are the places of the two numbers (equal without a
	// range), UnitSpan that of the unit (empty without one).
	LowSpan, HighSpan, UnitSpan source.Span
}

// Rig is "rig NAME ["title"]".
type Rig struct {
	Name  Word
	Title *Text
}

// Use is "use "file"".
type Use struct{ Path Text }

// Include is "include RIG as NAME {with PART CLAUSE…} {without PART}".
type Include struct {
	Rig Word
	As  Word
	// With are changes of the copy's parts, one or more clauses each.
	With []Change
	// Without are parts that the copy leaves out.
	Without []Word
}

// Change is "PART CLAUSE…" after "with".
type Change struct {
	Part    Word
	Clauses []ClauseUse
}

// Join is "join END to END".
type Join struct{ A, B Word }

// Part is a part statement: "KIND NAME [MODEL] [on PART] {CLAUSE}".
type Part struct {
	Kind    Word
	Name    Word
	Model   *Word
	On      *Word
	Clauses []ClauseUse
}

// Stock is "stock KIND MODEL {CLAUSE}".
type Stock struct {
	Kind    Word
	Model   Word
	Clauses []ClauseUse
}

// ClauseUse is one clause as written. Its shape fits the vocabulary's, its
// values are not judged: signs, sizes and names are the resolver's.
type ClauseUse struct {
	Word Word
	// Amount is set for Measure and Count, Second for the second quantity.
	Amount, Second *Amount
	// Name is set for Name, MaybeName and FreeWord.
	Name *Word
	// Span is the whole clause.
	Span source.Span
}

// Reeve is a reeving line: node, stroke, node, stroke, …
type Reeve struct {
	Rope  Word
	Nodes []Node
	// Strokes[i] stands between Nodes[i] and Nodes[i+1]. With Loop one more
	// stroke stands at the end, from the last node back to the first.
	Strokes []Stroke
	// Loop is the closing word "loop", if it is there. It is not among Nodes.
	Loop *Word
}

// Node is one node of a reeving line: a part's name, or the word "tail".
type Node struct {
	Name    Word
	Clauses []ClauseUse
	// Knot is the knot that ties it, as in "litter (figure-eight)".
	Knot *Word
	// Span is the whole node, parentheses included.
	Span source.Span
}

// IsTail says whether the node is the word "tail".
func (n Node) IsTail() bool { return n.Name.Text == "tail" }

// StrokeKind is the way a rope runs.
type StrokeKind byte

const (
	// Up the line: toward the head.
	Up StrokeKind = '/'
	// Down the line: toward the load.
	Down StrokeKind = '\\'
	// Slack: loose rope.
	Slack StrokeKind = '~'
)

// Stroke is one stroke with its place.
type Stroke struct {
	Kind StrokeKind
	Span source.Span
}

// Subject is what a claim is about.
type Subject string

// The subjects of "expect".
const (
	Advantage       Subject = "advantage"
	ActualAdvantage Subject = "actual advantage"
	Pull            Subject = "pull"
	LoadOn          Subject = "load"
	Factor          Subject = "factor"
	Travel          Subject = "travel"
	Class           Subject = "class"
	Held            Subject = "held"
	StrokeLength    Subject = "stroke"
	LowerHand       Subject = "lower hand"
	Finding         Subject = "finding"
)

// Compare is how a claim compares.
type Compare string

// The comparisons; Equal has no word of its own.
const (
	Equal Compare = ""
	Over  Compare = "over"
	Under Compare = "under"
)

// Expect is a claim. Fields that its subject does not use are zero.
type Expect struct {
	Not     *Word // "not" of "not held"
	Subject Subject
	// SubjectSpan is the place of the subject's words.
	SubjectSpan source.Span
	// Of is the part of "load on PART", "factor of PART", "finding … at PART",
	// "held without PART".
	Of *Word
	// By is the hauler of "by HAULER".
	By      *Word
	Compare Compare
	// Ratio is "3:1" of an advantage; a plain number n is n:1.
	Ratio *Ratio
	// Amount is the figure compared with; Per the second one of "travel 3 m per 1 m".
	Amount, Per *Amount
	// PerPerson says "per person".
	PerPerson bool
	// Class is the word of "class compound".
	Class *Word
	// WhenReleased and WhileHauling say how hands are.
	WhenReleased, WhileHauling bool
	// Rule is the rule of "finding RULE".
	Rule *Word
}

// Ratio is "A:B" as written.
type Ratio struct {
	A, B quantity.Quantity
	Span source.Span
}

// Accept is "accept RULE [at PART] because "…"".
type Accept struct {
	Rule    Word
	At      *Word
	Because Text
}

// Units is "units FORCE LENGTH", in any order, one or both.
type Units struct{ Words []Word }

// Policy is "policy NAME ["title"]".
type Policy struct {
	Name  Word
	Title *Text
}

// Require is one figure of a policy: "require SUBJECT …".
type Require struct {
	// Subject is "factor", "pull", "people times advantage", "drop" and the like.
	Subject   Word
	For       *Word // "for hitch"
	Compare   Compare
	Amount    *Amount
	PerPerson bool
}

// RuleSetting is "rule NAME SEVERITY" of a policy; the word may be "off".
type RuleSetting struct{ Rule, Severity Word }

// Bad is a statement that could not be read. It keeps its tokens.
type Bad struct {
	// Names are the words in it that may be names, so that no later stage
	// complains that they are unknown or unused.
	Names []Word
}

func (*Rig) body()         {}
func (*Use) body()         {}
func (*Include) body()     {}
func (*Join) body()        {}
func (*Part) body()        {}
func (*Stock) body()       {}
func (*Reeve) body()       {}
func (*Expect) body()      {}
func (*Accept) body()      {}
func (*Units) body()       {}
func (*Policy) body()      {}
func (*Require) body()     {}
func (*RuleSetting) body() {}
func (*Bad) body()         {}
