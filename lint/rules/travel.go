package rules

import (
	"fairlead/lang/diag"
	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lint"
	"fairlead/solve"
)

// strokeOf gives the stroke of the rig's haul; nil if it is not known, or if the rig
// does not do its job for another reason.
func strokeOf(p *lint.Pass) *solve.Stroke {
	main := p.Result.Main()
	if p.Explained() || main == nil || !main.Stroke.Known() {
		return nil
	}
	return main.Stroke
}

// meeting makes a finding about two parts that meet, without its message.
func meeting(p *lint.Pass, s *solve.Stroke, pair *solve.Pair) diag.Diagnostic {
	d := diag.Diagnostic{
		Place: pairPlace(p, pair), Subject: pair.Lower.Name,
		Also: append([]string{pair.Upper.Name, pair.Rope.Line.Name}, lint.NamesIn([]*solve.Body{s.Load})...),
	}
	for _, part := range s.Load.Parts {
		if at, said := part.Values.Places["raise"]; said && s.Raise != nil {
			d.Related = append(d.Related, diag.Related{Place: at, Message: "the height to raise " + lint.NameOf(part) + " by"})
		}
	}
	return d
}

// pairPlace gives the strand between two parts, or else where a rope touches the lower
// one.
func pairPlace(p *lint.Pass, pair *solve.Pair) source.Place {
	from, to := pair.Rope.Nodes[pair.Index], pair.Rope.Nodes[pair.Rope.After(pair.Index)]
	ends := [2]*model.Part{from.Part, to.Part}
	joins := ends == [2]*model.Part{pair.Lower, pair.Upper} || ends == [2]*model.Part{pair.Upper, pair.Lower}
	if joins && from.NamePlace.Span.End <= to.NamePlace.Span.Start {
		return from.NamePlace.File.At(from.NamePlace.Span.To(to.NamePlace.Span))
	}
	return p.OnRope(pair.Lower)
}

// met says that two parts meet: "grab meets top".
func met(pair *solve.Pair) string {
	return lint.NameOf(pair.Lower) + " meets " + lint.NameOf(pair.Upper)
}

// raisesInOneStroke says whether a height that is asked for needs no reset.
func raisesInOneStroke(s *solve.Stroke) bool {
	return s.Raise != nil && s.Raise.EndedBy == nil && !s.Raise.Endless && s.Raise.Resets == 0
}
