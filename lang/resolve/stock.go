package resolve

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// stockKey is a model's name within its kind.
type stockKey struct{ kind, name string }

// stockModel is a model with what is known of its use.
type stockModel struct {
	*model.Stock
	used bool
}

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
		w.stock[key] = &stockModel{Stock: made}
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

// modelNamed gives the model of a name: that of the file, else the one of the
// built-in catalogue. Nil if there is none, or if it may be one of a library.
func (w *fileWork) modelNamed(kind, name string) *model.Stock {
	if own := w.stock[stockKey{kind, name}]; own != nil {
		own.used = true
		return own.Stock
	}
	if len(w.out.Uses) > 0 { // what it brings in comes first; the use is reported
		return nil
	}
	return w.builtIn().models[stockKey{kind, name}]
}

// modelOf gives the model that a part names; one of which nothing is known is
// reported.
func (w *fileWork) modelOf(part *syntax.Part) *model.Stock {
	name := *part.Model
	found := w.modelNamed(part.Kind.Text, name.Text)
	if found != nil || len(w.out.Uses) > 0 {
		return found
	}
	near := w.nearModels(part.Kind.Text, name.Text)
	d := w.report(unknownModel, name.Span, part.Name.Text,
		"%s: its values stay unset, since no %s model %s is known%s",
		part.Name.Text, part.Kind.Text, name.Text, didYouMean(near))
	w.offerName(d, name, near)
	return nil
}

// nearModels gives the models of a kind, of the file and of the catalogue, whose
// names are nearest to a word.
func (w *fileWork) nearModels(kind, word string) []string {
	builtIn := w.builtIn().list
	if !w.hint.afford(len(w.out.Stock) + len(builtIn)) {
		return nil
	}
	var names []string
	for _, s := range slices.Concat(w.out.Stock, builtIn) {
		own := w.stock[stockKey{kind, s.Model.Text}]
		if s.Kind.Text == kind && (own == nil || own.Stock == s) { // each name once
			names = append(names, s.Model.Text)
		}
	}
	return w.hint.near(word, names)
}

// reportUnusedStock says of the models that no part of the file names that other
// files cannot name them yet.
func (w *fileWork) reportUnusedStock() {
	for _, s := range w.out.Stock {
		if found := w.stock[stockKey{s.Kind.Text, s.Model.Text}]; found.Stock == s && !found.used {
			d := w.report(notComputedYet, s.Model.Span, s.Model.Text,
				"%s is a model that no part of this file names; other files cannot use it yet", s.Model.Text)
			d.Severity = diag.Advice
		}
	}
}
