package model

import (
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// Stock is one "stock KIND MODEL …": a named set of values for a kind of part,
// of the file itself or of the built-in catalogue. The parts that name it have
// its values.
type Stock struct {
	*syntax.Stock
	// Place is the whole statement.
	Place source.Place
	// Doc is the text of the comment lines directly above, without "#".
	Doc []string
	// Source says where the values come from: the comment beside the statement,
	// or else the lines above it. It is empty without either.
	Source string
	Values Values
}

// gave says whether a place is in the statement.
func (s *Stock) gave(at source.Place) bool {
	return at.File == s.Place.File && s.Place.Span.Contains(at.Span)
}

// Use is one "use "file"".
type Use struct {
	*syntax.Use
	Place source.Place
	// File is the file used; nil if it could not be.
	File *File
}

// Include is one "include RIG as NAME …". The parts of the copy are among the rig's,
// with the copy's name and a dot before theirs. Their places lie in a copy of the file
// that they come from (source.File.Copy), whose home is the name after "as".
type Include struct {
	*syntax.Include
	Place source.Place
	// Of is the rig that was copied; nil if no copy could be made.
	Of *Rig
}

// Join is one "join END to END".
type Join struct {
	*syntax.Join
	Place source.Place
	// Remains is the part that is in the place of both ends; nil if they could not be
	// joined. Of a hauler and a load that is a knot with the name of the load.
	Remains *Part
}

// Policy is what one "policy" statement begins: the figures and rule settings up
// to the next one.
type Policy struct {
	// Name and Title are empty where "require" or "rule" stands without a policy.
	Name, Title string
	// Place is from the first to the last statement.
	Place    source.Place
	Requires []*Require
	Rules    []*RuleSetting
}

// Require is one figure of a policy.
type Require struct {
	*syntax.Require
	Place source.Place
	// Source says where the figure comes from: the comment beside the statement, or
	// else the lines above it. It is empty without either.
	Source string
}

// RuleSetting is one "rule NAME SEVERITY" of a policy.
type RuleSetting struct {
	*syntax.RuleSetting
	Place source.Place
	// Source says why, as that of Require does.
	Source string
}
