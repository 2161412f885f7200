package syntax

import (
	"slices"

	"github.com/alecthomas/participle/v2/lexer"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// reeveForm is "reeve" ROPE ":".
type reeveForm struct {
	Rope  lexer.Token `parser:"'reeve' @Name"`
	Colon lexer.Token `parser:"@':'"`
}

// nodeForm is NAME ["("]; what stands in the parentheses is read phrase by phrase.
type nodeForm struct {
	Name lexer.Token  `parser:"@( Name | 'tail' | 'loop' )"`
	Open *lexer.Token `parser:"@'('?"`
}

var (
	reeveGrammar = grammar[reeveForm]()
	nodeGrammar  = grammar[nodeForm]()
)

// reeving reads what stands after the colon of a reeving line.
type reeving struct {
	*reporter
	reeve *Reeve
	// broken says that the path of the rope cannot be told.
	broken bool
	// glued are the strokes without white space, blanks what puts it there. They are
	// reported unless the line is broken: then there is more to mend.
	glued  []lexer.Token
	blanks []diag.Edit
}

// reeveLine reads a reeving line, node by node. A bad clause of a node leaves the
// line usable; a missing node or stroke does not.
func (r *reporter) reeveLine(tokens []lexer.Token) Body {
	form, used, ok := read(reeveGrammar, tokens)
	if !ok && !r.noColon(tokens, used) {
		return &Bad{}
	}
	rv := &reeving{reporter: r, reeve: &Reeve{Rope: wordOf(form.Rope)}}
	rv.path(tokens[:used], tokens[used:])
	if rv.broken {
		return &Bad{}
	}
	rv.reportGlued()
	return rv.reeve
}

// noColon reports a head that is not "reeve ROPE:" and says whether the line can
// be read on, since only the colon lacks.
func (r *reporter) noColon(tokens []lexer.Token, used int) bool {
	switch {
	case used < len(tokens) && tokens[used].Type == invalidClass:
		return false
	case used == 2:
		end := spanOf(tokens[1]).End
		r.fault(RuleSyntax, source.Span{Start: end, End: end}, "%s needs a colon before its first node, as in reeve long: litter / head",
			clip(tokens[1].Value))
		return len(tokens) > 2
	case used < len(tokens) && tokens[used].Type == keywordClass:
		r.reserved(tokens[used])
		return false
	}
	r.fault(RuleSyntax, placeAt(tokens, used), "reeve needs the name of a rope and a colon, as in reeve long: litter / head%s",
		foundAt(tokens, used))
	return false
}

// path reads nodes and strokes in turn.
func (rv *reeving) path(head, tokens []lexer.Token) {
	before := head[len(head)-1]
	for {
		end := slices.IndexFunc(tokens, isStroke)
		if end < 0 {
			rv.piece(before, tokens)
			break
		}
		rv.piece(before, tokens[:end])
		before = tokens[end]
		rv.stroke(before)
		tokens = tokens[end+1:]
	}
	rv.close()
}

func isStroke(t lexer.Token) bool { return t.Type == strokeClass }

// piece reads what stands between two strokes, which should be one node.
func (rv *reeving) piece(before lexer.Token, tokens []lexer.Token) {
	if slices.ContainsFunc(tokens, isInvalid) {
		rv.broken = true // reported by the scanner
		return
	}
	if len(tokens) == 0 || tokens[0].Value == "(" {
		rv.noNode(before, tokens)
		return
	}
	for {
		used := rv.node(tokens)
		if used >= len(tokens) || !rv.noStroke(tokens, used) {
			return
		}
		tokens = tokens[used:]
	}
}

// noNode reports a stroke, or the colon, that no node follows.
func (rv *reeving) noNode(before lexer.Token, tokens []lexer.Token) {
	rv.broken = true
	end := spanOf(before).End
	switch {
	case len(tokens) > 0 && before.Value == "~":
		rv.fault(RuleSyntax, spanOf(tokens[0]), "slack takes no clauses; they stand after the name of a node")
	case len(tokens) > 0:
		rv.fault(RuleSyntax, spanOf(tokens[0]), "parentheses stand after the name of a node, as in top (holds)")
	case before.Value == ":":
		rv.fault(RuleSyntax, source.Span{Start: end, End: end}, "%s needs a node first, the part that it is tied to",
			clip(rv.reeve.Rope.Text))
	default:
		rv.fault(RuleSyntax, source.Span{Start: end, End: end}, "%s needs a node after the stroke %s",
			clip(rv.reeve.Rope.Text), before.Value)
	}
}

// noStroke reports what stands after a node where a stroke should, and says
// whether it is another node.
func (rv *reeving) noStroke(tokens []lexer.Token, at int) bool {
	rv.broken = true
	t := tokens[at]
	if t.Type == keywordClass && isClause(t.Value) {
		rv.fault(RuleSyntax, spanOf(t).To(spanOf(tokens[len(tokens)-1])), "the clauses of %s stand in parentheses, as in top (holds)",
			clip(tokens[at-1].Value))
		return false
	}
	if t.Type == nameClass || t.Type == keywordClass {
		end := spanOf(tokens[at-1]).End
		rv.fault(RuleSyntax, source.Span{Start: end, End: end},
			`%s needs a stroke before %s: / up, \ down or ~ slack`, clip(rv.reeve.Rope.Text), clip(t.Value))
		return true
	}
	rv.fault(RuleSyntax, spanOf(t), "%s stands where a stroke should", clip(t.Value))
	return false
}

// close judges the ends of the line and takes the word loop away from the nodes.
func (rv *reeving) close() {
	nodes := rv.reeve.Nodes
	if rv.broken {
		return
	}
	if len(nodes) == 1 {
		rv.broken = true
		rv.fault(RuleSyntax, nodes[0].Span, "%s needs two nodes or more, as in reeve long: litter / head", clip(rv.reeve.Rope.Text))
		return
	}
	last := len(nodes) - 1
	for i, n := range nodes {
		switch {
		case n.Name.Text != "loop":
		case i != last:
			rv.broken = true
			rv.fault(RuleSyntax, n.Span, "loop stands at the end of a line only")
		case last == 1:
			rv.broken = true
			rv.fault(RuleSyntax, n.Span, "%s needs two nodes or more to be a loop", clip(rv.reeve.Rope.Text))
		default:
			rv.reeve.Nodes, rv.reeve.Loop = nodes[:last:last], &nodes[last].Name
		}
	}
}
