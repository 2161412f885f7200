package lint

// purse pays for what one rule solves in one file beyond the rigs themselves, so
// that no file makes the linter slow: what it cannot pay for is not tried, and the
// finding stands without its fix.
type purse struct{ text, work int }

// What the trials of one rule in one file may cost: bytes of text read again, and work
// in solving, a fifth of a second or so each, since files are examined as they are saved.
// A rig of 25 sheaves can still have every hitch looked at on every strand.
const (
	mostText = 1 << 20
	mostWork = 4_000
	// glances are had for the price of solving once.
	glances = 10
)

// purse gives the purse of the running rule.
func (p *Pass) purse() *purse {
	if p.purses[p.rule] == nil {
		p.purses[p.rule] = &purse{text: mostText, work: mostWork}
	}
	return p.purses[p.rule]
}

// Afford pays for solving the rig so many times; false if that is too much. The
// time for one was measured to grow as the number n of nodes does, times 1 + n/100.
func (p *Pass) Afford(times int) bool { return p.purse().solve(times * p.price()) }

// AffordLosses pays for asking so many times what happens without a part, which
// takes a tenth of the time.
func (p *Pass) AffordLosses(times int) bool { return p.purse().solve(1 + times*p.price()/10) }

// affordGlance pays for a glance at the rig, as long as one that pleases can still be
// tried in the text.
func (p *Pass) affordGlance() bool {
	of, price := p.purse(), p.price()
	glance := 1 + price/glances
	return of.work >= price+glance && of.solve(glance)
}

func (p *Pass) price() int {
	nodes := 0
	for _, r := range p.Rig.Ropes {
		nodes += len(r.Nodes)
	}
	return nodes + nodes*nodes/100
}

// solve pays for work in solving.
func (p *purse) solve(price int) bool {
	p.work -= price
	return p.work >= 0
}

// read pays for reading a text again.
func (p *purse) read(text string) bool {
	p.text -= len(text)
	return p.text >= 0
}
