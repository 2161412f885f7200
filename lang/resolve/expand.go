package resolve

import (
	"slices"

	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

// expansion is the statements of one rig with those that its "include" statements
// bring in, and what became of these and of its "join" statements.
type expansion struct {
	*fileWork
	*section
	lines    []*entry
	includes []*model.Include
	joins    []*model.Join
	// copies finds the copies by their names.
	copies map[string]*model.Include
	// leftOut are the parts that copies leave out.
	leftOut map[string]bool
	// joined has, for each end that "join" took away, the part that was put in its place,
	// which may itself be gone by another join.
	joined map[string]string
	// remains has the part in the place of both ends of a join.
	remains map[*model.Join]string
	// unjoined are the names in "join" that no line has.
	unjoined []syntax.Word
	// grown is how many words its copies have; full says that no more are made.
	grown int
	full  bool
	// inCircle are the rigs that were reported to lead back to this one.
	inCircle map[*section]bool
	// incomplete says that something is missing.
	incomplete bool
}

// expand makes the lines of a rig. The rigs that it includes are resolved already,
// but for those in a circle.
func (w *fileWork) expand(s *section) *expansion {
	x := &expansion{
		fileWork: w, section: s, copies: map[string]*model.Include{},
		leftOut: map[string]bool{}, joined: map[string]string{}, remains: map[*model.Join]string{},
		inCircle: map[*section]bool{}, incomplete: s.short,
	}
	for i, st := range slices.Concat(s.shared, s.own) {
		switch body := st.Body.(type) {
		case *syntax.Include:
			x.include(st, body)
		case *syntax.Join:
			x.joins = append(x.joins, &model.Join{Join: body, Place: w.file.At(st.Span)})
		default:
			x.lines = append(x.lines, &entry{Statement: st, file: w.file, work: w, shared: i < len(s.shared)})
		}
	}
	x.checkCopyNames()
	x.join()
	return x
}

// include brings in one rig.
func (x *expansion) include(st *syntax.Statement, body *syntax.Include) {
	made := &model.Include{Include: body, Place: x.file.At(st.Span)}
	x.includes = append(x.includes, made)
	x.incomplete = x.incomplete || st.Faulty
	name := body.As.Text
	if first, taken := x.copies[name]; taken {
		x.reportTwice(body.As, x.file.At(first.As.Span), "copy")
		x.incomplete = true
		return
	}
	x.copies[name] = made
	base := x.rigNamed(body.Rig)
	if base == nil || !x.canCopy(st, body, base) {
		x.incomplete = true
		return
	}
	made.Of = base.rig
	x.incomplete = x.incomplete || base.unsound
	x.height = max(x.height, base.height+1)
	home := x.file.At(body.As.Span)
	c := &copying{expansion: x, include: body, base: base, files: map[*source.File]*source.File{}, home: home}
	x.lines = append(x.lines, c.lines()...)
}

// canCopy reports an include that leads back to its own rig, and those by which a file
// grows beyond what is computed.
func (x *expansion) canCopy(st *syntax.Statement, body *syntax.Include, base *section) bool {
	switch {
	case base == x.section:
		x.report(includeCircle, body.Rig.Span, body.Rig.Text, "%s includes itself", body.Rig.Text)
		return false
	case x.circular[inclusion{x.section, st}] && x.inCircle[base]: // said of another copy of it
		return false
	case x.circular[inclusion{x.section, st}]:
		x.inCircle[base] = true
		x.report(includeCircle, body.Rig.Span, body.Rig.Text,
			"%s includes %s, which in the end includes %s", x.name.Text, body.Rig.Text, x.name.Text)
		return false
	case base.height >= maxHeight:
		x.report(tooLarge, body.Rig.Span, body.Rig.Text,
			"%s is left out: it is a copy of a copy and so on, %d deep, and no more are made", body.As.Text, maxHeight)
		return false
	case x.full || x.grown+base.size > maxInRig:
		if !x.full {
			x.full = true
			x.report(tooLarge, body.Rig.Span, body.Rig.Text,
				"%s is left out, and what comes after it: the copies in %s would have more than %d words", body.As.Text, x.name.Text, maxInRig)
		}
		return false
	case x.copied+base.size > maxCopied:
		if x.copied < maxCopied {
			x.report(tooLarge, body.Rig.Span, body.Rig.Text,
				"%s is left out, and what comes after it: the copies of this file would have more than %d words", body.As.Text, maxCopied)
		}
		x.copied = maxCopied
		return false
	}
	x.grown += base.size
	x.copied += base.size
	return true
}

// now gives the name of the part that is in the place of one which a join took away;
// other names stay.
func (x *expansion) now(name string) string {
	for {
		to, gone := x.joined[name]
		if !gone {
			return name
		}
		name = to
	}
}

// checkCopyNames reports copies that have the name of a part of the rig.
func (x *expansion) checkCopyNames() {
	for _, l := range x.lines {
		p := l.part()
		if p == nil || l.copy != "" {
			continue
		}
		if of := x.copies[p.Name.Text]; of != nil {
			x.reportTwice(of.As, l.file.At(p.Name.Span), "part")
			x.incomplete = true
		}
	}
}

// size is how many words some lines have.
func size(lines []*entry) int {
	n := 0
	for _, l := range lines {
		n += 1 + len(l.Tokens)
	}
	return n
}
