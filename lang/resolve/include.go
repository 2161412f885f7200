package resolve

import (
	"slices"

	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

const (
	// maxCopied bounds the words of all copies in one file, maxInRig those in one rig: a
	// few lines of includes of includes would make more of them than there is memory, and
	// rigs that take longer to solve than anybody waits. A stage has about sixty words.
	maxCopied = 20_000
	maxInRig  = 4_000
	// maxHeight bounds how deep includes of includes go.
	maxHeight = 64
)

// rigNamed gives the rig that an include names: the file's own, else one of the files
// that it uses. Nil if there is none, which is reported unless it may be in a file
// that could not be read.
func (w *fileWork) rigNamed(name syntax.Word) *section {
	if own := w.rigs[name.Text]; own != nil {
		return own
	}
	var found *section
	for _, u := range w.used {
		base := u.of.work.rigs[name.Text]
		switch {
		case base == nil:
		case found != nil:
			d := w.report(ambiguousName, name.Span, name.Text,
				"%s is a rig of two used files; name one of them anew", name.Text)
			related(d, found.rig.NamePlace, "%s in the one file", name.Text)
			related(d, base.rig.NamePlace, "%s in the other", name.Text)
			return nil
		default:
			found = base
		}
	}
	if found != nil || w.lacking {
		return found
	}
	near := w.hint.near(name.Text, w.knownRigs())
	of := phrase("this file")
	if len(w.used) > 0 {
		of = "this file or of one that it uses"
	}
	d := w.report(unknownRig, name.Span, name.Text, "%s is not a rig of %s%s", name.Text, of, didYouMean(near))
	w.offerName(d, name, near)
	return nil
}

// knownRigs gives the names of the rigs that can be included.
func (w *fileWork) knownRigs() []string {
	if w.includable == nil {
		names := slices.Clone(w.rigNames)
		for _, u := range w.used {
			names = append(names, u.of.work.rigNames...)
		}
		w.includable = uniqueNames(names)
	}
	return w.includable
}

// copying is one rig while it is brought into another.
type copying struct {
	*expansion
	include *syntax.Include
	base    *section
	// home is the name after "as", files are the copies of the files that it comes from.
	home  source.Place
	files map[*source.File]*source.File
	// parts and ropes find its lines by the names that they have in the included rig.
	parts, ropes map[string]*entry
	// faulty says that what is left out is needed by what stays.
	faulty bool
}

// lines gives the lines of the copy, with the names that they have in the rig.
func (c *copying) lines() []*entry {
	c.parts, c.ropes = map[string]*entry{}, map[string]*entry{}
	var lines []*entry
	for _, l := range c.base.lines {
		switch l.Body.(type) {
		case *syntax.Part, *syntax.Reeve, *syntax.Bad:
			one := c.own(l)
			c.index(one)
			lines = append(lines, one)
		}
	}
	c.change()
	lines = c.leaveOut(lines)
	prefix := c.include.As.Text + "."
	for _, l := range lines {
		l.rename(func(name string) string { return prefix + name })
	}
	c.incomplete = c.incomplete || c.faulty
	return lines
}

// own gives a line of the included rig as one of this copy, without its new names.
func (c *copying) own(l *entry) *entry {
	one := *l
	one.file = c.copyOf(l.file)
	one.copy = c.include.As.Text
	one.changes = slices.Clone(l.changes)
	for i := range one.changes {
		one.changes[i].file = c.copyOf(one.changes[i].file)
	}
	return &one
}

// index notes where a part or a rope is.
func (c *copying) index(l *entry) {
	if p := l.part(); p != nil && c.parts[p.Name.Text] == nil {
		c.parts[p.Name.Text] = l
	}
	if r := l.reeve(); r != nil && c.ropes[r.Rope.Text] == nil {
		c.ropes[r.Rope.Text] = l
	}
}

// copyOf gives the copy that a file has in this include.
func (c *copying) copyOf(f *source.File) *source.File {
	if c.files[f] == nil {
		c.files[f] = f.Copy(c.home)
		c.brought[c.files[f]] = &bringing{c.base, c}
	}
	return c.files[f]
}

// bringing is what was known of a rig before it was copied.
type bringing struct {
	base *section
	made *copying
}

// known says whether a finding in a copy is one that stands at the original already,
// or is only there because of another one.
func (b *bringing) known(d *diag.Diagnostic) bool {
	return b.base.unsound || b.made.faulty || b.base.faults[faultAt(d)]
}

// unknownInBase reports a name after "with" or "without" that the included rig does
// not have.
func (c *copying) unknownInBase(name syntax.Word) {
	c.incomplete = true
	if c.base.unsound { // a statement that could not be read may have it
		return
	}
	var names []string
	if c.hint.afford(len(c.base.lines)) {
		for _, l := range c.base.lines {
			switch body := l.Body.(type) {
			case *syntax.Part:
				names = append(names, body.Name.Text)
			case *syntax.Reeve:
				names = append(names, body.Rope.Text)
			}
		}
	}
	near := c.hint.near(name.Text, uniqueNames(names))
	d := c.report(unknownPart, name.Span, name.Text,
		"%s is not a part of %s%s", name.Text, c.include.Rig.Text, didYouMean(near))
	c.offerName(d, name, near)
}

// uniqueNames gives each name once, in the order given.
func uniqueNames(names []string) []string {
	seen := map[string]bool{}
	var once []string
	for _, name := range names {
		if !seen[name] {
			seen[name] = true
			once = append(once, name)
		}
	}
	return once
}
