package lint

import (
	"iter"

	"fairlead/lang/quantity"
)

// purse pays for what one rule solves in one file beyond the rigs themselves, so
// that no file makes the linter slow: what it cannot pay for is not tried, and the
// finding stands without its fix.
type purse struct{ text, work, glances int }

// What the trials of one rule in one file may cost: bytes of text read again, and work
// in solving, half a second or so each; and work in glances, a fifth of a second, since
// files are examined as they are saved. A rig of 25 sheaves can still have every hitch
// looked at on every strand.
const (
	mostText    = 2 << 20
	mostWork    = 25_000
	mostGlances = 4_000
)

// full is a purse from which nothing has been paid.
var full = purse{text: mostText, work: mostWork, glances: mostGlances}

// less gives what is left once as much as another purse holds is paid.
func (p purse) less(q purse) purse {
	return purse{p.text - q.text, p.work - q.work, p.glances - q.glances}
}

// empty says whether something could not be paid.
func (p purse) empty() bool { return p.text < 0 || p.work < 0 || p.glances < 0 }

// purse gives the purse of the running rule.
func (p *Pass) purse() *purse { return p.purseOf(p.rule) }

func (e *examination) purseOf(rule *Rule) *purse {
	if e.purses[rule] == nil {
		p := full
		e.purses[rule] = &p
	}
	return e.purses[rule]
}

// Afford pays for solving the rig so many times; false if that is too much. The
// time for one was measured to grow as the number n of nodes does, times 1 + n/100.
func (p *Pass) Afford(times int) bool { return p.purse().solve(times * p.price()) }

// AffordLosses pays for asking so many times what happens without a part, which
// takes a tenth of the time.
func (p *Pass) AffordLosses(times int) bool { return p.purse().solve(1 + times*p.price()/10) }

// affordGlance pays for a glance at the rig, which takes a tenth of the time of solving it.
func (p *Pass) affordGlance() bool {
	of := p.purse()
	of.glances -= 1 + p.price()/10
	return of.glances >= 0
}

// AffordWhole pays for solving a rig whole, with friction and lowering. It was measured
// to take four times what the ideal takes, and with ranges of efficiency, which open
// every force, as much again for every ten nodes, to the third power.
func (p *Pass) AffordWhole() bool {
	times := 4
	if p.hasRanges() {
		tens := 1 + p.nodes()/10
		times *= tens * tens * tens
	}
	return p.Afford(times)
}

// hasRanges says whether an efficiency or coefficient of friction at a rope is a range.
func (p *Pass) hasRanges() bool {
	open := func(q *quantity.Quantity) bool { return q != nil && q.Low.Cmp(q.High) != 0 }
	for _, r := range p.Rig.Ropes {
		if open(r.Line.Values.Friction) {
			return true
		}
		for _, n := range r.Nodes {
			if open(n.Efficiency) || open(n.Lowering) || open(n.Friction) {
				return true
			}
		}
	}
	return false
}

// AffordFall pays for asking once what happens without a part without which the load may
// fall: looking for what stops it was measured to take a tenth of the time of solving for
// 20 nodes, and twice that time for 400.
func (p *Pass) AffordFall() bool { return p.purse().solve(1 + p.price()*p.nodes()/200) }

func (p *Pass) price() int {
	n := p.nodes()
	return n + n*n/100
}

func (p *Pass) nodes() int {
	nodes := 0
	for _, r := range p.Rig.Ropes {
		nodes += len(r.Nodes)
	}
	return nodes
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

// balance gives what is left in each purse.
func (e *examination) balance() iter.Seq2[*Rule, purse] {
	return func(yield func(*Rule, purse) bool) {
		for rule, p := range e.purses {
			if !yield(rule, *p) {
				return
			}
		}
	}
}

// pay takes from each purse what its rule once spent; false, with nothing taken, if
// one has not so much.
func (e *examination) pay(spent map[*Rule]purse) bool {
	for rule, s := range spent {
		left := e.purseOf(rule)
		if left.less(s).empty() {
			return false
		}
	}
	for rule, s := range spent {
		p := e.purseOf(rule)
		*p = p.less(s)
	}
	return true
}
