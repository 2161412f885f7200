package syntax

import "slices"

// cut joins the lines of a file into statements: a statement goes on where its
// last token is a stroke or the next line begins with one. Comment lines between
// do not part it; a blank line and a line that begins with a keyword do.
func cut(tokens []Token, lines []Line) []*Statement {
	var statements []*Statement
	var doc []Token
	offset := 0 // of the line's first token in tokens
	for i := 0; i < len(lines); {
		line := lines[i].Tokens
		if len(line) == 0 || line[0].Kind == CommentToken {
			if doc = append(doc, line...); len(line) == 0 {
				doc = nil
			}
			offset += len(line)
			i++
			continue
		}
		st := &Statement{Doc: doc}
		doc = nil
		last := lastLine(lines, i)
		end := offset
		for ; i <= last; i++ {
			lines[i].Statement = st
			end += len(lines[i].Tokens)
		}
		st.take(tokens[offset:end:end])
		offset = end
		statements = append(statements, st)
	}
	return statements
}

// take gives the statement its tokens and sets its last comment apart.
func (st *Statement) take(tokens []Token) {
	if last := len(tokens) - 1; tokens[last].Kind == CommentToken {
		st.Trailing = &tokens[last]
		tokens = tokens[:last:last]
	}
	st.Tokens = tokens
	st.Span = tokens[0].Span.To(tokens[len(tokens)-1].Span)
}

// lastLine finds the line on which the statement that begins on line first ends.
func lastLine(lines []Line, first int) int {
	last := first
	for {
		next := last + 1
		for next < len(lines) && onlyComment(lines[next]) {
			next++
		}
		if next == len(lines) || len(lines[next].Tokens) == 0 {
			return last
		}
		begin := lines[next].Tokens[0]
		goesOn := begin.Kind == StrokeToken || endsInStroke(lines[last])
		if !goesOn || begin.Kind == WordToken && StartsStatement(begin.Text) {
			return last
		}
		last = next
	}
}

func onlyComment(l Line) bool { return len(l.Tokens) > 0 && l.Tokens[0].Kind == CommentToken }

func endsInStroke(l Line) bool {
	tokens := l.Tokens
	if n := len(tokens); tokens[n-1].Kind == CommentToken {
		tokens = tokens[:n-1]
	}
	return tokens[len(tokens)-1].Kind == StrokeToken
}

// withoutComments gives the tokens that are no comments.
func withoutComments(tokens []Token) []Token {
	isComment := func(t Token) bool { return t.Kind == CommentToken }
	if !slices.ContainsFunc(tokens, isComment) {
		return tokens
	}
	return slices.DeleteFunc(slices.Clone(tokens), isComment)
}
