package lp

import (
	"encoding/binary"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// tape turns the bytes of the fuzzer into numbers; past its end all is 0.
type tape []byte

func (b *tape) byte() byte {
	if len(*b) == 0 {
		return 0
	}
	first := (*b)[0]
	*b = (*b)[1:]
	return first
}

func (b *tape) word() uint64 {
	var w [8]byte
	for i := range w {
		w[i] = b.byte()
	}
	return binary.LittleEndian.Uint64(w[:])
}

// number gives numbers of every kind: small, any fraction of words, wide, and
// with inexact ones any float64.
func (b *tape) number(inexact bool) Num {
	switch kind := b.byte(); {
	case kind < 200:
		return Int(int64(kind%7) - 3)
	case kind < 220:
		return Frac(int64(b.byte())-128, int64(b.byte())+1)
	case kind < 230:
		return Frac(int64(b.word()), int64(b.word()|1))
	case kind < 235:
		n := Frac(int64(b.word()), int64(b.word()|1))
		return n.Mul(n).Mul(n)
	case inexact:
		if f := math.Float64frombits(b.word()); !math.IsNaN(f) && !math.IsInf(f, 0) {
			return Approx(f)
		}
	}
	return Num{}
}

func (b *tape) program(inexact bool) *Program {
	p := &Program{}
	rows, columns := int(b.byte()%8), int(b.byte()%14)
	for range rows {
		p.Row(b.number(inexact))
	}
	for range columns {
		var entries []Entry
		for range b.byte() % 5 {
			if rows > 0 {
				entries = append(entries, Entry{int(b.byte()) % rows, b.number(inexact)})
			}
		}
		p.Add(b.number(inexact), entries...)
	}
	return p
}

// FuzzSolve gives programs with all sorts of numbers: nothing may panic or go on
// for ever, and what is exact must be proven.
func FuzzSolve(f *testing.F) {
	f.Add([]byte{}, false)
	f.Add([]byte("a line of rope, and another, and one more to go with it"), false)
	f.Add([]byte("\x03\x06\x04\x05\x04\x02\x00\x04\x01\x02\x02\x01\x05\x04\x03\x02\x02\x04\x05\x01\x00\x06"), true)
	f.Add([]byte{2, 3, 240, 1, 2, 3, 4, 5, 6, 7, 60, 4, 2, 0, 225, 9, 9, 9, 9, 9, 9, 9, 1, 7, 7, 7}, true)
	f.Fuzz(func(t *testing.T, data []byte, inexact bool) {
		b := tape(data)
		p := b.program(inexact)
		for _, how := range ways {
			s := solve(p, how)
			if p.exact() {
				requireProof(t, p, s)
			}
			b.ask(t, p, s)
		}
	})
}

// ask asks everything of a solution, in any order.
func (b *tape) ask(t require.TestingT, p *Program, s *Solution) {
	for range b.byte() % 6 {
		var form []Term
		for range b.byte() % 4 {
			if len(p.Columns) > 0 {
				form = append(form, Term{int(b.byte()) % len(p.Columns), b.number(true)})
			}
		}
		low, high, lowOK, highOK := s.Range(form)
		if p.exact() && lowOK && highOK {
			require.LessOrEqual(t, low.Cmp(high), 0)
		}
		s.Extremes(form)
		s.Unique()
		s.Open()
		if len(p.RHS) > 0 {
			s.MultiplierRange(int(b.byte()) % len(p.RHS))
		}
		switch b.byte() % 3 {
		case 0:
			s.Least(form)
		case 1:
			s.Largest(form)
		}
	}
	if p.exact() {
		requireProof(t, p, s)
	}
}
