package report

import (
	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
)

// friction says how far the forces of a phase have friction in them. They are ideal
// unless it is known.
type friction string

const (
	known   friction = "known"
	unknown friction = "unknown"
	stuck   friction = "stuck"
)

// haulOut is the result of one hauler.
type haulOut struct {
	Phase      string       `json:"phase"`
	Hauler     string       `json:"hauler"`
	Status     solve.Status `json:"status"`
	Ideal      *Num         `json:"ideal"`
	Class      *solve.Class `json:"class"`
	Actual     *figures     `json:"actual"`
	Efficiency *figures     `json:"efficiency"`
	PullN      *figures     `json:"pull_n"`
	People     *int64       `json:"people"`
	Friction   *friction    `json:"friction"`
	// NoEfficiency are the parts that rope runs over and whose efficiency is unknown.
	NoEfficiency []string   `json:"no_efficiency"`
	Stroke       *strokeOut `json:"stroke"`
	// Resets is how often the haul stops for the raise; nil without one.
	Resets *int `json:"resets"`
}

// lowerOut is what happens when a hauler gives rope.
type lowerOut struct {
	Phase  string       `json:"phase"`
	Hauler string       `json:"hauler"`
	Status solve.Status `json:"status"`
	HandN  *figures     `json:"hand_n"`
	// Holding are the parts that keep the load where it is.
	Holding      []string  `json:"holding"`
	Friction     *friction `json:"friction"`
	NoEfficiency []string  `json:"no_efficiency"`
	// Parts are what the parts carry while the load comes down.
	Parts []part `json:"parts"`
}

type weakestPart struct {
	Part      string      `json:"part"`
	Phase     string      `json:"phase"`
	LoadN     *figure     `json:"load_n"`
	StrengthN *figure     `json:"strength_n"`
	Factor    *figure     `json:"factor"`
	Limit     solve.Limit `json:"limit"`
	// Knot is the knot that weakens the line; nil without one.
	Knot *string `json:"knot"`
}

// machine makes the machine output of one rig.
type machine struct {
	res     *solve.Result
	ratings []solve.Rating
}

func (m machine) haul(p *solve.Phase) haulOut {
	h := haulOut{Phase: p.Name, Hauler: p.Hauler.Name, Status: p.Status}
	h.Friction, h.NoEfficiency = frictionOf(p)
	if p.Status != solve.OK {
		return h
	}
	h.Ideal = AdvantageOf(p.Ideal)
	if p.Class != solve.NoClass {
		h.Class = &p.Class
	}
	if p.Actual.Known() {
		h.Actual, h.Efficiency = figuresOf(p.Actual.Advantage), figuresOf(p.Actual.Efficiency)
	}
	if f := m.res.PullNewtons(p); f != nil {
		h.PullN = figuresOf(*f)
	}
	if n, ok := m.res.PeopleNeeded(p); ok {
		h.People = &n
	}
	h.Stroke = strokeOf(p.Stroke)
	if p.Stroke != nil && p.Stroke.Raise != nil && !p.Stroke.Raise.Endless {
		h.Resets = &p.Stroke.Raise.Resets
	}
	return h
}

// frictionOf gives nil where there is nothing to say: nothing is pulled.
func frictionOf(p *solve.Phase) (is *friction, lacking []string) {
	if p.Actual == nil {
		return nil, []string{}
	}
	says := known
	switch {
	case len(p.Actual.Unknown) > 0:
		says = unknown
	case p.Actual.Stuck:
		says = stuck
	}
	return &says, names(p.Actual.Unknown)
}

func names(parts []*model.Part) []string {
	list := []string{}
	for _, p := range parts {
		list = append(list, p.Name)
	}
	return list
}

func (m machine) lower(p *solve.Phase) lowerOut {
	l := lowerOut{Phase: p.Name, Hauler: p.Hauler.Name, Status: p.Status, Holding: names(p.Holding), Parts: []part{}}
	l.Friction, l.NoEfficiency = frictionOf(p)
	if p.Status == solve.Lowers {
		l.HandN = m.newtons(pullOf(p))
		l.Parts = m.parts(p)
	}
	return l
}

func (m machine) weakest() *weakestPart {
	w := m.res.Weakest()
	if w == nil {
		return nil
	}
	out := &weakestPart{Part: w.Part.Name, Phase: w.Phase.Name, LoadN: figureOf(w.Load),
		StrengthN: figureOf(w.Strength), Factor: figureOf(w.Factor), Limit: w.Limit}
	if w.Knot != "" {
		out.Knot = &w.Knot
	}
	return out
}

func (m machine) strands(p *solve.Phase) []strand {
	var list []strand
	actual := strandsOf(p)
	for i, s := range p.Strands {
		list = append(list, strand{
			Rope: s.Rope.Line.Name, Index: s.Index,
			From: s.Rope.Nodes[s.Index].Name(), To: s.Rope.Nodes[s.Rope.After(s.Index)].Name(),
			Stroke: s.Rope.Strokes[s.Index].String(), Phase: p.Name,
			Tension: NumOf(s.Value), force: force{NumOf(s.Low), NumOf(s.High)}, Slack: s.Slack,
			TensionN: m.newtons(actual[i].Force),
		})
	}
	return list
}

func (m machine) parts(p *solve.Phase) []part {
	var list []part
	band := m.res.Band(p)
	for _, l := range p.Parts {
		out := part{
			Name: l.Part.Name, Kind: l.Part.Kind, Phase: p.Name,
			Load: NumOf(l.Value), force: force{NumOf(l.Low), NumOf(l.High)}, AtMost: l.AtMost,
			StrengthN: figureOf(m.ratings[l.Part.Index].Strength),
		}
		carried := loadOf(p, l.Part)
		if f := m.newtons(carried.Force); f != nil {
			out.LoadN, out.LowN, out.HighN = f.Value, f.Low, f.High
			if !m.res.Brakes(p) { // what nobody hauls, no part must bear
				out.Factor = m.factor(carried)
			}
		}
		if band.Known() {
			out.BandN = m.newtons(band.Parts[l.Part.Index].Force)
		}
		list = append(list, out)
	}
	return list
}

// factor gives the strength of a part over what it carries in one phase; nil without
// a strength or a load.
func (m machine) factor(l solve.PartLoad) *figure {
	strength, load := m.ratings[l.Part.Index].Strength, l.Most().Mul(*m.res.WeightNewtons)
	if strength == nil || load.Sign() <= 0 {
		return nil
	}
	f := strength.Quo(load)
	return figureOf(&f)
}

// newtons gives a force in newtons; nil if it is not known or the rig has no mass.
func (m machine) newtons(f solve.Force) *figures {
	if m.res.WeightNewtons == nil || !f.Known() {
		return nil
	}
	in := func(n *lp.Num) *lp.Num {
		if n == nil {
			return nil
		}
		product := n.Mul(*m.res.WeightNewtons)
		return &product
	}
	return figuresOf(solve.Force{Value: in(f.Value), Low: in(f.Low), High: in(f.High)})
}
