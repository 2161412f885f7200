package syntax

import (
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"
)

// The words of claims and policies. They are no reserved words: a part may have
// any of them as its name.
var (
	classWords   = words("simple compound complex")
	settingWords = words("error warning advice off")
	claimWords   = slices.Concat(words("over under by of for when released while hauling hand not held advantage actual"+
		" factor travel class stroke lower finding times person drop"), classWords, settingWords)
	// formWords are all words that the forms of statements without clauses have.
	formWords = append(words("at on per to because without people load pull as :"), claimWords...)
)

func claimWord(word string) bool { return slices.Contains(claimWords, word) }

// ClaimWords lists the words with a meaning of their own in claims and house rules:
// what they are about, and what joins it to a figure. The words of Structure and those
// of ClassWords and SettingWords are not among them.
func ClaimWords() []string {
	list := strings.Fields(strings.Join(subjects, " "))
	for _, w := range claimWords {
		if !slices.Contains(classWords, w) && !slices.Contains(settingWords, w) {
			list = append(list, w)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// ClassWords lists what a rig can be called after "class".
func ClassWords() []string { return slices.Clone(classWords) }

// SettingWords lists what a house rule can make of a finding.
func SettingWords() []string { return slices.Clone(settingWords) }

type ratioForm struct {
	A lexer.Token  `parser:"@Number"`
	B *lexer.Token `parser:"( ':' @Number )?"`
}

type advantageForm struct {
	Actual    *lexer.Token `parser:"'expect' @'actual'?"`
	Advantage lexer.Token  `parser:"@'advantage'"`
	Compare   *lexer.Token `parser:"@( 'over' | 'under' )?"`
	Ratio     ratioForm    `parser:"@@"`
	By        *lexer.Token `parser:"( 'by' @Name )?"`
}

type pullForm struct {
	Subject lexer.Token  `parser:"'expect' @'pull'"`
	Compare *lexer.Token `parser:"@( 'over' | 'under' )?"`
	Amount  figureForm   `parser:"@@"`
	Per     *lexer.Token `parser:"( 'per' @'person' )?"`
	By      *lexer.Token `parser:"( 'by' @Name )?"`
}

// figureForm is one number with its unit, which may lack.
type figureForm struct {
	Number lexer.Token  `parser:"@Number"`
	Unit   *lexer.Token `parser:"@Unit?"`
}

func (f figureForm) amount() amountForm { return amountForm{Low: f.Number, Unit: f.Unit} }

type loadForm struct {
	Subject lexer.Token  `parser:"'expect' @'load'"`
	Of      lexer.Token  `parser:"'on' @Name"`
	Compare *lexer.Token `parser:"@( 'over' | 'under' )?"`
	A       lexer.Token  `parser:"@Number"`
	B       *lexer.Token `parser:"( ':' @Number"`
	Unit    *lexer.Token `parser:"| @Unit )?"`
	By      *lexer.Token `parser:"( 'by' @Name )?"`
}

type factorForm struct {
	Subject lexer.Token  `parser:"'expect' @'factor'"`
	Of      *lexer.Token `parser:"( 'of' @Name )?"`
	Compare *lexer.Token `parser:"@( 'over' | 'under' )?"`
	Amount  figureForm   `parser:"@@"`
	By      *lexer.Token `parser:"( 'by' @Name )?"`
}

type travelForm struct {
	Subject lexer.Token  `parser:"'expect' @'travel'"`
	Compare *lexer.Token `parser:"@( 'over' | 'under' )?"`
	Amount  figureForm   `parser:"@@"`
	Per     figureForm   `parser:"'per' @@"`
	By      *lexer.Token `parser:"( 'by' @Name )?"`
}

type classForm struct {
	Subject lexer.Token  `parser:"'expect' @'class'"`
	Class   lexer.Token  `parser:"@( 'simple' | 'compound' | 'complex' )"`
	By      *lexer.Token `parser:"( 'by' @Name )?"`
}

type strokeForm struct {
	Subject lexer.Token  `parser:"'expect' @'stroke'"`
	Compare *lexer.Token `parser:"@( 'over' | 'under' )?"`
	Amount  figureForm   `parser:"@@"`
	By      *lexer.Token `parser:"( 'by' @Name )?"`
}

type lowerForm struct {
	Lower   lexer.Token  `parser:"'expect' @'lower'"`
	Hand    lexer.Token  `parser:"@'hand'"`
	Compare *lexer.Token `parser:"@( 'over' | 'under' )?"`
	Amount  figureForm   `parser:"@@"`
}

type findingForm struct {
	Subject lexer.Token  `parser:"'expect' @'finding'"`
	Rule    lexer.Token  `parser:"@Name"`
	At      *lexer.Token `parser:"( 'at' @Name )?"`
}

type heldForm struct {
	Not     *lexer.Token   `parser:"'expect' @'not'?"`
	Held    lexer.Token    `parser:"@'held'"`
	Clauses []heldAddition `parser:"@@*"`
}

// heldAddition is one of "when released", "without PART" and "while hauling".
type heldAddition struct {
	Released *lexer.Token `parser:"( 'when' @'released' )"`
	Without  *lexer.Token `parser:"| ( 'without' @Name )"`
	Hauling  *lexer.Token `parser:"| ( 'while' @'hauling' )"`
}

// subjects are what a claim may be about, as the author writes it.
var subjects = []string{
	"advantage", "actual advantage", "pull", "load", "factor", "travel", "class",
	"held", "not held", "stroke", "lower hand", "finding",
}

// expect reads a claim by the form of its subject.
func (r *reporter) expect(tokens []lexer.Token) Body {
	subject := ""
	if len(tokens) > 1 {
		subject = tokens[1].Value
	}
	var e *Expect
	switch subject {
	case "advantage", "actual":
		e = r.expectAdvantage(tokens)
	case "pull":
		e = r.expectPull(tokens)
	case "load":
		e = r.expectLoad(tokens)
	case "factor":
		e = r.expectFactor(tokens)
	case "travel":
		e = r.expectTravel(tokens)
	case "class":
		e = r.expectClass(tokens)
	case "held", "not":
		e = r.expectHeld(tokens)
	case "stroke":
		e = r.expectStroke(tokens)
	case "lower":
		e = r.expectLowerHand(tokens)
	case "finding":
		e = r.expectFinding(tokens)
	default:
		r.unknownSubject(tokens)
	}
	if e == nil {
		return &Bad{}
	}
	return e
}

func (r *reporter) unknownSubject(tokens []lexer.Token) {
	switch {
	case len(tokens) < 2:
		r.fault(RuleSyntax, placeAt(tokens, 1), "expect needs a claim, such as expect advantage 3:1")
	case tokens[1].Type == invalidClass:
		r.faulty = true
	default:
		near := nearest(tokens[1].Value, strings.Fields(strings.Join(subjects, " ")))
		d := r.fault(RuleSyntax, spanOf(tokens[1]), "%s is no claim%s", clip(tokens[1].Value),
			hintOr(near, "; the claims are "+list(subjects, "and")))
		r.offer(d, spanOf(tokens[1]), near)
	}
}
