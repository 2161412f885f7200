package report

import (
	"encoding/json"
	"io"

	"fairlead/lang/model"
	"fairlead/solve"
)

// Version is the version of the machine output of solve and count. It grows when
// a reader of the old form could misread the new one.
const Version = 1

// solved is the machine output of solve. Field order is part of the format, and
// lists are never null.
type solved struct {
	Version int   `json:"version"`
	Rigs    []rig `json:"rigs"`
}

type rig struct {
	File   string       `json:"file"`
	Range  Range        `json:"range"`
	Name   string       `json:"name"`
	Title  string       `json:"title"`
	Status solve.Status `json:"status"`
	Phases []string     `json:"phases"`
	Ideal  *Num         `json:"ideal"`
	Class  *solve.Class `json:"class"`
	// Travel is the motion per unit of rope hauled, one entry a haul phase.
	Travel  []travel `json:"travel"`
	Strands []strand `json:"strands"`
	Parts   []part   `json:"parts"`
	Held    held     `json:"held"`
	// Actual, PullN, People and Friction are those of the haul that Ideal is of.
	Actual   *figures  `json:"actual"`
	PullN    *figures  `json:"pull_n"`
	People   *int64    `json:"people"`
	Friction *friction `json:"friction"`
	// Hauls has one entry a haul phase.
	Hauls   []haulOut    `json:"hauls"`
	Lower   []lowerOut   `json:"lower"`
	Weakest *weakestPart `json:"weakest"`
	DropM   drops        `json:"drop_m"`
	// Stroke and Resets are those of the haul that Ideal is of.
	Stroke      *strokeOut         `json:"stroke"`
	Resets      *int               `json:"resets"`
	RopeNeededM map[string]*figure `json:"rope_needed_m"`
}

type travel struct {
	Phase  string `json:"phase"`
	Bodies []body `json:"bodies"`
}

type body struct {
	Parts []string `json:"parts"`
	// Rise is up positive; nil if the ropes do not fix the body's motion.
	Rise *Num `json:"rise"`
}

// force is a force in fractions of the raised load's weight. High is also nil
// where there is no upper limit.
type force struct {
	Low  *Num `json:"low"`
	High *Num `json:"high"`
}

type strand struct {
	Rope    string `json:"rope"`
	Index   int    `json:"index"`
	From    string `json:"from"`
	To      string `json:"to"`
	Stroke  string `json:"stroke"`
	Phase   string `json:"phase"`
	Tension *Num   `json:"tension"`
	force
	Slack bool `json:"slack"`
	// TensionN has friction in it where that is known.
	TensionN *figures `json:"tension_n"`
}

type part struct {
	Name  string     `json:"name"`
	Kind  model.Kind `json:"kind"`
	Phase string     `json:"phase"`
	Load  *Num       `json:"load"`
	force
	// AtMost says that the forces on it are not parallel and their sizes are added up.
	AtMost bool `json:"at_most"`
	// LoadN has friction in it where that is known.
	LoadN *figure `json:"load_n"`
	LowN  *figure `json:"low_n"`
	HighN *figure `json:"high_n"`
	// BandN is how far friction at rest may shift it; nil where nothing is at rest or
	// friction is unknown.
	BandN     *figures `json:"band_n"`
	StrengthN *figure  `json:"strength_n"`
	// Factor is the strength over the upper end of the load in this phase.
	Factor *figure `json:"factor"`
}

// JSON writes rigs in their order as machine output, indented.
func JSON(w io.Writer, list []*solve.Result) error {
	out := solved{Version: Version, Rigs: make([]rig, 0, len(list))}
	for _, res := range list {
		out.Rigs = append(out.Rigs, rigOf(res))
	}
	return Encode(w, out)
}

// Encode writes a value as indented JSON without escaping what is no danger in
// a terminal or a file.
func Encode(w io.Writer, value any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(value)
}

func rigOf(res *solve.Result) rig {
	r := rig{
		File: FileName(res.Rig.Place), Range: RangeOf(res.Rig.Place),
		Name: res.Rig.Name, Title: res.Rig.Title, Status: res.Status,
		Phases: []string{}, Travel: []travel{}, Strands: []strand{}, Parts: []part{},
		Hauls: []haulOut{}, Lower: []lowerOut{},
	}
	m := machine{res: res, ratings: res.Ratings()}
	if main := res.Main(); main != nil && main.Status == solve.OK {
		h := m.haul(main)
		r.Ideal, r.Class, r.Actual, r.PullN, r.People, r.Friction =
			h.Ideal, h.Class, h.Actual, h.PullN, h.People, h.Friction
		r.Stroke, r.Resets = h.Stroke, h.Resets
	}
	r.Held = heldOf(res)
	for _, p := range res.Phases {
		r.Phases = append(r.Phases, p.Name)
		if p.Hauler != nil {
			r.Travel = append(r.Travel, travelOf(p))
			r.Hauls = append(r.Hauls, m.haul(p))
		}
		r.Strands = append(r.Strands, m.strands(p)...)
		r.Parts = append(r.Parts, m.parts(p)...)
	}
	for _, p := range res.Lowers {
		r.Lower = append(r.Lower, m.lower(p))
	}
	r.Weakest, r.DropM, r.RopeNeededM = m.weakest(), dropsOf(res), ropeNeededOf(res)
	return r
}

func travelOf(p *solve.Phase) travel {
	t := travel{Phase: p.Name, Bodies: []body{}}
	for _, m := range p.Motion {
		b := body{Parts: []string{}}
		for _, part := range m.Body.Parts {
			b.Parts = append(b.Parts, part.Name)
		}
		if !m.Free {
			b.Rise = NumOf(&m.Rise)
		}
		t.Bodies = append(t.Bodies, b)
	}
	return t
}
