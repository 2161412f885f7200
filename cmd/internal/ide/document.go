package ide

import (
	"path"
	"slices"
	"strings"
	"sync"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
	"fairlead/lint"
	"fairlead/solve"
	"fairlead/solve/report"
)

// Document is one file in one version, with all that it means.
type Document struct {
	// Path is the absolute path, Version that of the open text; 0 for a saved file.
	Path    string
	Version int32
	*load.Loaded

	desk   *Desk
	memory *memory
	// read are the names of the files that were read for it, itself among them.
	read map[string]bool

	names    sync.Once
	mentions []mention

	speaking sync.Mutex
	speeches map[int]*report.Speech

	// outcome is what was found; nil before. It is guarded by memory.examining.
	outcome *lint.Outcome
}

// Findings gives what is wrong with the document. One version of a file is examined at a
// time. It gives up, and ok is false, when stop says so; a nil stop never does.
func (d *Document) Findings(stop func() bool) (outcome lint.Outcome, ok bool) {
	d.memory.examining.Lock()
	defer d.memory.examining.Unlock()
	if d.outcome != nil {
		return *d.outcome, true
	}
	outcome, ok = d.memory.findings.Examine(d.Loaded, stop)
	if ok {
		d.outcome = &outcome
	}
	return outcome, ok
}

// DependsOn says whether a change of another file may change what is found in the
// document.
func (d *Document) DependsOn(other string) bool {
	name := slashed(other)
	if d.read[name] || path.Base(name) == load.PolicyName {
		return true
	}
	for _, used := range d.Uses() { // one that could not be read, or that has another name, too
		if path.Base(used.File.Name) == path.Base(name) {
			return true
		}
	}
	return false
}

// figures gives the figures of one of the document's rigs; nil if a newer version came
// before its turn to be solved.
func (d *Document) figures(rig int) *figures {
	res, ok := d.memory.findings.Result(d.Loaded, rig, d.stale)
	if !ok {
		return nil
	}
	d.speaking.Lock()
	defer d.speaking.Unlock()
	if d.speeches == nil {
		d.speeches = map[int]*report.Speech{}
	}
	if d.speeches[rig] == nil {
		d.speeches[rig] = report.SpeechOf(res)
	}
	return &figures{Speech: d.speeches[rig], rig: d.Model.Rigs[rig], result: res}
}

// stale says whether a newer version of the document is on the desk.
func (d *Document) stale() bool {
	d.desk.mu.Lock()
	defer d.desk.mu.Unlock()
	return d.desk.texts[d.Path].Version != d.Version
}

// figures says what was computed of a rig. The rig that was solved may be the same one
// of an earlier version: its parts and ropes have the same places in their lists.
type figures struct {
	*report.Speech
	rig    *model.Rig
	result *solve.Result
}

func (f *figures) part(p *model.Part) *model.Part { return f.result.Rig.Parts[p.Index] }

func (f *figures) rope(r *model.Rope) *model.Rope {
	return f.result.Rig.Ropes[slices.Index(f.rig.Ropes, r)]
}

// shared marks what stands before the first rig of a document.
const shared = -1

// rigAt gives the rig in which a place lies: its index, or shared. A document without
// "rig" is one rig.
func (d *Document) rigAt(offset int) int {
	if !d.headed() {
		return 0
	}
	at := shared
	for i, r := range d.Model.Rigs {
		if r.Place.Span.Start <= offset {
			at = i
		}
	}
	return at
}

// headed says whether the document says "rig" somewhere.
func (d *Document) headed() bool {
	rigs := d.Model.Rigs
	return len(rigs) == 0 || len(rigs) > 1 || rigs[0].NamePlace.Span.Len() > 0
}

// rigsAt gives the rigs that a place is of: all of them for one that they share.
func (d *Document) rigsAt(offset int) []*model.Rig { return d.rigsIn(d.rigAt(offset)) }

// rigsIn gives a rig by its index, or all of them for what they share.
func (d *Document) rigsIn(i int) []*model.Rig {
	if i < 0 || i >= len(d.Model.Rigs) {
		return d.Model.Rigs
	}
	return d.Model.Rigs[i : i+1]
}

// notation says whether a place is one where notation stands: anywhere in a rig file,
// inside the rig blocks of notes.
func (d *Document) notation(offset int) bool {
	if d.Notes == nil {
		return true
	}
	for _, b := range d.Notes.Blocks {
		for _, line := range b.Lines {
			if line.Start <= offset && (offset < line.End || offset == line.End && !strings.HasSuffix(d.File.Whole[:offset], "\n")) {
				return true
			}
		}
	}
	return false
}

// fit makes edits of the document of edits of its notation; ok is false if they do not
// fit into its blocks.
func (d *Document) fit(edits ...diag.Edit) (fitted []diag.Edit, ok bool) {
	list := d.Fitted([]diag.Diagnostic{{Fixes: []diag.Fix{{Edits: edits}}}})
	if len(list[0].Fixes) == 0 {
		return nil, false
	}
	return list[0].Fixes[0].Edits, true
}

// statementAt gives the statement on whose lines a place lies; nil on a blank line and
// between statements.
func (d *Document) statementAt(offset int) *syntax.Statement {
	return d.Tree.Lines[d.File.Line(offset)].Statement
}

// tokenAt gives the token that a place touches, of two the one that a word is. Ok is
// false on white space.
func (d *Document) tokenAt(offset int) (token syntax.Token, ok bool) {
	for _, t := range d.Tree.Lines[d.File.Line(offset)].Tokens {
		if t.Span.Start <= offset && offset <= t.Span.End && (!ok || t.Kind == syntax.WordToken || t.Span.Start == offset && token.Kind != syntax.WordToken) {
			token, ok = t, true
		}
	}
	return token, ok
}

// linesOf gives the span of the lines of a statement, its comment included.
func linesOf(tree *syntax.Tree, statement int) source.Span {
	span := tree.Statements[statement].Span
	first, last := tree.File.Line(span.Start), tree.File.Line(span.End)
	return source.Span{Start: tree.File.LineSpan(first).Start, End: tree.File.LineSpan(last).End}
}
