package resolve

import (
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
		made := &model.Stock{Stock: body, Place: w.file.At(s.Span), Doc: docOf(s)}
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

// modelOf gives the values of the model that a part names; a model of which
// nothing is known is reported.
func (w *fileWork) modelOf(part *syntax.Part) (model.Values, bool) {
	name := *part.Model
	if found := w.stock[stockKey{part.Kind.Text, name.Text}]; found != nil {
		found.used = true
		return found.Values, true
	}
	if len(w.out.Uses) > 0 { // it may come from there; the use is reported
		return model.Values{}, false
	}
	near := w.nearModels(part.Kind.Text, name.Text)
	d := w.report(unknownModel, name.Span, part.Name.Text,
		"%s: its values stay unset, since no %s model %s is known%s",
		part.Name.Text, part.Kind.Text, name.Text, didYouMean(near))
	w.offerName(d, name, near)
	return model.Values{}, false
}

// nearModels gives the models of a kind whose names are nearest to a word.
func (w *fileWork) nearModels(kind, word string) []string {
	if !w.hint.afford(len(w.out.Stock)) {
		return nil
	}
	var names []string
	for _, s := range w.out.Stock {
		if s.Kind.Text == kind {
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
