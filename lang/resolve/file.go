package resolve

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// Resolved is what a file means.
type Resolved struct {
	Model *model.File
	// Problems is every fault, those of the tree included, in file order.
	Problems []diag.Diagnostic

	work *fileWork // what another file that uses this one asks; it changes no more
}

// File resolves the tree of a file that uses no other one: it gives what the file means
// and every fault. It never fails.
func File(tree *syntax.Tree) (*model.File, []diag.Diagnostic) {
	r := Using(tree, nil)
	return r.Model, r.Problems
}

// Using resolves a tree. What the file uses is asked of open; nil opens nothing.
func Using(tree *syntax.Tree, open Opener) *Resolved { return resolve(tree, open, builtIn) }

// resolve is Using, with the catalogue that models are looked up in; that is asked
// for only when a name needs it.
func resolve(tree *syntax.Tree, open Opener, builtIn func() *catalogue) *Resolved {
	w := newFileWork(tree)
	w.builtIn = builtIn
	w.torn = tornStatements(tree)
	sections := cut(tree)
	w.readStock(tree)
	w.readPolicies(tree)
	w.readUses(tree, open)
	w.nameRigs(sections)
	w.bound(sections)
	for _, s := range w.inOrder(sections) {
		w.resolveRig(s)
	}
	for _, s := range sections {
		w.out.Rigs = append(w.out.Rigs, s.rig)
	}
	w.reportIdle()
	return &Resolved{Model: w.out, Problems: w.sorted(tree.Problems), work: w}
}

// newFileWork begins the work on a tree.
func newFileWork(tree *syntax.Tree) *fileWork {
	return &fileWork{
		findings: newFindings(tree.File),
		out:      &model.File{Source: tree.File, Tree: tree},
		stock:    map[stockKey]*model.Stock{},
		idle:     map[said]*idlePart{},
	}
}

// fileWork is what the rigs of one file share while it is resolved.
type fileWork struct {
	*findings
	out *model.File
	// stock are the file's own models.
	stock map[stockKey]*model.Stock
	// builtIn gives the built-in ones.
	builtIn func() *catalogue
	// rigNames are the names of the rigs of the file, includable those with the rigs of
	// the files that it uses, once asked for.
	rigNames, includable []string
	// rigs finds the rigs of the file by their names, circular are the includes that lead
	// back to their own rig.
	rigs     map[string]*section
	circular map[inclusion]bool
	// copied is how many words the copies of the file have.
	copied int
	// used are the files that it uses; lacking says that there is one more, which could
	// not be had.
	used    []*usedFile
	lacking bool
	// torn are the statements in which something could not be read at all.
	torn map[*syntax.Statement]bool
	// idle counts, by the finding, in how many rigs a part of what stands before
	// the first rig has nothing to do: only what is idle in all is reported.
	idle map[said]*idlePart
	// idleOrder are its keys in the order met.
	idleOrder []said
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
	key := said{d.Rule, d.Place, d.Message}
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
