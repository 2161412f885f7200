package ide

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// ItemSort says what an item of a completion is.
type ItemSort int

const (
	StatementItem ItemSort = iota // a word that begins a statement
	ClauseItem
	WordItem // another word of the notation
	PartItem
	RigItem
	ModelItem
	RuleItem
	UnitItem
	StrokeItem
)

// Item is one thing that may stand at a place.
type Item struct {
	Label string
	Sort  ItemSort
	// Detail says in a few words what it is, Doc more, as Markdown; both may be empty.
	Detail, Doc string
	// Span is what it replaces, Text what it writes.
	Span source.Span
	Text string
	// rank puts what fits best first.
	rank int
}

// Complete gives what may stand at a place, what fits best first. It reads what the
// statement says before the place; what comes after does not matter.
func (d *Document) Complete(offset int) []Item {
	c := d.completionAt(offset)
	if c == nil {
		return nil
	}
	c.statement()
	slices.SortStableFunc(c.items, func(a, b Item) int { return cmp.Compare(a.rank, b.rank) })
	return c.items
}

// completion is the place at which something is to be completed.
type completion struct {
	doc *Document
	// rigs are those that the place is of.
	rigs []*model.Rig
	// before are the tokens of the statement that stand before what is typed.
	before []syntax.Token
	// typed is what is typed already.
	typed source.Span
	// begun says that the place is on the line on which its statement begins.
	begun bool
	items []Item
	seen  map[string]bool
}

// completionAt finds what stands before a place; nil in comments and texts
// and outside the blocks of notes.
func (d *Document) completionAt(offset int) *completion {
	if !d.notation(offset) {
		return nil
	}
	c := &completion{doc: d, typed: source.Span{Start: offset, End: offset}, seen: map[string]bool{}}
	for _, t := range d.tokensUpTo(offset) {
		switch inside := t.Span.Start < offset && offset <= t.Span.End; {
		case t.Kind == syntax.CommentToken:
			if inside {
				return nil
			}
		case inside && (t.Kind == syntax.StringToken || t.Kind == syntax.InvalidToken && strings.HasPrefix(t.Text, `"`)):
			if offset < t.Span.End || t.Kind == syntax.InvalidToken {
				return nil
			}
			c.before = append(c.before, t)
		case inside && (t.Kind == syntax.WordToken || t.Kind == syntax.InvalidToken):
			c.typed = t.Span
		default:
			c.before = append(c.before, t)
		}
	}
	c.rigs = d.rigsAt(offset)
	return c
}

// tokensUpTo gives the tokens of the statement that a place is in which begin before it.
// A line below one that ends in a stroke goes on with it.
func (d *Document) tokensUpTo(offset int) []syntax.Token {
	line := d.File.Line(offset)
	st := d.Tree.Lines[line].Statement
	if st == nil {
		st = d.dangling(line)
	}
	var tokens []syntax.Token
	if st != nil {
		tokens = st.Tokens
	}
	// A comment is no token of a statement where it ends it.
	if n := len(d.Tree.Lines[line].Tokens); n > 0 {
		if last := d.Tree.Lines[line].Tokens[n-1]; last.Kind == syntax.CommentToken {
			tokens = append(slices.Clone(tokens), last)
		}
	}
	return slices.DeleteFunc(slices.Clone(tokens), func(t syntax.Token) bool { return t.Span.Start >= offset })
}

// dangling gives the statement above a line that ends in a stroke, with nothing but
// comment lines between.
func (d *Document) dangling(line int) *syntax.Statement {
	for line--; line >= 0; line-- {
		l := d.Tree.Lines[line]
		switch {
		case len(l.Tokens) == 0:
			return nil
		case l.Statement != nil:
			if last := l.Statement.Tokens[len(l.Statement.Tokens)-1]; last.Kind == syntax.StrokeToken {
				return l.Statement
			}
			return nil
		}
	}
	return nil
}

// add offers an item, once.
func (c *completion) add(i Item) {
	if c.seen[i.Label] {
		return
	}
	c.seen[i.Label] = true
	i.Span = c.typed
	if i.Text == "" {
		i.Text = i.Label
	}
	// A word right after a stroke or a colon gets a space before it.
	if r, _ := utf8.DecodeLastRuneInString(c.doc.File.Text[:c.typed.Start]); strings.ContainsRune(`/\~:`, r) {
		i.Text = " " + i.Text
	}
	c.items = append(c.items, i)
}

// words offers words of the notation.
func (c *completion) words(list ...string) {
	for _, w := range list {
		c.add(Item{Label: w, Sort: WordItem, Doc: clauseText(w)})
	}
}

// word gives the text of the n-th token before the place; empty without one.
func (c *completion) word(n int) string {
	if n < len(c.before) {
		return c.before[n].Text
	}
	return ""
}

// statement offers what goes on with the statement.
func (c *completion) statement() {
	if len(c.before) == 0 {
		c.begin()
		return
	}
	switch keyword := c.word(0); keyword {
	case "reeve":
		c.reeve()
	case "stock":
		c.stock()
	default:
		if _, isKind := syntax.KindNamed(keyword); isKind {
			c.part(keyword)
			return
		}
		if form := formOf(keyword); form != nil {
			form.follow(c, 1, func(int) {})
		}
	}
}

// begin offers the words that begin a statement.
func (c *completion) begin() {
	for _, k := range syntax.Kinds() {
		c.add(Item{Label: k.Word, Sort: StatementItem, Detail: k.Meaning, Doc: kindText(k.Word)})
	}
	for _, w := range syntax.Statements() {
		c.add(Item{Label: w, Sort: StatementItem, Doc: clauseText(w), rank: rankOf(w)})
	}
}

// rankOf puts the statements of rigs before those of house rules.
func rankOf(statement string) int {
	if wholeFile(&syntax.Statement{Keyword: syntax.Word{Text: statement}}) {
		return 1
	}
	return 0
}
