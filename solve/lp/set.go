package lp

import "math/bits"

// set is a set of small whole numbers.
type set []uint64

func newSets(count, size int) []set {
	words := (size + 63) / 64
	room := make(set, count*words)
	sets := make([]set, count)
	for i := range sets {
		sets[i], room = room[:words:words], room[words:]
	}
	return sets
}

func (s set) put(i int)  { s[i>>6] |= 1 << (i & 63) }
func (s set) drop(i int) { s[i>>6] &^= 1 << (i & 63) }

func (s set) clear() { clear(s) }

func (s set) size() int {
	n := 0
	for _, w := range s {
		n += bits.OnesCount64(w)
	}
	return n
}

// next gives the first member from i on, -1 if there is none.
func (s set) next(i int) int {
	at := i >> 6
	if at >= len(s) {
		return -1
	}
	w := s[at] &^ (1<<(i&63) - 1)
	for w == 0 {
		if at++; at == len(s) {
			return -1
		}
		w = s[at]
	}
	return at<<6 + bits.TrailingZeros64(w)
}

func cloneSets(sets []set) []set {
	if len(sets) == 0 {
		return nil
	}
	words := len(sets[0])
	room := make(set, 0, len(sets)*words)
	out := make([]set, len(sets))
	for i, s := range sets {
		room = append(room, s...)
		out[i] = room[i*words : (i+1)*words : (i+1)*words]
	}
	return out
}
