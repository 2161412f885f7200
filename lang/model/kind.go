package model

// Kind is the kind of a part, by the notation's own word.
type Kind string

// The kinds of part. lang/syntax/vocabulary.go says what each means.
const (
	Anchor        Kind = "anchor"
	Focal         Kind = "focal"
	Leg           Kind = "leg"
	Edge          Kind = "edge"
	Load          Kind = "load"
	Counterweight Kind = "counterweight"
	Hauler        Kind = "hauler"
	Tender        Kind = "tender"
	Pulley        Kind = "pulley"
	Carabiner     Kind = "carabiner"
	Ring          Kind = "ring"
	Device        Kind = "device"
	Hitch         Kind = "hitch"
	Clamp         Kind = "clamp"
	Knot          Kind = "knot"
	RopeLine      Kind = "rope"
	CordLine      Kind = "cord"
	SlingLine     Kind = "sling"
)

// IsFixed says whether a part of this kind is a fixed point of the ground.
func (k Kind) IsFixed() bool { return k == Anchor || k == Focal || k == Edge }

// IsGrip says whether a part of this kind grips a rope one way.
func (k Kind) IsGrip() bool { return k == Hitch || k == Clamp }

// IsLine says whether a part of this kind is a line: rope, cord or sling.
func (k Kind) IsLine() bool { return k == RopeLine || k == CordLine || k == SlingLine }

// IsWeight says whether a part of this kind is there for its weight.
func (k Kind) IsWeight() bool { return k == Load || k == Counterweight }

// IsPerson says whether a part of this kind is people at a rope's end.
func (k Kind) IsPerson() bool { return k == Hauler || k == Tender }
