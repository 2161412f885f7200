package lp

import (
	"cmp"
	"slices"
)

// face is the set of all optima: the vertex, and the columns that may grow
// without loss. Its dictionary has only those columns and the basic ones they
// reach; all else is as in base.
type face[F number[F]] struct {
	*dictionary[F]
	// names are the columns of the dictionary's unknowns, in order; unknown is
	// the unknown of a column, -1 if the face does not move it.
	names, unknown []int
	base           []F
	// rising says which unknowns are above 0 at some optimum; nil until asked.
	rising []bool
}

// optima gives the face of an optimal vertex.
func (v *vertex[F]) optima() *face[F] {
	if v.face == nil {
		v.face = v.newFace()
	}
	return v.face
}

func (v *vertex[F]) newFace() *face[F] {
	f := &face[F]{base: v.point()}
	cells := make([][]cell[F], len(v.basic))
	for j, r := range v.reduced {
		if v.inBasis[j] || r.Sign() != 0 {
			continue
		}
		f.names = append(f.names, j)
		for place, a := range v.factors.solve(v.dense(v.columns[j])) {
			if a.Sign() != 0 {
				cells[place] = append(cells[place], cell[F]{j, a})
			}
		}
	}
	var places []int
	for place := range cells {
		if cells[place] != nil {
			places = append(places, place)
			f.names = append(f.names, v.basic[place])
		}
	}
	f.dictionary, f.unknown = v.part(f.names, places, cells)
	var zero F
	for _, j := range f.names {
		if j < v.unknowns() {
			f.base[j] = zero
		}
	}
	return f
}

// part gives a dictionary of some places of the basis, whose cells are given by
// column, and of the columns in names, which it sorts; also the unknown of each
// column, -1 if it has none. It has room for one goal.
func (v *vertex[F]) part(names, places []int, cells [][]cell[F]) (*dictionary[F], []int) {
	slices.SortFunc(names, cmp.Compare[int])
	unknown := make([]int, v.unknowns()+len(v.rhs))
	for j := range unknown {
		unknown[j] = -1
	}
	d := &dictionary[F]{
		rows:    len(places),
		lines:   make([]line[F], len(places), len(places)+1),
		basic:   make([]int, len(places)),
		fixed:   make([]bool, len(names)),
		holders: newSets(len(names), len(places)+1),
		limit:   pivotLimit[F](len(places), len(names)),
	}
	for u, j := range names {
		unknown[j] = u
		d.fixed[u] = j >= v.unknowns()
	}
	for i, place := range places {
		d.basic[i] = unknown[v.basic[place]]
		d.lines[i].value = v.values[place]
		for _, c := range cells[place] {
			u := unknown[c.at]
			d.lines[i].cells = append(d.lines[i].cells, cell[F]{u, c.value})
			d.holders[u].put(i)
		}
	}
	return d, unknown
}

// point gives x by column.
func (f *face[F]) point() []F {
	x := slices.Clone(f.base)
	for i, u := range f.basic {
		if j := f.names[u]; j < len(x) {
			x[j] = f.lines[i].value
		}
	}
	return x
}
