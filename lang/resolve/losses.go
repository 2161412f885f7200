package resolve

import (
	"slices"
	"sort"

	"fairlead/lang/diag"
	"fairlead/lang/syntax"
)

// linking are the words without which the rig is put together in another way.
var linking = []string{"on", "holds", "sideways", "from", "to"}

// lost says whether the part's statement has a word of which the body knows
// nothing, since what stands there could not be read.
func (p *partWork) lost(word string) bool {
	if p.body == nil || !p.Faulty || p.copy != "" { // a copy has what its original lost
		return false
	}
	written := func(t syntax.Token) bool { return t.Kind == syntax.WordToken && t.Text == word }
	read := func(c syntax.ClauseUse) bool { return c.Word.Text == word }
	if word == "on" && p.body.On != nil || slices.ContainsFunc(p.body.Clauses, read) {
		return false
	}
	return slices.ContainsFunc(p.Tokens, written)
}

// noteLosses sees whether the statement of a part lost something in reading that
// makes the rig another one: any clause that the parser did not know, all of a
// load, or a clause that joins or weighs.
func (r *rigWork) noteLosses(p *partWork) {
	if !p.Faulty || p.copy != "" {
		return
	}
	torn := r.torn[p.Statement] || p.Kind.IsWeight() || slices.ContainsFunc(linking, p.lost)
	for word := range weighing {
		torn = torn || p.lost(word)
	}
	r.rig.Incomplete = r.rig.Incomplete || torn
}

// tornStatements finds the statements in which something could not be read at
// all, a unit that does not fit not counted.
func tornStatements(tree *syntax.Tree) map[*syntax.Statement]bool {
	torn := map[*syntax.Statement]bool{}
	for _, d := range tree.Problems {
		if d.Severity != diag.Error || d.Rule == syntax.RuleBadUnit {
			continue
		}
		after := sort.Search(len(tree.Statements), func(i int) bool {
			return tree.Statements[i].Span.Start > d.Place.Span.Start
		})
		if after > 0 {
			torn[tree.Statements[after-1]] = true
		}
	}
	return torn
}
