package show

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"net/url"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"fairlead/lang/diag"
	"fairlead/lang/source"
	"fairlead/solve/report"
)

func (s *sarif) location(p source.Place) sarifLocation {
	return sarifLocation{Physical: sarifPhysical{s.artifact(p.File), region(p)}}
}

// artifact says where a file is, and its place among the examined ones.
func (s *sarif) artifact(f *source.File) sarifArtifact {
	a := artifactOf(f.Name)
	if i := slices.Index(s.Files, f); i >= 0 {
		a.Index = &i
	}
	return a
}

func (s *sarif) analysed() []sarifAnalysed {
	list := []sarifAnalysed{}
	for _, f := range s.Files {
		list = append(list, sarifAnalysed{artifactOf(f.Name), len(f.Whole), []string{"analysisTarget"}})
	}
	return list
}

// artifactOf writes the path of a file as a URI. One that leads out of the folder in
// which the program was started stands on its own: relative ones must not climb.
func artifactOf(name string) sarifArtifact {
	volume, rest := parted(name)
	if climbs := rest == ".." || strings.HasPrefix(rest, "../"); climbs || volume != "" && !strings.HasPrefix(rest, "/") {
		if abs, err := filepath.Abs(name); err == nil {
			volume, rest = parted(abs)
		}
	}
	uri, relative := uriFrom(volume, rest)
	if relative {
		return sarifArtifact{URI: uri, BaseID: base}
	}
	return sarifArtifact{URI: uri}
}

// parted gives the volume of a path, where the system has volumes, and what follows,
// both with forward slashes.
func parted(name string) (volume, rest string) {
	volume = filepath.VolumeName(name)
	return filepath.ToSlash(volume), path.Clean(filepath.ToSlash(name[len(volume):]))
}

// uriFrom writes a path as a URI. It is relative if the path does not say where it
// begins. A volume is a drive, "C:", or a share of a network, "//HOST/SHARE".
func uriFrom(volume, rest string) (uri string, relative bool) {
	share, isShare := strings.CutPrefix(volume, "//")
	switch {
	case isShare:
		host, folder, _ := strings.Cut(share, "/")
		return (&url.URL{Scheme: "file", Host: host, Path: "/" + folder + rest}).String(), false
	case volume != "":
		return (&url.URL{Scheme: "file", Path: "/" + volume + rest}).String(), false
	case strings.HasPrefix(rest, "/"):
		return (&url.URL{Scheme: "file", Path: rest}).String(), false
	}
	return (&url.URL{Path: rest}).String(), true
}

// region gives a place as the standard counts: from 1, in UTF-16 code units.
func region(p source.Place) sarifRegion {
	r := report.RangeOf(p)
	return sarifRegion{r.Start.Line + 1, r.Start.Character + 1, r.End.Line + 1, r.End.Character + 1}
}

func (s *sarif) fix(f diag.Fix) sarifFix {
	fix := sarifFix{Description: message(told(f))}
	index := map[*source.File]int{}
	for _, e := range f.Edits {
		i, known := index[e.Place.File]
		if !known {
			i = len(fix.Changes)
			index[e.Place.File] = i
			fix.Changes = append(fix.Changes, sarifChange{Artifact: s.artifact(e.Place.File)})
		}
		r := sarifReplacement{Deleted: region(e.Place)}
		if e.NewText != "" {
			r.Inserted = &sarifContent{e.NewText}
		}
		fix.Changes[i].Replacements = append(fix.Changes[i].Replacements, r)
	}
	return fix
}

// fingerprints tells findings of a run from one another without the lines they are
// on, so that a service knows a finding again when lines have come before it.
type fingerprints map[string]int

// of gives the fingerprint of a finding: of its rule, its part, the line that it is in
// whatever its blanks, and which of several alike in the file it is. The figures of a
// message, which change with any other part, are not in it.
func (f fingerprints) of(d diag.Diagnostic) string {
	line := ""
	if file := d.Place.File; file != nil {
		line = file.Slice(file.LineSpan(file.Line(d.Place.Span.Start)))
	}
	words := strings.Join(strings.Fields(line), " ")
	sum := sha256.Sum256([]byte(strings.Join([]string{d.Rule, d.Subject, d.Place.Text(), words}, "\x00")))
	print := hex.EncodeToString(sum[:16])
	of := nameOf(d) + "\x00" + print
	f[of]++
	return fmt.Sprintf("%s:%d", print, f[of])
}
