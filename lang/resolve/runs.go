package resolve

import "fairlead/lang/model"

// run is a stretch of a line without slack in it: the nodes in the order of the
// line. Every node is in exactly one run.
type run struct {
	nodes []int
	// closed says that it has no end, being a whole line closed by "loop".
	closed bool
}

func (r run) first() int { return r.nodes[0] }
func (r run) last() int  { return r.nodes[len(r.nodes)-1] }

// cutRuns cuts the line into runs at its slack strokes. In a line closed by
// "loop" a run may lead over the line's first node.
func (l *ropeWork) cutRuns() {
	rope := l.rope
	n := len(rope.Nodes)
	l.runOf = make([]int, n)
	if n == 0 {
		return
	}
	start, closed := 0, rope.Loop
	for i, s := range rope.Strokes {
		if rope.Loop && s == model.Slack {
			start, closed = rope.After(i), false
			break
		}
	}
	current := run{closed: closed}
	for k := range n {
		i := (start + k) % n
		l.runOf[i] = len(l.runs)
		current.nodes = append(current.nodes, i)
		if i < len(rope.Strokes) && rope.Strokes[i] == model.Slack || k == n-1 {
			l.runs = append(l.runs, current)
			current = run{}
		}
	}
}

// runAt gives the run of a node.
func (l *ropeWork) runAt(i int) run { return l.runs[l.runOf[i]] }

// lineEnd says whether the node is the first or last of the line.
func (l *ropeWork) lineEnd(i int) bool {
	return !l.rope.Loop && (i == 0 || i == len(l.rope.Nodes)-1)
}

// runEnd says whether the node is the first or last of its run.
func (l *ropeWork) runEnd(i int) bool {
	r := l.runAt(i)
	return !r.closed && (i == r.first() || i == r.last())
}

// ends gives the names of the two ends of a run.
func (l *ropeWork) ends(r run) []string {
	if r.closed {
		return nil
	}
	return uniqueNames([]string{l.word(r.first()), l.word(r.last())})
}

// endsKnown says whether the parts at both ends of a run are resolved.
func (l *ropeWork) endsKnown(r run) bool {
	if r.closed {
		return true
	}
	for _, i := range []int{r.first(), r.last()} {
		if l.rope.Nodes[i].Part == nil && !l.body.Nodes[i].IsTail() {
			return false
		}
	}
	return true
}
