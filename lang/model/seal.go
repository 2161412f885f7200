package model

// Seal numbers the parts and notes what Root and Part look up, so that a chain of
// a thousand clips is walked once. It is called when every part is there and
// every clip is made, which must form no circle; neither may change after it.
func (r *Rig) Seal() {
	r.byName = make(map[string]*Part, len(r.Parts))
	for i, p := range r.Parts {
		p.Index = i
		if _, taken := r.byName[p.Name]; !taken {
			r.byName[p.Name] = p
		}
	}
	for _, p := range r.Parts {
		p.seal()
	}
}

// seal notes the root of a part and of everything between the two.
func (p *Part) seal() {
	root := p
	for root.root == nil && root.On != nil {
		root = root.On
	}
	if root.root != nil {
		root = root.root
	}
	for q := p; q != nil && q.root == nil; q = q.On {
		q.root = root
	}
}
