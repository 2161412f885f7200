package syntax

import (
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// The forms of the statements without clauses.

type rigForm struct {
	Name  lexer.Token  `parser:"'rig' @Name"`
	Title *lexer.Token `parser:"@String?"`
}

type policyForm struct {
	Name  lexer.Token  `parser:"'policy' @Name"`
	Title *lexer.Token `parser:"@String?"`
}

type useForm struct {
	Path lexer.Token `parser:"'use' @String"`
}

type joinForm struct {
	A lexer.Token `parser:"'join' @Name"`
	B lexer.Token `parser:"'to' @Name"`
}

type acceptForm struct {
	Rule    lexer.Token  `parser:"'accept' @Name"`
	At      *lexer.Token `parser:"( 'at' @Name )?"`
	Because lexer.Token  `parser:"'because' @String"`
}

type ruleForm struct {
	Rule     lexer.Token `parser:"'rule' @Name"`
	Severity lexer.Token `parser:"@( 'error' | 'warning' | 'advice' | 'off' )"`
}

var (
	rigGrammar    = grammar[rigForm]()
	policyGrammar = grammar[policyForm]()
	useGrammar    = grammar[useForm]()
	joinGrammar   = grammar[joinForm]()
	acceptGrammar = grammar[acceptForm]()
	ruleGrammar   = grammar[ruleForm]()
)

// rig gives a rig whenever its name can be told, whatever else is wrong.
func (r *reporter) rig(tokens []lexer.Token) Body {
	tokens = r.asName(tokens)
	form := best(r, rigGrammar, tokens, `rig shaft-raise "Three to one at the shaft head"`)
	if form.Name.Value == "" {
		return &Bad{}
	}
	return &Rig{Name: wordOf(form.Name), Title: maybeText(form.Title)}
}

// policy gives a policy whenever its name can be told.
func (r *reporter) policy(tokens []lexer.Token) Body {
	tokens = r.asName(tokens)
	form := best(r, policyGrammar, tokens, `policy quarry-team "House rules of the training ground"`)
	if form.Name.Value == "" {
		return &Bad{}
	}
	return &Policy{Name: wordOf(form.Name), Title: maybeText(form.Title)}
}

func (r *reporter) use(tokens []lexer.Token) Body {
	form := whole(r, useGrammar, tokens, `use "stock.rig"`)
	if form == nil {
		return &Bad{}
	}
	return &Use{Path: textOf(form.Path)}
}

func (r *reporter) join(tokens []lexer.Token) Body {
	form := whole(r, joinGrammar, tokens, "join low.team to high.litter")
	if form == nil {
		return &Bad{}
	}
	return &Join{A: wordOf(form.A), B: wordOf(form.B)}
}

func (r *reporter) accept(tokens []lexer.Token) Body {
	form := whole(r, acceptGrammar, tokens, `accept redirect-loads-anchor at corner because "No room above."`)
	if form == nil {
		return &Bad{}
	}
	because := textOf(form.Because)
	if strings.TrimSpace(because.Value) == "" {
		r.fault(RuleSyntax, because.Span, "accept needs its reason between the quotes: why the finding is none here")
	}
	return &Accept{Rule: wordOf(form.Rule), At: maybeWord(form.At), Because: because}
}

func (r *reporter) ruleSetting(tokens []lexer.Token) Body {
	form := whole(r, ruleGrammar, tokens, "rule redirect-loads-anchor error")
	if form == nil {
		return &Bad{}
	}
	return &RuleSetting{Rule: wordOf(form.Rule), Severity: wordOf(form.Severity)}
}

// whole fits all tokens of a statement to its form; nil if they do not fit, which
// is then reported.
func whole[F any](r *reporter, parser func() *participle.Parser[F], tokens []lexer.Token, example string) *F {
	form, used, ok := read(parser, tokens)
	if ok && used == len(tokens) {
		return form
	}
	misfit(r, parser, tokens, used, example)
	return nil
}

// best is whole, but gives the form as far as it could be filled.
func best[F any](r *reporter, parser func() *participle.Parser[F], tokens []lexer.Token, example string) *F {
	form, used, ok := read(parser, tokens)
	if !ok || used < len(tokens) {
		misfit(r, parser, tokens, used, example)
	}
	return form
}

// asName reports a reserved word that stands as the name after the keyword, and
// gives the tokens with that word made a name, so that they can be read on.
func (r *reporter) asName(tokens []lexer.Token) []lexer.Token {
	if len(tokens) < 2 || tokens[1].Type != keywordClass {
		return tokens
	}
	r.reserved(tokens[1])
	tokens = slices.Clone(tokens)
	tokens[1].Type = nameClass
	return tokens
}

// textOf gives a string's content without quotes and escapes.
func textOf(t lexer.Token) Text {
	content := t.Value[1 : len(t.Value)-1]
	if strings.Contains(content, `\`) {
		content = strings.NewReplacer(`\"`, `"`, `\\`, `\`).Replace(content)
	}
	return Text{Value: strings.ToValidUTF8(content, "\uFFFD"), Span: spanOf(t)}
}

func maybeText(t *lexer.Token) *Text {
	if t == nil {
		return nil
	}
	text := textOf(*t)
	return &text
}
