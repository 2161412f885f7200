package syntax

import (
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/source"
)

// Memory reads one text in version after version: a statement that stood in the
// version before, wherever, is not read again. The zero Memory has read nothing. Its
// Parse is not for several goroutines at once.
type Memory struct {
	// known are the statements of the version before, by their text.
	known map[string]*reading
}

// reading is what a statement was read as.
type reading struct {
	keyword Word
	body    Body
	// faulty says that an error was reported, not counting those of the scanner.
	faulty   bool
	problems []diag.Diagnostic // their places are in no file
	start    int               // where the statement stood
}

// Parse reads the next version of the text. It gives what Parse gives.
func (m *Memory) Parse(f *source.File) *Tree {
	now := map[string]*reading{}
	tree := readAll(f, func(r *reporter, st *Statement) {
		text := f.Slice(st.Span)
		one := now[text]
		if one == nil {
			one = m.known[text]
		}
		if one == nil {
			one = r.readApart(st, strings.Clone(text))
		}
		r.recall(st, one)
		now[text] = one
	})
	m.known = now
	return tree
}

// readApart reads a statement from a text of its own, so that what is remembered of
// it does not keep the whole file.
func (r *reporter) readApart(st *Statement, text string) *reading {
	apart := &Statement{Span: st.Span, Tokens: make([]Token, len(st.Tokens))}
	for i, t := range st.Tokens {
		t.Text = text[t.Span.Start-st.Span.Start : t.Span.End-st.Span.Start]
		apart.Tokens[i] = t
	}
	alone := &reporter{file: &source.File{Text: r.file.Text}}
	alone.statement(apart)
	return &reading{
		keyword: apart.Keyword, body: apart.Body, faulty: alone.faulty, start: st.Span.Start,
		problems: shift(0).problems(alone.problems, nil),
	}
}

// recall gives a statement what one of the same text was read as.
func (r *reporter) recall(st *Statement, one *reading) {
	by := shift(st.Span.Start - one.start)
	st.Keyword, st.Body = by.word(one.keyword), by.body(one.body)
	r.problems = append(r.problems, by.problems(one.problems, r.file)...)
	r.faulty = r.faulty || one.faulty
}
