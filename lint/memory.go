package lint

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"maps"
	"strconv"
	"sync"
	"sync/atomic"

	"fairlead/lang/diag"
	"fairlead/lang/load"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/solve"
)

// Memory examines one file in version after version: a rig of which nothing has
// changed, wherever it stands now, is neither solved nor examined again. What it
// finds is what Examine finds. It is safe for several goroutines at once.
type Memory struct {
	rules []*Rule
	known []string

	mu sync.Mutex
	// rigs are those of the last versions, by what they depend on.
	rigs map[rigKey]*remembered
	// last is the newest version, age how many there have been.
	last *source.File
	age  int

	// solving is held while a rig is solved, so that no two are at once.
	solving sync.Mutex
}

// rigKey is a digest of all that the findings in a rig depend on.
type rigKey [sha256.Size]byte

// remembered is a rig of some version. Its text stood where it no longer need be.
type remembered struct {
	age    int // of the last version that had it
	result atomic.Pointer[solve.Result]

	mu sync.Mutex // held while the rules look at it
	// seen is what the rules found; nil until they have looked.
	seen *seen
}

// seen is what the rules found in a rig.
type seen struct {
	text          extract
	found, silent []diag.Diagnostic
	// dim says that rules that are Latent do not see yet what is wrong with it.
	dim bool
	// spent is what each rule's purse paid.
	spent map[*Rule]purse
}

// NewMemory makes a memory of nothing, for the rules given.
func NewMemory(rules []*Rule) *Memory {
	return &Memory{rules: rules, known: Names(rules), rigs: map[rigKey]*remembered{}}
}

// Examine gives what Examine gives for one file. It gives up, and ok is false, when
// stop says so between two rules; a nil stop never does.
func (m *Memory) Examine(f *load.Loaded, stop func() bool) (outcome Outcome, ok bool) {
	e := m.examination(f)
	e.stop = stop
	outcome = e.outcome(m.known)
	diag.Sort(outcome.Findings, []*source.File{f.File})
	return outcome, !e.stopped
}

// Result gives the figures of one rig of a file, which may be those of an earlier
// version in which nothing of the rig was different: parts, ropes and strokes
// correspond by their places in the lists, and positions in the text do not. One rig
// is solved after another; ok is false if stop says, before the rig's turn comes, that
// nobody wants it any more. A nil stop never does.
func (m *Memory) Result(f *load.Loaded, rig int, stop func() bool) (res *solve.Result, ok bool) {
	res = m.solved(m.remember(m.examination(f), rig), f.Model.Rigs[rig], stop)
	return res, res != nil
}

// solved gives the figures of a remembered rig; nil if it is stopped.
func (m *Memory) solved(known *remembered, rig *model.Rig, stop func() bool) *solve.Result {
	if res := known.result.Load(); res != nil {
		return res
	}
	m.solving.Lock()
	defer m.solving.Unlock()
	if res := known.result.Load(); res != nil {
		return res
	}
	if stop != nil && stop() {
		return nil
	}
	res := solve.Rig(rig)
	known.result.Store(res)
	return res
}

func (m *Memory) examination(f *load.Loaded) *examination {
	return &examination{file: f, House: HouseOf(f), rules: m.rules, purses: map[*Rule]*purse{}, memory: m}
}

// remember finds a rig among those of earlier versions, and notes it if it is new.
func (m *Memory) remember(e *examination, index int) *remembered {
	key := e.key(index)
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.last != e.file.File {
		m.last = e.file.File
		m.age++
		maps.DeleteFunc(m.rigs, func(_ rigKey, r *remembered) bool { return r.age < m.age-2 })
	}
	known := m.rigs[key]
	if known == nil {
		known = &remembered{}
		m.rigs[key] = known
	}
	known.age = m.age
	return known
}

// look gives what the rules find in a rig, from memory where that is the same.
func (e *examination) look(index int) *seen {
	rig := e.file.Model.Rigs[index]
	if e.memory == nil {
		p := e.pass(rig, solve.Rig(rig))
		return see(p)
	}
	known := e.memory.remember(e, index)
	now := e.extract(index)
	known.mu.Lock()
	defer known.mu.Unlock()
	if known.seen != nil && e.pay(known.seen.spent) {
		return known.seen.movedTo(now)
	}
	before := maps.Collect(e.balance())
	res := e.memory.solved(known, rig, e.stop)
	if res == nil {
		e.stopped = true
		return &seen{}
	}
	if res.Rig != rig { // it was solved in an earlier version, where its places are others
		res = solve.Rig(rig)
	}
	p := e.pass(rig, res)
	s := see(p)
	s.text, s.spent = now, map[*Rule]purse{}
	broke := false
	for rule, left := range e.balance() {
		was, had := before[rule]
		if !had {
			was = full
		}
		s.spent[rule] = was.less(left)
		broke = broke || left.empty()
	}
	// What could not be paid for may be found another time.
	if !broke && !e.stopped && s.contained() {
		known.seen = s
	}
	return s
}

// see lets the rules look at a rig.
func see(p *Pass) *seen {
	found := p.run()
	return &seen{found: found, silent: p.silent, dim: p.isDim()}
}

// key digests what the findings in a rig depend on: its text and all others that say
// something of it.
func (e *examination) key(index int) rigKey {
	h := sha256.New()
	add := func(texts ...string) {
		for _, t := range texts {
			var n [8]byte
			binary.LittleEndian.PutUint64(n[:], uint64(len(t)))
			h.Write(n[:])
			h.Write([]byte(t))
		}
	}
	rig := e.file.Model.Rigs[index]
	add(e.file.File.Name, rig.Name, e.extract(index).text)
	if e.file.Policy != nil {
		add(e.file.Policy.File.Name, e.file.Policy.File.Text)
	}
	for _, used := range e.file.Uses() {
		add(used.File.Name, used.File.Text, fmt.Sprint(used.Err))
	}
	add(strconv.Itoa(e.standing(index).own))
	flags := []byte{0, 0}
	if len(e.file.Model.Rigs) > 1 {
		flags[0] = 1
	}
	if legible(e.file.Problems, rig) {
		flags[1] = 1
	}
	h.Write(flags)
	return rigKey(h.Sum(nil))
}
