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
}

type part struct {
	Name  string     `json:"name"`
	Kind  model.Kind `json:"kind"`
	Phase string     `json:"phase"`
	Load  *Num       `json:"load"`
	force
}

type held struct {
	// Released is the whistle test; nil if the rig is unsolved.
	Released *solve.Answer `json:"released"`
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
	}
	if main := res.Main(); main != nil && main.Status == solve.OK {
		r.Ideal = AdvantageOf(main.Ideal)
		if main.Class != solve.NoClass {
			r.Class = &main.Class
		}
	}
	if len(res.Phases) > 0 && res.Released.Answer != "" {
		r.Held.Released = &res.Released.Answer
	}
	for _, p := range res.Phases {
		r.addPhase(p)
	}
	return r
}

func (r *rig) addPhase(p *solve.Phase) {
	r.Phases = append(r.Phases, p.Name)
	if p.Hauler != nil {
		r.Travel = append(r.Travel, travelOf(p))
	}
	for _, s := range p.Strands {
		r.Strands = append(r.Strands, strandOf(p, s))
	}
	for _, l := range p.Parts {
		r.Parts = append(r.Parts, part{
			Name: l.Part.Name, Kind: l.Part.Kind, Phase: p.Name,
			Load: NumOf(l.Value), force: force{NumOf(l.Low), NumOf(l.High)},
		})
	}
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

func strandOf(p *solve.Phase, s solve.Strand) strand {
	return strand{
		Rope: s.Rope.Line.Name, Index: s.Index,
		From: s.Rope.Nodes[s.Index].Name(), To: s.Rope.Nodes[s.Rope.After(s.Index)].Name(),
		Stroke: s.Rope.Strokes[s.Index].String(), Phase: p.Name,
		Tension: NumOf(s.Value), force: force{NumOf(s.Low), NumOf(s.High)}, Slack: s.Slack,
	}
}
