package solve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/solve/lp"
)

// stages cuts the rig at its stage bodies, in order from the load to the hauler.
func (c *classifier) stages() []stage {
	var list []stage
	done := make([]bool, len(c.lines))
	load := c.load
	for _, cutBody := range append(c.stageBodies(), -1) {
		list = append(list, stage{load: load, hauler: cutBody, lines: c.linesBetween(load, cutBody, done)})
		load = cutBody
	}
	return list
}

// stageBodies lists the moving bodies, the load's left out, without which no
// chain leads from load to hauler, in the order in which a chain meets them.
func (c *classifier) stageBodies() []int {
	distance, reached := c.reach(-1)
	if !reached {
		return nil
	}
	var list []int
	for body := range c.lineOf {
		if body == c.load || distance[body] < 0 || c.ph.Motion[body].Rise.Sign() == 0 {
			continue
		}
		if _, still := c.reach(body); !still {
			list = append(list, body)
		}
	}
	slices.SortFunc(list, func(a, b int) int { return distance[a] - distance[b] })
	return list
}

// reach walks from the load over lines and moving bodies, one body left out, and
// says how far each body is and whether a line that the hauler pulls is met.
func (c *classifier) reach(without int) (distance []int, met bool) {
	distance = make([]int, len(c.lineOf))
	for i := range distance {
		distance[i] = -1
	}
	seen := make([]bool, len(c.lines))
	distance[c.load] = 0
	for queue := []int{c.load}; len(queue) > 0; queue = queue[1:] {
		for _, line := range c.lineOf[queue[0]] {
			if seen[line] {
				continue
			}
			seen[line] = true
			met = met || c.pulled[line]
			for _, body := range c.touching[line] {
				if body != without && distance[body] < 0 {
					distance[body] = distance[queue[0]] + 1
					queue = append(queue, body)
				}
			}
		}
	}
	return distance, met
}

// linesBetween gives the lines not yet done that can be reached from a body
// without passing another one.
func (c *classifier) linesBetween(from, to int, done []bool) []int {
	var list []int
	seen := map[int]bool{from: true, to: true}
	for queue := []int{from}; len(queue) > 0; queue = queue[1:] {
		for _, line := range c.lineOf[queue[0]] {
			if done[line] {
				continue
			}
			done[line] = true
			list = append(list, line)
			for _, body := range c.touching[line] {
				if !seen[body] {
					seen[body] = true
					queue = append(queue, body)
				}
			}
		}
	}
	return list
}

// simple says whether every moving bend of a stage that turns the rope has the
// speed of the stage's load. Bends on the stage's hauler are not counted, nor those
// on a body that could move and does not, such as a plate in a sling.
func (c *classifier) simple(st stage) bool {
	speed := c.ph.Motion[st.load].Rise
	for _, line := range st.lines {
		for _, piece := range c.lines[line] {
			for _, body := range c.turning(c.ph.program.pieces[piece]) {
				rise := c.ph.Motion[body].Rise
				if body != st.hauler && rise.Sign() != 0 && rise.Cmp(speed) != 0 {
					return false
				}
			}
		}
	}
	return true
}

// turning lists the moving bodies with a bend that turns the rope of a piece.
func (c *classifier) turning(p *piece) []int {
	var list []int
	for _, k := range p.links {
		for _, node := range []int{k.from, k.to} {
			n := p.rope.Nodes[node]
			bends := n.Role == model.Bend || n.Role == model.Capture
			if body := c.ph.program.of(n.Part); bends && body >= 0 && (p.rope.Turns(node) || n.Sideways) {
				list = append(list, body)
			}
		}
	}
	return list
}

// ratio gives how far the stage's hauler moves for one unit of its load.
func (c *classifier) ratio(st stage) lp.Num {
	speed := lp.Int(1)
	if st.hauler >= 0 {
		speed = c.ph.Motion[st.hauler].Rise
	}
	return speed.Quo(c.ph.Motion[st.load].Rise).Abs()
}
