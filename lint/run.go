package lint

import (
	"slices"
	"sort"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lint/house"
)

// Outcome is what comes of examining files.
type Outcome struct {
	// Findings are what is to be reported, sorted by file, place and severity.
	Findings []diag.Diagnostic
	// Accepted is how many more there are that the authors of the rigs accept.
	Accepted int
	// Acceptances and Expectations are all claims of the rigs about findings, in the
	// order of files, rigs and lines, with what became of each.
	Acceptances  []Acceptance
	Expectations []Expectation

	// dim names the rigs of a file of which rules that are Latent see nothing yet.
	dim map[string]bool
}

// Run gives the findings of Examine.
func Run(files []*load.Loaded, rules []*Rule) []diag.Diagnostic {
	return Examine(files, rules).Findings
}

// Examine gives all findings of the files: of their text and names, of the rules in
// each rig, and of the claims about findings. What "expect finding" or "accept" names
// is left out.
//
// Where several rules could say why a rig does not do its job, the first of them
// in the list does.
func Examine(files []*load.Loaded, rules []*Rule) Outcome {
	var all Outcome
	var order []*source.File
	known := Names(rules)
	for _, f := range files {
		order = append(order, f.File)
		of := examineFile(f, rules, known)
		all.Findings = append(all.Findings, of.Findings...)
		all.Accepted += of.Accepted
		all.Acceptances = append(all.Acceptances, of.Acceptances...)
		all.Expectations = append(all.Expectations, of.Expectations...)
		all.dim = of.dim // only asked of one file
	}
	diag.Sort(all.Findings, order)
	return all
}

// examineFile gives the findings of one file.
func examineFile(f *load.Loaded, rules []*Rule, known []string) Outcome {
	e := &examination{file: f, House: HouseOf(f), rules: rules, purses: map[*Rule]*purse{}}
	return e.outcome(known)
}

// outcome looks at every rig of the file and settles the claims.
func (e *examination) outcome(known []string) Outcome {
	f := e.file
	s := &settlement{file: f, house: e.House, rules: e.rules, known: known}
	for _, d := range f.Problems {
		one := finding{rig: rigAt(f.Model, d.Place), ofText: true}
		if d.Severity < diag.Error { // no house rule makes an error of the text right
			var on bool
			d.Severity, on = e.House.Severity(d.Rule, d.Severity)
			one.silent = !on
		}
		one.Diagnostic = d
		s.add(one)
	}
	dim := map[string]bool{}
	for i, rig := range f.Model.Rigs {
		seen := e.look(i)
		dim[rig.Name] = dim[rig.Name] || seen.dim
		for _, d := range seen.found {
			s.add(finding{Diagnostic: d, rig: i})
		}
		for _, d := range seen.silent {
			s.add(finding{Diagnostic: d, rig: i, silent: true})
		}
	}
	for i, rig := range f.Model.Rigs {
		s.settle(i, rig)
	}
	s.policies()
	of := s.left()
	of.dim = dim
	return of
}

// HouseOf gives the house rules in force for a file: the usual ones, those of its policy
// file, and what it says itself, each over those before it.
func HouseOf(f *load.Loaded) *house.Rules {
	layers := [][]*model.Policy{house.Usual()}
	if f.Policy != nil {
		layers = append(layers, f.Policy.Model.Policies)
	}
	return house.Of(append(layers, f.Model.Policies)...)
}

// ofAll marks a finding that stands before the first rig of its file, in what all
// rigs share.
const ofAll = -1

// finding is a finding with the rig that it was made in, by its place in the file.
type finding struct {
	diag.Diagnostic
	rig int
	// ofText says that it comes from reading the file, not from the solved rig.
	ofText bool
	// silent says that the house turned its rule off.
	silent bool
	// expected and accepted say that the author named it in a claim.
	expected, accepted bool
}

// rigAt gives the rig in which a place of the text lies.
func rigAt(file *model.File, place source.Place) int {
	return sort.Search(len(file.Rigs), func(i int) bool {
		return file.Rigs[i].Place.Span.Start > place.Span.Start
	}) - 1
}

// left gives what is to be reported. What stands before the first rig is examined
// in each rig; a finding that is the same in several is reported once.
func (s *settlement) left() Outcome {
	type same struct {
		rule, message string
		span          source.Span
	}
	reported, accepted := map[same]bool{}, map[same]bool{}
	var list []diag.Diagnostic
	for _, f := range s.found {
		key := same{f.Rule, f.Message, f.Place.Span}
		switch {
		case f.silent:
		case f.accepted:
			accepted[key] = true
		case !f.expected && !reported[key]:
			list = append(list, f.Diagnostic)
			reported[key] = true
		}
	}
	for key := range reported { // in another rig
		delete(accepted, key)
	}
	return Outcome{
		Findings: slices.Clip(s.file.Fitted(list)), Accepted: len(accepted),
		Acceptances: s.acceptances, Expectations: s.expectations,
	}
}

// inRig names the rig where a claim stands before the first of several, so that it
// is about each of them: " in low-stage"; empty elsewhere.
func inRig(file *model.File, rig *model.Rig, claim source.Place) string {
	if len(file.Rigs) < 2 || rig.Place.Span.Contains(claim.Span) {
		return ""
	}
	return " in " + Clipped(rig.Name)
}

// InRig names the rig where a claim is about each of several, " in low-stage"; it is
// empty elsewhere.
func (p *Pass) InRig(claim source.Place) string { return inRig(p.file.Model, p.Rig, claim) }
