package model

import (
	"fairlead/lang/quantity"
	"fairlead/lang/source"
)

// Part is one named thing of a rig, lines and people included.
type Part struct {
	Name  string
	Kind  Kind
	Model string // the model's name, empty without one
	// Stock is the model of that name, of the file, of one that it uses or of the
	// built-in catalogue; nil without a name or where no model has it.
	Stock *Stock
	// On is the part that this one is clipped to; nil if it hangs free or is fixed.
	On *Part
	// Index is the part's place in Rig.Parts.
	Index int

	// Place is the whole statement, NamePlace the name in it. Where a rope has
	// no statement, both are the name in its reeving line.
	Place, NamePlace source.Place
	// OnPlace is the name after "on".
	OnPlace source.Place
	// Doc is the text of the comment lines directly above, without "#".
	Doc []string

	Values Values

	root *Part // the end of the chain of On, once the rig is sealed
}

// Values are what the clauses and the model of a part say, in SI units (angles
// in degrees). A nil pointer means not said.
type Values struct {
	Strength, Efficiency, Lowering, Friction, Turns *quantity.Quantity
	Mass, Weight, Slope, Raise                      *quantity.Quantity
	People, Pull, Share                             *quantity.Quantity
	Sheaves, Wraps                                  *quantity.Quantity
	Cord, Slips, Damages, Takes, SetBack            *quantity.Quantity
	Retains, Diameter, Length, At, Angle            *quantity.Quantity
	From, To                                        *Part
	Strut, Padded, Locking, Plain                   bool
	Sideways, Releasable                            bool
	// Material is the word after "material".
	Material string
	// Holds says that the part, a bend, lets rope run one way only; HoldsEnd is
	// the end of the run whose side is held, nil for the first node's side.
	Holds    bool
	HoldsEnd *Part

	// Places has the place of each clause by its word.
	Places map[string]source.Place
}

// FromStock gives the model that the value of a clause word came from; nil if the
// value is written at the part or there is none.
func (p *Part) FromStock(word string) *Stock {
	at, said := p.Values.Places[word]
	if p.Stock == nil || !said || !p.Stock.gave(at) {
		return nil
	}
	return p.Stock
}

// Root gives the part at the end of the chain of "on": the part itself if it is
// clipped to nothing.
func (p *Part) Root() *Part {
	if p.root != nil {
		return p.root
	}
	for p.On != nil {
		p = p.On
	}
	return p
}

// Fixed says whether the part belongs to the ground.
func (p *Part) Fixed() bool { return p.Root().Kind.IsFixed() }

// Moves says whether the part is of a body that the ropes move: people on the
// ground are none.
func (p *Part) Moves() bool {
	root := p.Root()
	return !root.Kind.IsFixed() && !root.Kind.IsPerson() && root.Kind != Leg && !root.IsReeved()
}

// IsReeved says whether the part is a line with a reeving line of its own.
func (p *Part) IsReeved() bool { return p.Kind.IsLine() && p.On == nil }
