package resolve

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// File resolves a tree: it gives what the file means and every fault, those of
// the tree included, in file order. It never fails.
func File(tree *syntax.Tree) (*model.File, []diag.Diagnostic) {
	return resolve(tree, builtIn)
}

// resolve is File, with the catalogue that models are looked up in; that is asked
// for only when a name needs it.
func resolve(tree *syntax.Tree, builtIn func() *catalogue) (*model.File, []diag.Diagnostic) {
	w := newFileWork(tree)
	w.builtIn = builtIn
	w.torn = tornStatements(tree)
	sections := cut(tree)
	w.readStock(tree)
	w.readPolicies(tree)
	w.readUses(tree)
	w.nameRigs(sections)
	w.bound(sections)
	for _, s := range sections {
		w.out.Rigs = append(w.out.Rigs, w.resolveRig(s))
	}
	w.reportIdle()
	w.reportUnusedStock()
	return w.out, w.sorted(tree.Problems)
}

// newFileWork begins the work on a tree.
func newFileWork(tree *syntax.Tree) *fileWork {
	return &fileWork{
		findings: newFindings(tree.File),
		out:      &model.File{Source: tree.File, Tree: tree},
		stock:    map[stockKey]*stockModel{},
		idle:     map[fault]*idlePart{},
	}
}

// fileWork is what the rigs of one file share while it is resolved.
type fileWork struct {
	*findings
	out *model.File
	// stock are the file's own models.
	stock map[stockKey]*stockModel
	// builtIn gives the built-in ones.
	builtIn  func() *catalogue
	rigNames []string
	// rigs finds the rigs of the file by their names.
	rigs map[string]*section
	// torn are the statements in which something could not be read at all.
	torn map[*syntax.Statement]bool
	// idle counts, by the finding, in how many rigs a part of what stands before
	// the first rig has nothing to do: only what is idle in all is reported.
	idle map[fault]*idlePart
	// idleOrder are its keys in the order met.
	idleOrder []fault
}

// idlePart is a finding about a part that several rigs share.
type idlePart struct {
	finding *diag.Diagnostic
	rigs    int
}

// reportUnlessShared reports a part that has nothing to do in one rig; of a part
// that several rigs share it waits for the others.
func (w *fileWork) reportUnlessShared(d *diag.Diagnostic, shared bool) {
	if !shared {
		w.add(d)
		return
	}
	key := fault{d.Rule, d.Place.Span, d.Message}
	if w.idle[key] == nil {
		w.idle[key] = &idlePart{finding: d}
		w.idleOrder = append(w.idleOrder, key)
	}
	w.idle[key].rigs++
}

// reportIdle reports what is idle in every rig.
func (w *fileWork) reportIdle() {
	for _, key := range w.idleOrder {
		if w.idle[key].rigs == len(w.out.Rigs) {
			w.add(w.idle[key].finding)
		}
	}
}

// reportTwice reports a name given twice; what is "rig", "part" and so on.
func (w *fileWork) reportTwice(name syntax.Word, first source.Place, what string) {
	d := w.report(duplicateName, name.Span, name.Text,
		"%s is the name of another %s already; each name is given once", name.Text, what)
	related(d, first, "%s is first named here", name.Text)
}
