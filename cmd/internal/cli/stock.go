package cli

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"fairlead/lang/model"
	"fairlead/lang/quantity"
	"fairlead/lang/resolve"
	"fairlead/lang/syntax"
	"fairlead/solve/report"
	"fairlead/solve/report/page"
)

// stockModel is one model in machine output.
type stockModel struct {
	Kind   string       `json:"kind"`
	Name   string       `json:"name"`
	About  string       `json:"about"`
	Values []stockValue `json:"values"`
	Source string       `json:"source"`
}

// stockValue is one value of a model: as written, and its ends in the SI unit
// (degrees for angles, a plain fraction for per cent). A clause without a quantity
// has no ends.
type stockValue struct {
	Clause  string   `json:"clause"`
	Written string   `json:"written"`
	Low     *float64 `json:"low"`
	High    *float64 `json:"high"`
	Unit    string   `json:"unit"`
}

// stock lists the built-in models with their values and sources.
func (t *tool) stock() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "stock [KIND|MODEL...]",
		Short: "the built-in models of parts, and the source of every value",
		Long: "Without a name, lists every built-in model by its kind: its values, and below them where " +
			"they come from. With the name of a kind or of a model, says also what each is.\n\n" +
			"A model is named after the part: pulley top bearing-pulley on head. A clause written there beats " +
			"the model's value, and a stock statement in the file beats the built-in one of that name.",
		Example:           "  fairlead stock\n  fairlead stock pulley\n  fairlead stock figure-eight bowline",
		ValidArgsFunction: stockNames,
	}
	format := addFormat(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		models, err := chosen(resolve.Catalogue(), args)
		switch {
		case err != nil:
			return err
		case format.value == formatJSON:
			return t.stockJSON(models)
		}
		return t.stockText(models, len(args) > 0)
	}
	return cmd
}

// chosen gives the models of the named kinds and those that are named themselves,
// in the order of the catalogue; all of them without a name.
func chosen(all []*model.Stock, names []string) ([]*model.Stock, error) {
	if len(names) == 0 {
		return all, nil
	}
	for _, name := range names {
		isNamed := func(m *model.Stock) bool { return m.Kind.Text == name || m.Model.Text == name }
		if slices.ContainsFunc(all, isNamed) {
			continue
		}
		if _, isKind := syntax.KindNamed(name); isKind {
			return nil, misused("the stock has no model of kind %s", name)
		}
		return nil, misused("the stock has no kind and no model %s%s", name, hint(name, stockWords(all)))
	}
	return slices.DeleteFunc(all, func(m *model.Stock) bool {
		return !slices.Contains(names, m.Kind.Text) && !slices.Contains(names, m.Model.Text)
	}), nil
}

// stockWords lists the kinds that have models, and the models, each once.
func stockWords(all []*model.Stock) []string {
	var kinds, names []string
	for _, m := range all {
		kinds, names = append(kinds, m.Kind.Text), append(names, m.Model.Text)
	}
	words := append(kinds, names...)
	slices.Sort(words)
	return slices.Compact(words)
}

// stockText lists models, each kind under its name; about adds what each model is.
func (t *tool) stockText(models []*model.Stock, about bool) error {
	start := 0
	for _, m := range models {
		start = max(start, 2+page.Width(m.Model.Text)+2)
	}
	kind := ""
	for _, m := range models {
		if m.Kind.Text != kind {
			if kind != "" {
				fmt.Fprintln(t.out)
			}
			kind = m.Kind.Text
			of, _ := syntax.KindNamed(kind)
			fmt.Fprintf(t.out, "%s  %s\n", t.paint(t.out).Set(page.Strong, kind), of.Meaning)
		}
		t.modelText(m, about, start)
	}
	return nil
}

// modelText writes one model: its name, and from column start on its values, what
// it is, and the source.
func (t *tool) modelText(m *model.Stock, about bool, start int) {
	paragraphs := []string{strings.Join(written(m), ", "), m.Source}
	if about && len(m.Doc) > 0 {
		paragraphs = slices.Insert(paragraphs, 1, strings.Join(m.Doc, " "))
	}
	name := m.Model.Text
	for i, words := range paragraphs {
		if words == "" {
			continue
		}
		style := page.Plain
		if i == len(paragraphs)-1 {
			style = page.Faint
		}
		for _, part := range page.Wrap(words, page.Columns-start) {
			var l page.Line
			l.Put(2, name, page.Plain)
			l.Put(start, part, style)
			fmt.Fprintln(t.out, l.String(t.paint(t.out)))
			name = ""
		}
	}
}

// written gives the clauses of a model as they stand.
func written(m *model.Stock) []string {
	var clauses []string
	for _, c := range m.Clauses {
		clauses = append(clauses, m.Place.File.Slice(c.Span))
	}
	return clauses
}

// stockJSON writes models for machines.
func (t *tool) stockJSON(models []*model.Stock) error {
	list := []stockModel{}
	for _, m := range models {
		one := stockModel{
			Kind: m.Kind.Text, Name: m.Model.Text, Values: []stockValue{},
			About: strings.Join(m.Doc, " "), Source: m.Source,
		}
		for _, c := range m.Clauses {
			one.Values = append(one.Values, valuesOf(c)...)
		}
		list = append(list, one)
	}
	return report.Encode(t.out, struct {
		Version int          `json:"version"`
		Models  []stockModel `json:"models"`
	}{1, list})
}

// valuesOf gives what a clause says: one value, or two where a second quantity follows.
func valuesOf(c syntax.ClauseUse) []stockValue {
	if c.Amount == nil {
		v := stockValue{Clause: c.Word.Text}
		if c.Name != nil {
			v.Written = c.Name.Text
		}
		return []stockValue{v}
	}
	values := []stockValue{amountOf(c.Word.Text, c.Amount)}
	if c.Second != nil {
		table, _ := syntax.ClauseNamed(c.Word.Text)
		values = append(values, amountOf(table.Second, c.Second))
	}
	return values
}

func amountOf(clause string, a *syntax.Amount) stockValue {
	low, _ := a.Low.Float64()
	high, _ := a.High.Float64()
	return stockValue{Clause: clause, Written: a.String(), Low: &low, High: &high, Unit: siUnit(a.Dimension)}
}

// siUnit gives the word of the unit that the program computes in; empty for plain
// numbers and fractions.
func siUnit(d quantity.Dimension) string {
	for _, u := range quantity.Units() {
		if u.Dimension == d && u.SI.Cmp(big.NewRat(1, 1)) == 0 {
			return u.Word
		}
	}
	return ""
}

// stockNames completes kinds and models that are not named yet.
func stockNames(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	words := slices.DeleteFunc(stockWords(resolve.Catalogue()), func(word string) bool {
		return slices.Contains(args, word)
	})
	return words, cobra.ShellCompDirectiveNoFileComp
}
