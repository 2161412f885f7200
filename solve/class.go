package solve

import (
	"slices"

	"fairlead/solve/lp"
)

// classifier sorts a rig that raises its load into simple, compound or complex.
//
// It works on lines: taut pieces joined across grips that hold nothing, since a
// capture that slides does not part a rope. A stage body is a moving body whose
// removal leaves no chain of lines and moving bodies from load to hauler; there
// the rig is cut into stages.
type classifier struct {
	ph    *Phase
	load  int
	lines [][]int // pieces of each line
	// touching has, for each line, the moving bodies that it touches; lineOf the
	// reverse.
	touching, lineOf [][]int
	// pulled marks the lines that the hauler pulls.
	pulled []bool
}

// classify gives the class and, if the rig is simple or compound, its stages
// from the load to the hauler.
func classify(ph *Phase, raised *Motion) (Class, []Stage) {
	c := newClassifier(ph, raised.Body.Index)
	stages := c.stages()
	several := 0
	for _, st := range stages {
		if !c.simple(st) {
			return Complex, nil
		}
		if ratio := c.ratio(st); ratio.Cmp(lp.Int(1)) != 0 {
			several++
		}
	}
	list := make([]Stage, len(stages))
	for i, st := range stages {
		list[i] = Stage{Load: ph.Motion[st.load].Body, Ratio: c.ratio(st)}
		if st.hauler >= 0 {
			list[i].Hauler = ph.Motion[st.hauler].Body
		}
	}
	if several >= 2 {
		return Compound, list
	}
	return Simple, list
}

// stage is the part of a rig between two bodies: the one that it raises and the
// one that hauls it, -1 for the hauler itself.
type stage struct {
	load, hauler int
	lines        []int
}

func newClassifier(ph *Phase, load int) *classifier {
	c := &classifier{ph: ph, load: load, lineOf: make([][]int, len(ph.Motion))}
	line := c.joinPieces()
	c.lines = make([][]int, len(ph.program.pieces))
	c.touching = make([][]int, len(c.lines))
	c.pulled = make([]bool, len(c.lines))
	for i, p := range ph.program.pieces {
		if line[i] < 0 {
			continue
		}
		k := line[i]
		c.lines[k] = append(c.lines[k], i)
		c.pulled[k] = c.pulled[k] || p.pulledBy(ph.Hauler) > 0
		c.touch(k, p)
	}
	return c
}

// touch notes the moving bodies at the nodes of a piece. A body that its rope
// does not pull along counts too: the chain runs over what the rope touches.
func (c *classifier) touch(line int, p *piece) {
	for _, k := range p.links {
		for _, node := range []int{k.from, k.to} {
			body := c.ph.program.of(p.rope.Nodes[node].Part)
			if body < 0 || c.ph.Motion[body].Free || slices.Contains(c.touching[line], body) {
				continue
			}
			c.touching[line] = append(c.touching[line], body)
			c.lineOf[body] = append(c.lineOf[body], line)
		}
	}
}

// joinPieces numbers the lines: taut pieces on the two sides of a grip that holds
// nothing are one. Slack pieces have -1.
func (c *classifier) joinPieces() []int {
	program := c.ph.program
	line := make([]int, len(program.pieces))
	for i := range line {
		line[i] = i
		if !c.taut(i) {
			line[i] = -1
		}
	}
	root := func(i int) int {
		for line[i] != i {
			i = line[i]
		}
		return i
	}
	for _, g := range program.grips {
		if g.before < 0 || g.after < 0 || line[g.before] < 0 || line[g.after] < 0 {
			continue
		}
		if c.ph.tension[g.before].Cmp(c.ph.tension[g.after]) == 0 {
			line[root(g.after)] = root(g.before)
		}
	}
	for i := range line {
		if line[i] >= 0 {
			line[i] = root(i)
		}
	}
	return line
}

// taut says whether a piece carries anything.
func (c *classifier) taut(piece int) bool { return c.ph.tension[piece].Sign() > 0 }
