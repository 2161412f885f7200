package resolve

import (
	"cmp"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// rigWork is one rig while it is resolved.
type rigWork struct {
	*fileWork
	*section
	rig *model.Rig
	// made is what its includes and joins made of it, all its statements in file order.
	made *expansion
	all  []*entry
	// at is the one that is being read.
	at *entry
	// parts finds each part by its name.
	parts map[string]*partWork
	// order are the parts in file order, doubles those whose name was taken.
	order, doubles []*partWork
	// ghosts are the names in statements that could not be read: they are not
	// unknown, and what stands there is no less used.
	ghosts map[string]bool
	// reeves are the reeving statements by the name of their rope.
	reeves map[string]*syntax.Statement
	// meant are the lines that a reeving line may be of which names none.
	meant map[string]bool
	// nameless are how many statements of parts lack their names, or have them torn by
	// characters that cannot be read; excused are the unknown names that may be those.
	nameless int
	excused  map[string]bool
	// unknown are the findings about names that no part has.
	unknown map[unknownName]*diag.Diagnostic
	// spoilt says that a reeving line is in error, even if it is computed as it stands.
	spoilt bool
	// lostReeve says that there is a reeving line whose rope could not be read, and
	// lostInclude an include.
	lostReeve, lostInclude bool
}

// partWork is one part while its rig is resolved.
type partWork struct {
	*model.Part
	// entry is the statement that it was made of, body what that says; nil for a rope
	// that only its reeving line names.
	*entry
	body *syntax.Part
	// nodes are how often ropes touch it, carries how many parts are on it.
	nodes, carries int
	// leg says that a leg of a focal point uses it, named that another part says to be
	// on it, claimed that a claim names it.
	leg, named, claimed bool
	// acted says that its holds with a name acted at some pass, idle that it did
	// not at some, vague that it may, the ends of the run there not being known.
	acted, idle, vague bool
	// torn says that its name may be another one.
	torn bool
	// missed are the ends of the runs where it was idle.
	missed []string
}

// resolveRig resolves one rig. Those that it includes are resolved already.
func (w *fileWork) resolveRig(s *section) {
	s.faults = map[fault]bool{}
	w.current = s
	made := w.expand(s)
	r := &rigWork{
		fileWork: w, section: s, rig: &model.Rig{Name: s.name.Text, Title: s.title}, made: made, all: made.lines,
		parts: map[string]*partWork{}, ghosts: map[string]bool{}, reeves: map[string]*syntax.Statement{},
		meant: map[string]bool{}, excused: map[string]bool{}, unknown: map[unknownName]*diag.Diagnostic{},
	}
	r.rig.Incomplete = made.incomplete
	r.rig.Includes, r.rig.Joins = made.includes, made.joins
	r.place()
	r.readPlain()
	r.readParts()
	r.clip()
	r.rig.Seal()
	r.readAllValues()
	r.readRopes()
	r.checkParts()
	r.closeJoins()
	r.readClaims()
	r.dropIdle()
	s.rig, s.lines, s.size = r.rig, made.lines, size(made.lines)
	s.unsound = r.rig.Incomplete || r.spoilt
	w.current, w.file = nil, w.out.Source
}

// read turns to a statement: what is reported next stands in its file.
func (r *rigWork) read(l *entry) {
	r.at, r.file = l, l.file
}

// place says where the rig stands in the file.
func (r *rigWork) place() {
	span := source.Span{}
	if r.head != nil {
		span = r.head.Span
	} else if len(r.own) > 0 {
		span = r.own[0].Span
	}
	if len(r.own) > 0 {
		span = span.To(r.own[len(r.own)-1].Span)
	}
	r.rig.Place = r.file.At(span)
	r.rig.NamePlace = r.file.At(r.name.Span)
}

// readPlain reads the statements that say nothing of single parts, and what can
// be read of those that are bad.
func (r *rigWork) readPlain() {
	var units *entry
	for _, l := range r.all {
		r.read(l)
		switch body := l.Body.(type) {
		case *syntax.Units:
			if units != nil && units.shared != l.shared {
				units = nil // a rig may have units of its own
			}
			r.readUnits(l, body, units)
			units = cmp.Or(units, l)
		case *syntax.Bad:
			r.readBad(l)
		}
	}
}

// readUnits takes what results are printed in. One rig has one statement for it, one
// that stands before the first rig aside; first is that of two, nil for none.
func (r *rigWork) readUnits(l *entry, body *syntax.Units, first *entry) {
	if first != nil {
		d := r.report(duplicateUnits, l.Span, "",
			"units stands here a second time; one statement says both, as in units kN m")
		related(d, r.file.At(first.Span), "the first one")
		return
	}
	r.rig.Units = nil
	for _, word := range body.Words {
		r.rig.Units = append(r.rig.Units, word.Text)
	}
}

// readBad takes what a statement that could not be read still tells.
func (r *rigWork) readBad(l *entry) {
	s := l.Statement
	switch s.Keyword.Text {
	case "rig", "expect", "accept", "units":
		return
	case "include":
		r.lostInclude = true
	}
	r.rig.Incomplete = true
	for _, name := range s.Body.(*syntax.Bad).Names {
		r.ghosts[name.Text] = true
	}
	if _, isPart := syntax.KindNamed(s.Keyword.Text); isPart {
		r.nameless++
	}
	if s.Keyword.Text == "reeve" {
		name, ok := wordAfterKeyword(s)
		r.lostReeve = r.lostReeve || !ok
		r.reeves[name.Text] = s
	}
}

// wordAfterKeyword gives the name that stands right after the keyword of a
// statement that could not be read.
func wordAfterKeyword(s *syntax.Statement) (syntax.Word, bool) {
	bad, ok := s.Body.(*syntax.Bad)
	if !ok || len(bad.Names) == 0 || len(s.Tokens) < 2 || s.Tokens[1].Span != bad.Names[0].Span {
		return syntax.Word{}, false
	}
	return bad.Names[0], true
}

// sourceOf gives what is said of where a model's values come from.
func sourceOf(s *syntax.Statement) string {
	if s.Trailing != nil {
		return afterHash(*s.Trailing)
	}
	return strings.Join(docOf(s), " ")
}

// docOf gives the text of the comment lines above a statement.
func docOf(s *syntax.Statement) []string {
	var doc []string
	for _, t := range s.Doc {
		doc = append(doc, afterHash(t))
	}
	return doc
}

// afterHash gives the text of a comment.
func afterHash(t syntax.Token) string {
	return strings.TrimSpace(strings.TrimPrefix(t.Text, "#"))
}
