package seeding

import (
	"iter"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// inOrder gives the parts that have a statement, with it, in file order.
func (b *board) inOrder() iter.Seq2[*model.Part, *syntax.Part] {
	of := b.statements()
	return func(yield func(*model.Part, *syntax.Part) bool) {
		for _, p := range b.rig.Parts {
			if body := of[p]; body != nil && !yield(p, body) {
				return
			}
		}
	}
}

// rewrite gives the edit that makes a part another kind with other clauses, on the same
// part as before.
func (b *board) rewrite(p *model.Part, kind string, clauses []string) diag.Edit {
	words := []string{kind, p.Name}
	if p.On != nil {
		words = append(words, "on "+p.On.Name)
	}
	return replace(p.Place, strings.Join(append(words, clauses...), "  "))
}

// nameMisspelt swaps two letters of a name wherever the rig uses it but where it is given.
func nameMisspelt(b *board) []Seed {
	var list []Seed
	wrong := func(at source.Place) {
		name := at.Text()
		if bad := misspelt(name); bad != name && b.rig.Part(bad) == nil {
			s := seed(name+" is spelt "+bad, nil, replace(at, bad))
			list = append(list, s)
		}
	}
	for p := range b.inOrder() {
		if p.On != nil && p.OnPlace.Text() != "" {
			wrong(p.OnPlace)
		}
	}
	b.eachNode(func(_ *model.Rope, _ int, n model.Node) {
		if n.Part != nil {
			wrong(n.NamePlace)
		}
	})
	return list
}

// misspelt swaps the first two letters of a name, from the second on, that differ.
func misspelt(name string) string {
	letters := []rune(name)
	for i := 2; i < len(letters); i++ {
		if x, y := letters[i-1], letters[i]; x != y && x != '-' && y != '-' && x != '.' && y != '.' {
			letters[i-1], letters[i] = y, x
			break
		}
	}
	return string(letters)
}

// partLeftOut forgets the statement of a part.
func partLeftOut(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		list = append(list, seed(p.Name+" has no statement", []*model.Part{p}, b.erase([]source.Span{p.Place.Span}, []*model.Part{p})...))
	}
	return list
}

// nameTwice gives a part the name of the one of its kind before it.
func nameTwice(b *board) []Seed {
	var list []Seed
	last := map[model.Kind]*model.Part{}
	for p := range b.inOrder() {
		if q := last[p.Kind]; q != nil {
			list = append(list, seed(p.Name+" is called "+q.Name+" too", []*model.Part{q}, replace(p.NamePlace, q.Name)))
		}
		last[p.Kind] = p
	}
	return list
}

// slips are the slips of the pen with a unit.
var slips = map[string]string{"kN": "N", "mm": "m", "kg": "t", "lbf": "N", "lb": "t"}

// unitMistaken writes the wrong unit behind a strength, a cord, a diameter or a mass.
func unitMistaken(b *board) []Seed {
	var list []Seed
	for p := range b.inOrder() {
		for _, word := range []string{"strength", "cord", "diameter", "mass"} {
			at, ok := b.clause(p, word)
			if !ok {
				continue
			}
			text := at.Text()
			i := strings.LastIndexByte(text, ' ')
			if unit := slips[text[i+1:]]; unit != "" {
				list = append(list, seed(p.Name+" says "+text[:i+1]+unit, []*model.Part{p}, replace(at, text[:i+1]+unit)))
			}
		}
	}
	return list
}
