package lp

// vertex is a basis of a program and what follows from it.
type vertex[F number[F]] struct {
	*matrix[F]
	status Status
	// basic is the basic column of each place, values what it is worth; inBasis
	// says of every column, artificial ones included, whether it is basic.
	basic   []int
	values  []F
	inBasis []bool
	factors *factors[F]
	// y are the multipliers; reduced is y·A_j less the cost of each column j.
	y, reduced []F
	// ray is the direction without limit, by column, when Unbounded.
	ray []F

	face   *face[F]
	slopes *slopes[F]
}

// newVertex computes what follows from the basis of a plan; nil if the basis is
// none.
func newVertex[F number[F]](m *matrix[F], p plan) *vertex[F] {
	v := &vertex[F]{matrix: m, status: p.status, basic: p.basic}
	columns := make([][]cell[F], len(v.basic))
	for place, j := range v.basic {
		columns[place] = m.column(j)
	}
	if v.factors = factorize(columns); v.factors == nil {
		return nil
	}
	v.values = v.factors.solve(append([]F(nil), m.rhs...))
	prices := make([]F, len(v.basic))
	for place, j := range v.basic {
		prices[place] = v.price(j)
	}
	v.y = v.factors.solveLeft(prices)
	v.reduced = make([]F, m.unknowns())
	v.inBasis = make([]bool, m.unknowns()+len(m.rhs))
	for _, j := range v.basic {
		v.inBasis[j] = true
	}
	for j := range v.reduced {
		if !v.inBasis[j] {
			v.reduced[j] = v.worth(j)
		}
	}
	if p.status == Unbounded {
		v.findRay(p.entering)
	}
	return v
}

// price is the cost of a column, artificial ones included: where the rows cannot
// be met the aim is the least shortfall instead.
func (v *vertex[F]) price(j int) F {
	var zero F
	switch {
	case v.status != Infeasible:
		if j < v.unknowns() {
			return v.cost[j]
		}
	case j >= v.unknowns() && v.rhs[j-v.unknowns()].Sign() != 0:
		return one[F]().Neg()
	}
	return zero
}

// worth gives y·A_j less the price of column j.
func (v *vertex[F]) worth(j int) F {
	sum := v.price(j).Neg()
	for _, c := range v.columns[j] {
		if v.y[c.at].Sign() != 0 {
			sum = sum.mulSub(v.y[c.at], c.value.Neg())
		}
	}
	return sum
}

// findRay gives the ray along which column j grows.
func (v *vertex[F]) findRay(j int) {
	along := v.factors.solve(v.dense(v.columns[j]))
	v.ray = make([]F, v.unknowns())
	for place, k := range v.basic {
		if k < v.unknowns() {
			v.ray[k] = along[place].Neg()
		}
	}
	v.ray[j] = one[F]()
}

// dense spreads a column over the rows.
func (v *vertex[F]) dense(column []cell[F]) []F {
	out := make([]F, len(v.rhs))
	for _, c := range column {
		out[c.at] = c.value
	}
	return out
}

// mustVanish says whether a column may not be above 0: an artificial one, unless
// it stands for a shortfall that cannot be helped.
func (v *vertex[F]) mustVanish(j int) bool {
	return j >= v.unknowns() && (v.status != Infeasible || v.rhs[j-v.unknowns()].Sign() == 0)
}

func dot[F number[F]](a, b []F) F {
	var sum F
	for i := range a {
		if a[i].Sign() != 0 && b[i].Sign() != 0 {
			sum = sum.mulSub(a[i], b[i].Neg())
		}
	}
	return sum
}

// point gives x by column.
func (v *vertex[F]) point() []F {
	x := make([]F, v.unknowns())
	for place, j := range v.basic {
		if j < v.unknowns() {
			x[j] = v.values[place]
		}
	}
	return x
}
