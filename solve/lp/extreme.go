package lp

// goal gives the line of a form, of its negative if not up.
func (f *face[F]) goal(form []Term, up bool) line[F] {
	var aside F
	moving := make([]cell[F], 0, len(form))
	for _, t := range form {
		factor := fromNum[F](t.Value)
		if !up {
			factor = factor.Neg()
		}
		if u := f.unknown[t.Column]; u >= 0 {
			moving = append(moving, cell[F]{u, factor})
		} else {
			aside = aside.mulSub(factor, f.base[t.Column].Neg())
		}
	}
	goal := f.sum(merge(moving))
	goal.value = goal.value.Add(aside)
	return goal
}

// sum gives the line of a form over the unknowns.
func (f *face[F]) sum(form []cell[F]) line[F] {
	var goal line[F]
	place := f.places()
	for _, t := range form {
		i := place[t.at]
		switch {
		case i >= 0:
			row := f.lines[i]
			goal.value = goal.value.mulSub(t.value, row.value.Neg())
			for _, c := range row.cells {
				goal.cells = append(goal.cells, cell[F]{c.at, c.value.Mul(t.value)})
			}
		case !f.fixed[t.at]:
			goal.cells = append(goal.cells, cell[F]{t.at, t.value.Neg()})
		}
	}
	goal.cells = merge(goal.cells)
	return goal
}

// places gives the row of each unknown, -1 if it is not basic.
func (f *face[F]) places() []int {
	place := make([]int, len(f.names))
	for u := range place {
		place[u] = -1
	}
	for i, u := range f.basic {
		place[u] = i
	}
	return place
}

// towards moves the face to where a goal is largest; it gives the goal as it
// stands there, how that ended, and the unknown that grows for ever if the goal
// has no limit.
func (f *face[F]) towards(goal line[F]) (line[F], outcome, int) {
	f.aim(goal)
	how, grows := f.maximise(f.rows)
	return f.rest(), how, grows
}

// aim puts a goal after the rows, rest takes it away again.
func (f *face[F]) aim(goal line[F]) {
	f.lines = append(f.lines, goal)
	for _, c := range goal.cells {
		f.holders[c.at].put(f.rows)
	}
}

func (f *face[F]) rest() line[F] {
	goal := f.lines[f.rows]
	f.lines = f.lines[:f.rows]
	for _, c := range goal.cells {
		f.holders[c.at].drop(f.rows)
	}
	return goal
}

// apart gives the face to ask a question of that moves it. Where it stands does
// not matter to the next question, so exact faces wander; one in rounded numbers
// would gather noise, and a copy goes instead.
func (f *face[F]) apart() *face[F] {
	if !rounds[F]() {
		return f
	}
	c := *f
	c.dictionary = f.clone()
	return &c
}

// best gives the largest value of a form over the face, the least if not up, and
// where it is attained; false if there is no limit. The last pivot is only
// looked at, not made: it would be most of the work.
func (f *face[F]) best(form []Term, up bool) (value F, x func() []F, ok bool) {
	at := f.apart()
	at.aim(at.goal(form, up))
	defer at.rest()
	w := walk{goal: at.rows}
	x = at.point
	for {
		r, j, how := at.next(&w)
		if how == endless {
			var none F
			return none, nil, false
		}
		done := how != onward
		if done {
			value = at.lines[at.rows].value
		} else if value, done = at.last(at.rows, r, j); done {
			x = func() []F { return at.pointAfter(r, j) }
		}
		if done {
			if !up {
				value = value.Neg()
			}
			return value, x, true
		}
		at.pivot(r, j)
	}
}

// pointAfter gives the point to which a pivot would go.
func (f *face[F]) pointAfter(r, j int) []F {
	x := f.point()
	set := func(u int, value F) {
		if k := f.names[u]; k < len(x) {
			x[k] = value
		}
	}
	step := f.lines[r].value.Quo(f.coefficient(r, j))
	for i, u := range f.basic {
		if at, holds := cellAt(f.lines[i].cells, j); holds {
			set(u, f.lines[i].value.mulSub(f.lines[i].cells[at].value, step))
		}
	}
	set(j, step)
	return x
}

// narrow bars what would make a form smaller than it can be on the face, larger
// if not up, and moves the face; it gives false and bars nothing if there is no
// limit.
func (f *face[F]) narrow(form []Term, up bool) bool {
	at := f.apart()
	goal, how, _ := at.towards(at.goal(form, up))
	if how == endless {
		return false
	}
	for _, c := range goal.cells {
		at.discard(c.at)
		at.fixed[c.at] = true
	}
	*f = *at
	f.rising = nil
	return true
}
