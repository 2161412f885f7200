package resolve

import (
	"fairlead/lang/model"
	"fairlead/lang/syntax"
)

// readClaims resolves the names in "expect" and "accept".
func (r *rigWork) readClaims() {
	for _, l := range r.all {
		if l.copy != "" { // what a rig claims is about that rig, not about its copies
			continue
		}
		r.read(l)
		switch body := l.Body.(type) {
		case *syntax.Expect:
			r.readExpect(l.Statement, body)
		case *syntax.Accept:
			a := &model.Accepted{Accept: body, Place: r.file.At(l.Span)}
			a.At, a.Broken = r.claimed(body.At)
			r.rig.Accepted = append(r.rig.Accepted, a)
		}
	}
}

// readExpect resolves one claim.
func (r *rigWork) readExpect(s *syntax.Statement, body *syntax.Expect) {
	c := &model.Claim{Expect: body, Place: r.file.At(s.Span)}
	r.rig.Claims = append(r.rig.Claims, c)
	c.Of, c.Broken = r.claimed(body.Of)
	if body.Subject == syntax.Held && c.Of != nil && !canFail(c.Of) {
		r.misfit(*body.Of, "%s is %s: the claim means nothing, for without names what may fail, such as an anchor, a pulley or a rope",
			c.Of.Name, article(c.Of.Kind))
		c.Broken = true
	}
	if body.By == nil {
		return
	}
	by := r.find(*body.By, func(p *partWork) bool { return p.Kind == model.Hauler })
	switch {
	case by == nil:
		c.Broken = true
	case by.Kind != model.Hauler && r.made.now(body.By.Text) != body.By.Text:
		r.misfit(*body.By, "%s is joined to %s and hauls no more; by names a hauler", body.By.Text, by.Name)
		c.Broken = true
	case by.Kind != model.Hauler:
		r.misfit(*body.By, "%s is %s and hauls nothing; by names a hauler", by.Name, article(by.Kind))
		c.Broken = true
	default:
		c.By = by.Part
		by.claimed = true
	}
}

// canFail says whether a part is one of those whose loss says something of the rig: a
// load that is gone does not fall, and people only let go.
func canFail(p *model.Part) bool { return !p.Kind.IsWeight() && !p.Kind.IsPerson() }

// claimed finds the part that a claim names; broken if there is none.
func (r *rigWork) claimed(name *syntax.Word) (part *model.Part, broken bool) {
	if name == nil {
		return nil, false
	}
	if p := r.find(*name, nil); p != nil {
		p.claimed = true
		return p.Part, false
	}
	return nil, true
}
