package report

import (
	"strings"

	"fairlead/lang/model"
	"fairlead/solve"
	"fairlead/solve/lp"
	"fairlead/solve/report/page"
)

// Speech says single figures of a solved rig in the words of Text, for where one is
// asked for: in an editor. Parts, ropes and strokes are those of the result's rig.
type Speech struct {
	res     *solve.Result
	scale   scale
	ratings []solve.Rating
}

// SpeechOf makes the speech of a rig.
func SpeechOf(res *solve.Result) *Speech {
	return &Speech{res: res, scale: scaleOf(res), ratings: res.Ratings()}
}

// Line says the rig in one line: "3:1 simple, 2.77 with friction, pull 0.638 kN,
// 3 people; hands off: held by top".
func (s *Speech) Line() string {
	if none := noHaul(s.res); none != "" {
		if s.res.Status == solve.Unsolved {
			return none
		}
		return none + "; " + s.handsOff()
	}
	var said []string
	hauls := s.res.Hauls()
	for _, p := range hauls {
		who := ""
		if len(hauls) > 1 && p.Status == solve.OK {
			who = page.Clean(p.Hauler.Name) + " "
		}
		said = append(said, who+s.haul(p))
	}
	line := strings.Join(append(said, s.handsOff()), "; ")
	if s.res.Rig.Incomplete {
		return "not the whole rig: " + line
	}
	return line
}

// haul says what comes of one haul.
func (s *Speech) haul(p *solve.Phase) string {
	if p.Status != solve.OK {
		return outcome(p)
	}
	words := tight(head(p))
	if friction := actual(p); friction != "" {
		words += ", " + friction
	}
	t := text{res: s.res, scale: s.scale}
	return words + ", " + t.pull(p)
}

func (s *Speech) handsOff() string { return "hands off: " + released(s.res, s.scale) }

// tight writes a ratio as a claim has it, without spaces.
func tight(ratio string) string { return strings.Replace(ratio, " : ", ":", 1) }

// Advantage says the ideal advantage: "3:1", or "3:1 by red, 2:1 by blue" where several
// haul. It is empty where there is none.
func (s *Speech) Advantage() string {
	hauls := s.res.Hauls()
	var said []string
	for _, p := range hauls {
		if p.Status != solve.OK || p.Ideal == nil {
			continue
		}
		by := ""
		if len(hauls) > 1 {
			by = " by " + page.Clean(p.Hauler.Name)
		}
		said = append(said, tight(ratio(*p.Ideal))+by)
	}
	return strings.Join(said, ", ")
}

// Strand says in short what a stroke carries in the phase that Text shows, of several
// hauls the first in which it carries something: "1.77 kN", without a mass "3" pulls. It
// is empty where that is unknown and for slack rope.
func (s *Speech) Strand(r *model.Rope, stroke int) string {
	if r.Broken || r.Strokes[stroke] == model.Slack {
		return ""
	}
	t := text{res: s.res, scale: s.scale}
	phases := solvedOf(s.res.Hauls())
	if first := t.shown(); len(phases) == 0 && first != nil {
		phases = []*solve.Phase{first}
	}
	said := ""
	for _, p := range phases {
		for _, st := range strandsOf(p) {
			if st.Rope == r && st.Index == stroke && st.Known() && (said == "" || !st.Slack) {
				if said = s.short(p, st); !st.Slack {
					return said
				}
			}
		}
	}
	return said
}

func (s *Speech) short(p *solve.Phase, st solve.Strand) string {
	in := s.scale.in(p)
	switch {
	case st.Slack:
		return "slack"
	case !in.weighs() && st.Count != nil && !rubbed(p):
		return number(*st.Count)
	case st.Ranges() && st.High == nil:
		return in.say(*st.Low) + " or more"
	case st.Ranges():
		return in.figure(*st.Low) + " to " + in.say(*st.High)
	}
	return in.say(*st.Value)
}

// StrandInPhases says what a stroke carries in each phase: "1.77 kN (3 times the pull)
// hauling, 1.77 kN held".
func (s *Speech) StrandInPhases(r *model.Rope, stroke int) string {
	if r.Broken {
		return "not computed: the line has an error"
	}
	var list []moment
	for _, ph := range inOrder(s.res) {
		for i, st := range strandsOf(ph) {
			if st.Rope == r && st.Index == stroke && st.Known() {
				list = joined(list, s.strandIn(ph, st, ph.Strands[i].Count))
			}
		}
	}
	return spoken(list)
}

func (s *Speech) strandIn(ph *solve.Phase, st solve.Strand, count *lp.Num) moment {
	m := moment{text: s.scale.in(ph).sayForce(st.Force), ideal: idealOnly(ph), when: []string{when(s.res, ph)}}
	if count != nil && ph.Hauler != nil && !ph.Lowering && !count.IsZero() {
		m.text += " (count " + number(*count) + ")"
	}
	return m
}

// spoken joins moments to a clause.
func spoken(list []moment) string {
	var said []string
	for _, m := range list {
		words := m.text + " " + page.List(m.when)
		if m.ideal {
			words += " (ideal)"
		}
		said = append(said, words)
	}
	return strings.Join(said, ", ")
}

// Part says what a part carries in each phase and how far that is from what it bears:
// "1.13 kN hauling, 1.77 kN held: 16 times under its strength".
func (s *Speech) Part(p *model.Part) string {
	text, balance := inPhases(s.res, p, s.scale)
	switch {
	case s.res.Status == solve.Unsolved:
		return "not solved: there is no load or no rope to compute with"
	case !balance:
		return "unknown: there is no balance"
	case p.Kind.IsWeight():
		return s.weighs(p)
	case text == "":
		return "carries nothing"
	}
	verb := "carries "
	switch {
	case p.Kind.IsGrip():
		verb = "grips "
	case p.Kind == model.Hauler:
		verb = "pulls "
	}
	return factored("", verb+text+": ", s.ratings[p.Index], s.scale).text
}

// weighs says what a load counts along the line.
func (s *Speech) weighs(p *model.Part) string {
	held, hauling := s.res.WeightOf(p, false), s.res.WeightOf(p, true)
	if held.Cmp(hauling) == 0 {
		return "weighs " + s.scale.say(held)
	}
	return "weighs " + s.scale.say(hauling) + " along its slope hauling, " + s.scale.say(held) + " held"
}

// Without says what becomes of the rig, hands off, once a part is lost: "if it fails:
// falls". It is empty where the rig is not held with it, and for what cannot be lost.
func (s *Speech) Without(p *model.Part) string {
	if s.res.Released.Answer != solve.Held || p.Kind.IsWeight() || p.Kind.IsPerson() {
		return ""
	}
	stay := s.res.After(solve.LostOf(s.res.Rig, p))
	if stay.Answer == solve.Held {
		return "if it fails: held"
	}
	return "if it fails: " + dropping(stay, s.scale)
}
