package lint

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/source"
)

// examined is a file with all that is found in it.
type examined struct {
	file *load.Loaded
	Outcome
}

// census counts findings by rule, part and rig; each severity counts those that are
// at least so grave.
type census map[kindIn]int

type kindIn struct {
	kind
	rig string
}

func (c census) add(k kindIn) {
	for k.severity >= diag.Advice {
		c[k]++
		k.severity--
	}
}

func (x *examined) censusOf(list []diag.Diagnostic) census {
	c := census{}
	for _, d := range list {
		c.add(x.kindOf(d))
	}
	return c
}

func (x *examined) kindOf(d diag.Diagnostic) kindIn {
	return kindIn{kind{d.Rule, d.Subject, d.Severity}, rigNameAt(x.file, d.Place)}
}

// gone counts the findings of a file that are not in it after fixes.
func (x *examined) gone(after *examined) int {
	n, now := 0, after.censusOf(after.Findings)
	for k, before := range x.censusOf(x.Findings) {
		if k.severity == diag.Advice { // which counts graver ones too
			n += max(0, before-now[k])
		}
	}
	return n
}

// all lists what is found, and what the rigs accept and expect, each once.
func (x *examined) all() []diag.Diagnostic { return once(slices.Concat(x.Findings, x.silent())) }

// silent lists what the rigs accept and expect, each once.
func (x *examined) silent() []diag.Diagnostic {
	var list []diag.Diagnostic
	for _, a := range x.Acceptances {
		list = append(list, a.Findings...)
	}
	for _, e := range x.Expectations {
		list = append(list, e.Findings...)
	}
	return once(list)
}

// once drops what is in a list again.
func once(list []diag.Diagnostic) []diag.Diagnostic {
	type same struct {
		rule, message string
		span          source.Span
	}
	seen := map[same]bool{}
	return slices.DeleteFunc(list, func(d diag.Diagnostic) bool {
		s := same{d.Rule, d.Message, d.Place.Span}
		again := seen[s]
		seen[s] = true
		return again
	})
}

// rigNameAt gives the name of the rig in which a place lies; empty before the first.
func rigNameAt(f *load.Loaded, place source.Place) string {
	if i := rigAt(f.Model, place); i >= 0 {
		return f.Model.Rigs[i].Name
	}
	return ""
}
