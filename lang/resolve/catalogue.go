package resolve

import (
	"slices"
	"sync"

	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/stock"
	"fairlead/lang/syntax"
)

// catalogue are the models of a text of nothing but stock statements.
type catalogue struct {
	list   []*model.Stock
	models map[stockKey]*model.Stock
	// problems are the faults of its text, as messages.
	problems []string
}

// builtIn gives the built-in catalogue. It is read once, when a name first needs
// it: most rigs name no model, and starting must stay cheap.
var builtIn = sync.OnceValue(func() *catalogue {
	return readCatalogue(source.New(stock.Name, stock.Text()))
})

// Catalogue lists the models of the built-in stock in the order of its text. They
// are shared: nobody may change them.
func Catalogue() []*model.Stock { return slices.Clone(builtIn().list) }

// readCatalogue reads the models of a file.
func readCatalogue(file *source.File) *catalogue {
	tree := syntax.Parse(file)
	w := newFileWork(tree)
	w.readStock(tree)
	c := &catalogue{list: w.out.Stock, models: map[stockKey]*model.Stock{}}
	for key, m := range w.stock {
		c.models[key] = m
	}
	for _, d := range w.sorted(tree.Problems) {
		c.problems = append(c.problems, d.Message)
	}
	return c
}
