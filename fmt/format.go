package rigfmt

import (
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// Format gives the text of a file in the standard style. If the text has errors
// they are the problems, and the text is as it was. Formatting a formatted text
// changes nothing.
func Format(f *source.File) (text string, problems []diag.Diagnostic) {
	tree := syntax.Parse(f)
	if problems = errorsOf(tree); len(problems) > 0 {
		return f.Text, problems
	}
	var out strings.Builder
	out.Grow(len(f.Text) + len(f.Text)/4)
	end := lineEnd(f)
	for _, line := range layOut(tree) {
		out.WriteString(line)
		out.WriteString(end)
	}
	return out.String(), nil
}

// errorsOf gives the errors of a text.
func errorsOf(tree *syntax.Tree) []diag.Diagnostic {
	var errs []diag.Diagnostic
	for _, p := range tree.Problems {
		if p.Severity == diag.Error {
			errs = append(errs, p)
		}
	}
	return errs
}

// lineEnd gives the line end of the first line.
func lineEnd(f *source.File) string {
	end := f.LineSpan(0).End
	if strings.HasPrefix(f.Text[end:], "\r\n") {
		return "\r\n"
	}
	return "\n"
}

// layOut gives the lines of the formatted file: blank lines and comment lines
// stay where they are, and statements are written group by group.
func layOut(tree *syntax.Tree) []string {
	var out []string
	g := &group{file: tree.File}
	blank := false
	for i := 0; i < len(tree.Lines); i++ {
		line := tree.Lines[i]
		if len(line.Tokens) == 0 {
			out = append(out, g.close()...)
			blank = len(out) > 0
			continue
		}
		if blank {
			out = append(out, "")
			blank = false
		}
		if line.Statement == nil {
			g.members = append(g.members, member{comment: line.Tokens[0].Text})
			continue
		}
		if class := classOf(line.Statement); class != g.class {
			out = append(out, g.close()...)
			g.class = class
		}
		g.members = append(g.members, member{statement: line.Statement})
		for i+1 < len(tree.Lines) && tree.Lines[i+1].Statement == line.Statement {
			i++
		}
	}
	return append(out, g.close()...)
}
