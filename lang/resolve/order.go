package resolve

import (
	"slices"

	"fairlead/lang/syntax"
)

// inclusion is an "include" in a rig; one before the first rig of a file is in each.
type inclusion struct {
	in *section
	st *syntax.Statement
}

// inOrder gives the rigs of the file so that each comes after those that it includes,
// and notes the includes that lead back to their own rig.
func (w *fileWork) inOrder(sections []*section) []*section {
	w.circular = map[inclusion]bool{}
	type visit struct {
		of   *section
		left []inclusion
	}
	var order []*section
	const open, done = 1, 2
	state := map[*section]int{}
	for _, start := range sections {
		if state[start] != 0 {
			continue
		}
		state[start] = open
		stack := []*visit{{start, start.inclusions()}}
		for len(stack) > 0 {
			top := stack[len(stack)-1]
			if len(top.left) == 0 {
				state[top.of] = done
				order = append(order, top.of)
				stack = stack[:len(stack)-1]
				continue
			}
			next := top.left[0]
			top.left = top.left[1:]
			base := w.rigs[next.st.Body.(*syntax.Include).Rig.Text]
			switch {
			case base == nil || state[base] == done:
			case state[base] == open:
				w.circular[next] = true
			default:
				state[base] = open
				stack = append(stack, &visit{base, base.inclusions()})
			}
		}
	}
	return order
}

// inclusions lists the "include" statements of a rig.
func (s *section) inclusions() []inclusion {
	var list []inclusion
	for _, st := range slices.Concat(s.shared, s.own) {
		if _, ok := st.Body.(*syntax.Include); ok {
			list = append(list, inclusion{s, st})
		}
	}
	return list
}
