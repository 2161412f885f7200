package seeding_test

import (
	"slices"
	"testing"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lint"
	"fairlead/lint/rules"
	"fairlead/lint/seeding"
)

// most is how many faults of one kind are drawn into one rig.
const most = 6

// trial is one fault made, worked out and linted, in a rig without its author's claims.
type trial struct {
	seeding.Seed
	rig    string
	change seeding.Change
	// found are the rules that find it; there says that one of them points to it.
	found []string
	there bool
	// claims says that a claim of the author, had it been left in, would not hold. It is
	// asked of nothing that is found or harmless anyhow.
	claims bool
}

// trials makes a sample of every kind of fault in every rig of the corpus.
func trials(t *testing.T) []*trial {
	t.Helper()
	files := corpus(t)
	list := make([][]*trial, len(files))
	t.Run("rigs", func(t *testing.T) {
		for i, whole := range files {
			t.Run(whole.Model.Rigs[0].Name, func(t *testing.T) {
				t.Parallel()
				list[i] = trialsOf(whole)
			})
		}
	})
	return slices.Concat(list...)
}

func trialsOf(whole *load.Loaded) []*trial {
	rig := whole.Model.Rigs[0].Name
	bare := seeding.Strip(whole)
	before := seeding.Work(bare, rig)
	withClaims := map[string]seeding.Seed{}
	for _, s := range seeding.Of(whole, rig) {
		withClaims[s.Kind.Name+s.Done] = s
	}
	var list []*trial
	for _, s := range seeding.Sample(seeding.Of(bare, rig), most) {
		seeded := s.Load()
		tr := &trial{Seed: s, rig: rig, change: seeding.Compare(before, seeding.Work(seeded, rig))}
		places := s.Places(seeded)
		for _, d := range examined(seeded) {
			tr.found = append(tr.found, d.Rule)
			tr.there = tr.there || s.At(d, places)
		}
		if len(tr.found) == 0 && !tr.change.Harmless() {
			tr.claims = len(examined(withClaims[s.Kind.Name+s.Done].Load())) > 0
		}
		list = append(list, tr)
	}
	return list
}

// examined lints a file. That something which the author accepts is not there any more says
// nothing of a fault, so such findings are left out.
func examined(f *load.Loaded) []diag.Diagnostic {
	return slices.DeleteFunc(lint.Run([]*load.Loaded{f}, rules.All()), func(d diag.Diagnostic) bool {
		return slices.ContainsFunc(lint.ClaimRules(), func(r *lint.Rule) bool { return r.Name == d.Rule })
	})
}
