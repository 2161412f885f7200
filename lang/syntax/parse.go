package syntax

import (
	"slices"

	"github.com/alecthomas/participle/v2/lexer"

	"fairlead/lang/source"
)

// Parse reads a whole file. It never fails: every fault of the text is in
// Problems, in file order, and a statement that cannot be read is a *Bad.
func Parse(f *source.File) *Tree { return readAll(f, (*reporter).statement) }

// readAll reads a whole file with a way to read one statement.
func readAll(f *source.File, statement func(*reporter, *Statement)) *Tree {
	r := &reporter{file: f}
	tokens, lines := scan(f, r)
	scanned := len(r.problems)
	tree := &Tree{File: f, Lines: lines, Statements: cut(tokens, lines)}
	next := 0 // the first fault of the scanner that lies after the statements read
	for _, st := range tree.Statements {
		r.faulty, r.subject = false, ""
		for ; next < scanned && r.problems[next].Place.Span.Start < st.Span.End; next++ {
			r.faulty = r.faulty || r.problems[next].Place.Span.Start >= st.Span.Start
		}
		statement(r, st)
		st.Faulty = r.faulty
	}
	tree.Problems = r.bound()
	return tree
}

// statement reads one statement by its first word.
func (r *reporter) statement(st *Statement) {
	tokens := classify(withoutComments(st.Tokens))
	first := tokens[0]
	if first.Type == nameClass || first.Type == keywordClass {
		st.Keyword = wordOf(first)
	}
	switch {
	case first.Type == invalidClass:
		st.Body = &Bad{} // reported by the scanner
	case !StartsStatement(st.Keyword.Text):
		r.unknownStatement(tokens)
		st.Body = &Bad{}
	default:
		st.Body = r.body(tokens)
	}
	r.faulty = r.faulty || slices.ContainsFunc(tokens, isInvalid)
	if bad, is := st.Body.(*Bad); is {
		bad.Names = names(tokens)
		r.faulty = true
	}
}

func (r *reporter) body(tokens []lexer.Token) Body {
	switch tokens[0].Value {
	case "rig":
		return r.rig(tokens)
	case "use":
		return r.use(tokens)
	case "include":
		return r.include(tokens)
	case "join":
		return r.join(tokens)
	case "reeve":
		return r.reeveLine(tokens)
	case "expect":
		return r.expect(tokens)
	case "accept":
		return r.accept(tokens)
	case "units":
		return r.units(tokens)
	case "stock":
		return r.stock(tokens)
	case "policy":
		return r.policy(tokens)
	case "require":
		return r.require(tokens)
	case "rule":
		return r.ruleSetting(tokens)
	}
	return r.part(tokens)
}

// names gives the words of a statement that may be names.
func names(tokens []lexer.Token) []Word {
	var out []Word
	for _, t := range tokens {
		if t.Type == nameClass {
			out = append(out, wordOf(t))
		}
	}
	return out
}

// unknownStatement reports a line that begins with no keyword.
func (r *reporter) unknownStatement(tokens []lexer.Token) {
	first := tokens[0]
	word := wordOf(first).Text
	candidates := append(Statements(), kindWords...)
	switch {
	case first.Type == strokeClass:
		r.fault(RuleUnknownStatement, spanOf(first), "the stroke %s goes on with no reeving line; only comment lines may stand between", first.Value)
	case first.Type == keywordClass:
		r.fault(RuleUnknownStatement, spanOf(first), "%s begins no statement; a clause stands on the line of its part", word)
	case first.Type != nameClass:
		r.fault(RuleUnknownStatement, spanOf(first), "a statement begins with its keyword, such as pulley or reeve, not with %s", clip(first.Value))
	case len(tokens) > 1 && tokens[1].Value == ":":
		r.fault(RuleUnknownStatement, spanOf(first), "%s begins no statement; a reeving line is written reeve %s: …", clip(word), clip(word))
	default:
		near := nearest(word, candidates)
		d := r.fault(RuleUnknownStatement, spanOf(first), "%s begins no statement%s", clip(word),
			hintOr(near, "; a line begins with a kind of part, such as pulley, or with "+list(statements, "or")))
		r.offer(d, spanOf(first), near)
	}
}
