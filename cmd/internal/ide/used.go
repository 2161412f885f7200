package ide

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/lang/resolve"
)

// used gives the file that a "use" of the document names; nil if it cannot be had.
func (d *Document) used(path string) *model.File {
	for _, u := range d.Model.Uses {
		if u.Path.Value == path && u.File != nil {
			return u.File
		}
	}
	return nil
}

// models lists the models that parts of the document can name, those that are found
// first before the others: of the file, of those that it uses, of the built-in stock.
func (d *Document) models() []*model.Stock {
	list := slices.Clone(d.Model.Stock)
	for _, u := range d.Model.Uses {
		if u.File != nil {
			list = append(list, u.File.Stock...)
		}
	}
	return append(list, resolve.Catalogue()...)
}

// model gives the model of a name for a kind of part; nil if there is none.
func (d *Document) model(kind, name string) *model.Stock {
	for _, s := range d.models() {
		if s.Kind.Text == kind && s.Model.Text == name {
			return s
		}
	}
	return nil
}

// rigs lists the rigs that the document can include: its own, then those of the files
// that it uses.
func (d *Document) rigs() []*model.Rig {
	list := slices.Clone(d.Model.Rigs)
	for _, u := range d.Model.Uses {
		if u.File != nil {
			list = append(list, u.File.Rigs...)
		}
	}
	return list
}

// rigNamed gives the rig of a name that the document can include; nil if there is none.
func (d *Document) rigNamed(name string) *model.Rig {
	for _, r := range d.rigs() {
		if r.Name == name {
			return r
		}
	}
	return nil
}
