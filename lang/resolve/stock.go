package resolve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// stockKey is a model's name within its kind.
type stockKey struct{ kind, name string }

// readStock reads the models that the file defines.
func (w *fileWork) readStock(tree *syntax.Tree) {
	for _, s := range tree.Statements {
		body, ok := s.Body.(*syntax.Stock)
		if !ok {
			continue
		}
		made := &model.Stock{Stock: body, Place: w.file.At(s.Span), Doc: docOf(s), Source: sourceOf(s)}
		for _, c := range body.Clauses {
			w.readStockClause(made, c)
		}
		w.out.Stock = append(w.out.Stock, made)
		key := stockKey{body.Kind.Text, body.Model.Text}
		if old := w.stock[key]; old != nil {
			w.reportTwice(body.Model, w.file.At(old.Model.Span), body.Kind.Text+" model")
			continue
		}
		w.stock[key] = made
	}
}

// readStockClause reads one clause of a model. A model is of no rig, so it can
// name no part.
func (w *fileWork) readStockClause(made *model.Stock, c syntax.ClauseUse) {
	if c.Name != nil && c.Word.Text != "material" {
		w.report(misplacedClause, c.Span, made.Model.Text,
			"%s is a model and can name no part; write %s %s at the part", made.Model.Text, c.Word.Text, c.Name.Text)
		return
	}
	w.readClause(made.Model.Text, made.Kind.Text, &made.Values, c)
}

// modelNamed gives the model of a name: that of the file, else of the files that it
// uses, else the one of the built-in catalogue. Nil if there is none, or if it may be one
// of a file that could not be read.
func (w *fileWork) modelNamed(kind, name string) *model.Stock {
	key := stockKey{kind, name}
	if own := w.stock[key]; own != nil {
		return own
	}
	for _, u := range w.used {
		if of := u.of.work.stock[key]; of != nil {
			return of
		}
	}
	if w.lacking { // what it brings in comes first; the use is reported
		return nil
	}
	return w.builtIn().models[key]
}

// otherModel gives a second model of a name that the file itself does not define, from
// another file that it uses; nil if there is none.
func (w *fileWork) otherModel(kind, name string, first *model.Stock) *model.Stock {
	key := stockKey{kind, name}
	if w.stock[key] != nil {
		return nil
	}
	for _, u := range w.used {
		if of := u.of.work.stock[key]; of != nil && of != first {
			return of
		}
	}
	return nil
}

// modelOf gives the model that a part names; one of which nothing is known is
// reported.
func (r *rigWork) modelOf(p *partWork) *model.Stock {
	name, kind, w := *p.body.Model, p.body.Kind.Text, p.entry.work
	found := w.modelNamed(kind, name.Text)
	switch {
	case found != nil:
		if other := w.otherModel(kind, name.Text, found); other != nil {
			d := r.report(ambiguousName, name.Span, p.Name,
				"%s: two used files define the %s model %s; define it in this file, or name one of them anew", p.Name, kind, name.Text)
			related(d, found.Place, "the one, which counts here")
			related(d, other.Place, "the other")
		}
		return found
	case w.lacking:
		r.rig.Incomplete = true
		return nil
	}
	near := r.nearModels(w, kind, name.Text)
	d := r.report(unknownModel, name.Span, p.Name,
		"%s: its values stay unset, since no %s model %s is known%s", p.Name, kind, name.Text, didYouMean(near))
	r.offerName(d, name, near)
	return nil
}

// nearModels gives the models of a kind, of a file, of those that it uses and of the
// catalogue, whose names are nearest to a word.
func (r *rigWork) nearModels(of *fileWork, kind, word string) []string {
	lists := [][]*model.Stock{of.out.Stock}
	for _, u := range of.used {
		lists = append(lists, u.of.work.out.Stock)
	}
	all := slices.Concat(append(lists, of.builtIn().list)...)
	if !r.hint.afford(len(all)) {
		return nil
	}
	var names []string
	for _, s := range all {
		if s.Kind.Text == kind {
			names = append(names, s.Model.Text)
		}
	}
	return r.hint.near(word, uniqueNames(names))
}
