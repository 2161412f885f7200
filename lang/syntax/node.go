package syntax

import (
	"slices"

	"github.com/alecthomas/participle/v2/lexer"
)

// node reads one node and gives the number of tokens that it took.
func (rv *reeving) node(tokens []lexer.Token) int {
	form, used, ok := read(nodeGrammar, tokens[:min(2, len(tokens))])
	if !ok {
		return rv.noName(tokens)
	}
	node := Node{Name: wordOf(form.Name), Span: spanOf(form.Name)}
	if form.Open != nil {
		inside, end := rv.parentheses(tokens, used)
		node.Span.End = spanOf(tokens[end-1]).End
		if used < end { // else nothing stands after a parenthesis that is not closed
			rv.inside(&node, inside)
		}
		used = end
	}
	rv.reeve.Nodes = append(rv.reeve.Nodes, node)
	return used
}

// noName reports what stands where the name of a node should.
func (rv *reeving) noName(tokens []lexer.Token) int {
	rv.broken = true
	if tokens[0].Type == keywordClass {
		rv.reserved(tokens[0])
		if len(tokens) > 1 && tokens[1].Value == "(" {
			_, used := rv.parentheses(tokens, 2)
			return used
		}
		return 1
	}
	rv.fault(RuleSyntax, spanOf(tokens[0]), "%s stands where the name of a node should", clip(tokens[0].Value))
	return len(tokens)
}

// parentheses gives what stands between the parenthesis before tokens[from] and
// its end, and the index after it. Since no stroke stands inside, one that is not
// closed ends where the node does.
func (rv *reeving) parentheses(tokens []lexer.Token, from int) (inside []lexer.Token, used int) {
	depth := 1
	for i := from; i < len(tokens); i++ {
		switch tokens[i].Value {
		case "(":
			depth++
		case ")":
			depth--
		}
		if depth == 0 {
			return tokens[from:i], i + 1
		}
	}
	rv.fault(RuleSyntax, spanOf(tokens[from-1]), "the parenthesis after %s is not closed", clip(tokens[from-2].Value))
	return tokens[from:], len(tokens)
}

// inside reads the clauses and the knot of a node.
func (rv *reeving) inside(node *Node, tokens []lexer.Token) {
	r := rv.reporter
	if word := node.Name.Text; word == "tail" || word == "loop" {
		r.fault(RuleSyntax, node.Span, "%s is a word of the line, not a part, and takes no clauses", word)
		return
	}
	if len(tokens) == 0 {
		r.fault(RuleSyntax, node.Span, "%s has empty parentheses; a clause such as holds, or a knot, stands in them", clip(node.Name.Text))
		return
	}
	if i := slices.IndexFunc(tokens, func(t lexer.Token) bool { return t.Value == "(" }); i >= 0 {
		r.fault(RuleSyntax, spanOf(tokens[i]), "%s has parentheses in its parentheses", clip(node.Name.Text))
		return
	}
	r.subject = node.Name.Text
	p := &phrases{reporter: r, taker: "a node", allowed: nodeClauses, noOn: "on stands in the statement of the part", takesKnot: true}
	p.read(tokens)
	r.subject = ""
	node.Clauses, node.Knot = p.clauses, p.knot
}
