package source

// Copy gives a file of the same name and text for what is copied from f to another
// place, its home. A place in it has the text and the lines of the original, and
// tells which copy of it is meant: two copies of one file are two files.
func (f *File) Copy(home Place) *File {
	original := f
	if f.of != nil {
		original = f.of
	}
	return &File{Name: f.Name, Text: f.Text, Whole: f.Whole, lines: f.lines, of: original, home: home}
}

// IsCopy says whether the place lies in a copy of a file.
func (p Place) IsCopy() bool { return p.File != nil && p.File.of != nil }

// Original gives the same place in the file that was copied; p itself if it lies in
// no copy.
func (p Place) Original() Place {
	if !p.IsCopy() {
		return p
	}
	return Place{File: p.File.of, Span: p.Span}
}

// Home gives the place at which the copy that p lies in is brought in; p itself if it
// lies in no copy.
func (p Place) Home() Place {
	if !p.IsCopy() {
		return p
	}
	return p.File.home
}
