package lp

// rise finds out which unknowns are above 0 at some optimum. It lets all that are
// in doubt grow together, sets aside those that did, and asks again for the rest.
func (f *face[F]) rise() []bool {
	if f.rising != nil {
		return f.rising
	}
	f.rising = make([]bool, len(f.names))
	at := f.apart()
	at.noteRising(reached, -1)
	for more := true; more; {
		var doubt []cell[F]
		for u := range at.names {
			if !at.rising[u] && !at.fixed[u] {
				doubt = append(doubt, cell[F]{u, one[F]()})
			}
		}
		_, how, grows := at.towards(at.sum(doubt))
		more = at.noteRising(how, grows)
	}
	return f.rising
}

// noteRising notes the unknowns that are above 0 where the face stands, or will
// be as the unknown grows goes up for ever; it says whether there were any new.
func (f *face[F]) noteRising(how outcome, grows int) bool {
	found := false
	note := func(u int) {
		if !f.rising[u] && !f.fixed[u] {
			f.rising[u], found = true, true
		}
	}
	if how == endless {
		note(grows)
	}
	for i, u := range f.basic {
		if f.lines[i].value.Sign() > 0 {
			note(u)
		} else if how == endless {
			if k, holds := cellAt(f.lines[i].cells, grows); holds && f.lines[i].cells[k].value.Sign() < 0 {
				note(u)
			}
		}
	}
	return found
}

// open says of each column whether it differs, or might, over the face: those
// that are not basic and may rise, and the basic ones that these move.
func (f *face[F]) open() []bool {
	out := make([]bool, len(f.base))
	rising := f.rise()
	for u, place := range f.places() {
		if place < 0 && rising[u] {
			out[f.names[u]] = true
		}
	}
	for i, u := range f.basic {
		for _, c := range f.lines[i].cells {
			if j := f.names[u]; rising[c.at] && j < len(out) {
				out[j] = true
			}
		}
	}
	return out
}

// single says whether the face is one point: nothing that is not basic may rise.
func (f *face[F]) single() bool {
	rising := f.rise()
	for u, place := range f.places() {
		if place < 0 && rising[u] {
			return false
		}
	}
	return true
}
