package model

import (
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// File is one rig file resolved: its rigs in file order.
type File struct {
	Source *source.File
	Rigs   []*Rig
	Tree   *syntax.Tree
	// Stock are the models that the file defines.
	Stock []*Stock
	// Uses are the files that it brings in.
	Uses []*Use
	// Policies are the house rules that it states.
	Policies []*Policy
}

// Rig is one rig, with what stands before the file's first "rig" taken in.
type Rig struct {
	Name, Title string
	// Place is from the rig's first to its last statement; NamePlace is the name
	// after "rig", or an empty span at the start of the file.
	Place, NamePlace source.Place
	Parts            []*Part
	// Ropes are the lines that have a reeving line, in file order of those.
	Ropes    []*Rope
	Claims   []*Claim
	Accepted []*Accepted
	// Units are the words of "units"; empty for kN and m.
	Units []string
	// Incomplete says that an error left out something that carries load, so
	// that what is computed is not the rig the author meant.
	Incomplete bool
	// Includes and Joins are the statements that the rig is put together with; what they
	// bring in is among Parts and Ropes.
	Includes []*Include
	Joins    []*Join

	byName map[string]*Part // once sealed
}

// Part finds a part by its name; nil if there is none.
func (r *Rig) Part(name string) *Part {
	if r.byName != nil {
		return r.byName[name]
	}
	for _, p := range r.Parts {
		if p.Name == name {
			return p
		}
	}
	return nil
}

// Claim is one "expect", its names resolved.
type Claim struct {
	*syntax.Expect
	Place source.Place
	// Of and By are the parts named; nil if none was, or if it is unknown (which
	// was reported).
	Of, By *Part
	// Broken says that a name in it is unknown, so that it cannot be judged.
	Broken bool
}

// Accepted is one "accept".
type Accepted struct {
	*syntax.Accept
	Place source.Place
	At    *Part
	// Broken says that its rule or part is unknown.
	Broken bool
}
