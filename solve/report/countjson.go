package report

import (
	"io"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/count"
)

// counted is the machine output of count.
type counted struct {
	Version int          `json:"version"`
	Rigs    []countedRig `json:"rigs"`
}

type countedRig struct {
	File   string       `json:"file"`
	Range  Range        `json:"range"`
	Name   string       `json:"name"`
	Title  string       `json:"title"`
	Status solve.Status `json:"status"`
	Counts []countOut   `json:"counts"`
}

type countOut struct {
	Phase string `json:"phase"`
	// Unit is what counts as 1: the "pull" or the "load".
	Unit   string     `json:"unit"`
	Steps  []stepOut  `json:"steps"`
	Force  *Num       `json:"force"`
	Travel *Num       `json:"travel"`
	Fixed  []fixedOut `json:"fixed"`
	// Open says that statics leaves some share open.
	Open bool `json:"open"`
}

type stepOut struct {
	Kind count.Kind `json:"kind"`
	// Text is the step as it is said aloud.
	Text  string    `json:"text"`
	Part  *string   `json:"part"`
	Value *Num      `json:"value"`
	Force *Num      `json:"force"`
	Items []itemOut `json:"items"`
	// Line is the piece of reeving line; nil where the step has none.
	Line      *lineOut      `json:"line"`
	Unknowns  []unknownOut  `json:"unknowns"`
	Equations []equationOut `json:"equations"`
}

type itemOut struct {
	Part string `json:"part"`
	// Value is up positive.
	Value  *Num `json:"value"`
	Weight bool `json:"weight"`
}

type lineOut struct {
	Rope    string `json:"rope"`
	Strokes []int  `json:"strokes"`
	Known   []*Num `json:"known"`
}

type unknownOut struct {
	Letter string   `json:"letter"`
	Line   *lineOut `json:"line"`
	Value  *Num     `json:"value"`
}

type equationOut struct {
	Parts    []string  `json:"parts"`
	Terms    []termOut `json:"terms"`
	Constant *Num      `json:"constant"`
}

type termOut struct {
	Factor *Num   `json:"factor"`
	Letter string `json:"letter"`
}

type fixedOut struct {
	Part string `json:"part"`
	Load *Num   `json:"load"`
	force
	AtMost bool `json:"atMost"`
}

// CountJSON writes the counts of rigs as machine output, indented.
func CountJSON(w io.Writer, list []Counted) error {
	out := counted{Version: Version, Rigs: []countedRig{}}
	for _, r := range list {
		rig := countedRig{
			File: FileName(r.Rig.Place), Range: RangeOf(r.Rig.Place), Name: r.Rig.Name,
			Title: r.Rig.Title, Status: r.Status, Counts: []countOut{},
		}
		for _, c := range r.Counts {
			rig.Counts = append(rig.Counts, countOutOf(r.Result, c))
		}
		out.Rigs = append(out.Rigs, rig)
	}
	return Encode(w, out)
}

func countOutOf(res *solve.Result, c *count.Count) countOut {
	out := countOut{
		Phase: c.Phase.Name, Unit: "pull", Steps: []stepOut{}, Fixed: []fixedOut{},
		Force: AdvantageOf(c.Force), Travel: AdvantageOf(c.Travel), Open: c.Open,
	}
	if c.Unit == count.OfLoad {
		out.Unit = "load"
	}
	v := voiceOf(res, c)
	for _, s := range c.Steps {
		out.Steps = append(out.Steps, stepOutOf(v, s))
	}
	for _, f := range c.Fixed {
		out.Fixed = append(out.Fixed, fixedOut{Part: f.Part.Name, Load: NumOf(f.Load.Value),
			force: force{NumOf(f.Load.Low), NumOf(f.Load.High)}, AtMost: f.AtMost})
	}
	return out
}

func stepOutOf(v voice, s count.Step) stepOut {
	out := stepOut{
		Kind: s.Kind, Text: v.sentence(s), Part: nameOf(s.Part), Line: lineOutOf(s.Line),
		Items: []itemOut{}, Unknowns: []unknownOut{}, Equations: []equationOut{},
	}
	if s.Kind != count.Equations {
		out.Value = NumOf(&s.Value)
	}
	if s.Kind == count.MovingBend {
		out.Force = NumOf(&s.Force)
	}
	for _, i := range s.Items {
		out.Items = append(out.Items, itemOut{i.Part.Name, NumOf(&i.Value), i.Weight})
	}
	for i, u := range s.Unknowns {
		out.Unknowns = append(out.Unknowns, unknownOut{letter(i), lineOutOf(u.Line), NumOf(&u.Value)})
	}
	for _, e := range s.Equations {
		eq := equationOut{Parts: []string{}, Terms: []termOut{}, Constant: NumOf(&e.Constant)}
		for _, p := range e.Body.Parts {
			eq.Parts = append(eq.Parts, p.Name)
		}
		for _, t := range e.Terms {
			eq.Terms = append(eq.Terms, termOut{NumOf(&t.Factor), letter(t.Unknown)})
		}
		out.Equations = append(out.Equations, eq)
	}
	return out
}

func lineOutOf(f count.Fragment) *lineOut {
	if f.Rope == nil {
		return nil
	}
	out := &lineOut{Rope: f.Rope.Line.Name, Strokes: append([]int{}, f.Strokes...), Known: []*Num{}}
	for _, n := range f.Known {
		out.Known = append(out.Known, NumOf(n))
	}
	return out
}

func nameOf(p *model.Part) *string {
	if p == nil {
		return nil
	}
	return &p.Name
}
