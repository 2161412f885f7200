package syntax

import (
	"slices"

	"github.com/alecthomas/participle/v2/lexer"
)

// headForm is KIND NAME [MODEL].
type headForm struct {
	Kind  lexer.Token  `parser:"@Keyword"`
	Name  lexer.Token  `parser:"@Name"`
	Model *lexer.Token `parser:"@Name?"`
}

// stockForm is "stock" KIND MODEL.
type stockForm struct {
	Kind  lexer.Token `parser:"'stock' @Keyword"`
	Model lexer.Token `parser:"@Name"`
}

var (
	headGrammar  = grammar[headForm]()
	stockGrammar = grammar[stockForm]()
)

// part reads a part statement. Whatever is wrong in its clauses, the part is there.
func (r *reporter) part(tokens []lexer.Token) Body {
	kind := tokens[0].Value
	if !nameAt(tokens, 2) || tokens[1].Value != "on" { // else the name lacks before "on PART"
		tokens = r.asName(tokens)
	}
	head := tokens
	if len(tokens) > 2 && beginsPhrase(tokens, 2) {
		head = tokens[:2]
	}
	form, used, ok := read(headGrammar, head)
	if !ok {
		if used == len(head) || head[used].Type != invalidClass {
			r.fault(RuleSyntax, placeAt(head, used), "%s needs a name first, as in %s%s", kind, kindExample(kind), notAName(head, used))
		}
		return &Bad{}
	}
	part := &Part{Kind: wordOf(form.Kind), Name: wordOf(form.Name), Model: maybeWord(form.Model)}
	r.subject = part.Name.Text
	p := &phrases{reporter: r, taker: article(kind), allowed: ClausesOf(kind)}
	p.read(p.misspelt(part, tokens[used:]))
	part.On, part.Clauses = p.on, p.clauses
	return part
}

// misspelt sees whether the model is a misspelt clause: its word is near a clause
// and what follows is none. It gives the tokens that are left to read.
func (p *phrases) misspelt(part *Part, tokens []lexer.Token) []lexer.Token {
	if part.Model == nil || len(tokens) == 0 || tokens[0].Type != nameClass || beginsPhrase(tokens, 0) {
		return tokens
	}
	if len(nearest(part.Model.Text, slices.Concat(p.allowed, []string{"on"}))) == 0 {
		return tokens
	}
	p.unknownClause(*part.Model)
	part.Model = nil
	return tokens[phraseEnd(tokens):]
}

// stock reads "stock KIND MODEL {CLAUSE}".
func (r *reporter) stock(tokens []lexer.Token) Body {
	if len(tokens) > 1 && (tokens[1].Type == nameClass || tokens[1].Type == keywordClass) && !r.isKind(tokens[1]) {
		return &Bad{}
	}
	form, used, ok := read(stockGrammar, tokens)
	if !ok {
		if used == 2 && used < len(tokens) && tokens[used].Type == keywordClass {
			r.reserved(tokens[used])
		} else if used == len(tokens) || tokens[used].Type != invalidClass {
			r.fault(RuleSyntax, placeAt(tokens, used),
				"stock needs a kind and the name of a model, as in stock pulley twin strength 36 kN%s", foundAt(tokens, used))
		}
		return &Bad{}
	}
	stock := &Stock{Kind: wordOf(form.Kind), Model: wordOf(form.Model)}
	r.subject = stock.Model.Text
	p := &phrases{reporter: r, taker: article(stock.Kind.Text), allowed: ClausesOf(stock.Kind.Text), noOn: "a model is on no part"}
	p.read(tokens[used:])
	stock.Clauses = p.clauses
	return stock
}

// notAName says what stands where a name should.
func notAName(tokens []lexer.Token, at int) string {
	if at < len(tokens) && tokens[at].Type == numberClass {
		return "; a name begins with a letter"
	}
	return foundAt(tokens, at)
}

// isKind reports a word that is no kind of part.
func (r *reporter) isKind(t lexer.Token) bool {
	if _, known := KindNamed(t.Value); known {
		return true
	}
	near := nearest(t.Value, kindWords)
	r.offer(r.fault(RuleSyntax, spanOf(t), "%s is no kind of part%s", clip(t.Value), hint(near)), spanOf(t), near)
	return false
}

// kindExample shows the shortest statement of a kind.
func kindExample(kind string) string { return kind + " " + exampleNames[kind] }

// exampleNames are names that fit the kinds; one for each.
var exampleNames = map[string]string{
	"anchor": "head", "focal": "master", "leg": "left", "edge": "lip", "load": "litter",
	"counterweight": "sack", "hauler": "team", "tender": "belayer", "pulley": "top on head",
	"carabiner": "link on head", "ring": "eye on head", "device": "brake on head",
	"hitch": "grab", "clamp": "grab", "knot": "stop", "rope": "long", "cord": "tie", "sling": "strap",
}

// article gives a kind with its article.
func article(kind string) string {
	if kind == "anchor" || kind == "edge" {
		return "an " + kind
	}
	return "a " + kind
}
