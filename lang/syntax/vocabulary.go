package syntax

import (
	"slices"
	"strings"

	"fairlead/lang/quantity"
)

// Shape says what may follow a clause's word.
type Shape int

const (
	// Flag: nothing follows.
	Flag Shape = iota
	// Measure: a quantity follows, in one of the clause's dimensions.
	Measure
	// Count: a plain whole number, or a range of two, follows.
	Count
	// Name: the name of a part follows.
	Name
	// MaybeName: the name of a part may follow.
	MaybeName
	// FreeWord: any one word follows.
	FreeWord
)

// Clause is one word that a part statement or a node may carry.
type Clause struct {
	Word  string
	Shape Shape
	// Dimensions are those that a Measure accepts, the usual one first.
	Dimensions []quantity.Dimension
	// Second is the word before an optional second quantity, as in
	// "efficiency 60 % lowering 40 %". Empty if there is none.
	Second string
	// Example is how a message shows the clause, such as "strength 30 kN".
	Example string
}

// Kind is one kind of part with the clauses that it takes, in the formatter's order.
type Kind struct {
	Word    string
	Meaning string
	Clauses []string
}

// The one table of the notation's clause words. Everything that must know a
// clause (parser, resolver, formatter, reference, completion) reads it here.
var clauses = []Clause{
	measure("strength", "strength 30 kN", quantity.Force),
	{Word: "efficiency", Shape: Measure, Second: "lowering", Example: "efficiency 92 %",
		Dimensions: []quantity.Dimension{quantity.Ratio, quantity.None}},
	measure("friction", "friction 0.4", quantity.None),
	measure("turns", "turns 2", quantity.None),
	{Word: "from", Shape: Name, Example: "from tree"},
	{Word: "to", Shape: Name, Example: "to master"},
	measure("angle", "angle 90 deg", quantity.Angle),
	{Word: "strut", Shape: Flag, Example: "strut"},
	{Word: "padded", Shape: Flag, Example: "padded"},
	measure("mass", "mass 80 kg", quantity.Mass),
	measure("weight", "weight 800 N", quantity.Force),
	measure("slope", "slope 30 deg", quantity.Angle),
	count("people", "people 3"),
	measure("raise", "raise 12 m", quantity.Length),
	measure("pull", "pull 250 N", quantity.Force),
	{Word: "share", Shape: Measure, Example: "share 40 to 60 %",
		Dimensions: []quantity.Dimension{quantity.Ratio, quantity.None}},
	count("sheaves", "sheaves 2"),
	measure("cord", "cord 8 mm", quantity.Length),
	count("wraps", "wraps 3"),
	measure("slips", "slips 7 kN", quantity.Force),
	measure("damages", "damages 4 kN", quantity.Force),
	{Word: "locking", Shape: Flag, Example: "locking"},
	{Word: "plain", Shape: Flag, Example: "plain"},
	{Word: "holds", Shape: MaybeName, Example: "holds litter"},
	measure("takes", "takes 9 to 11 mm", quantity.Length),
	{Word: "sideways", Shape: Flag, Example: "sideways"},
	measure("set-back", "set-back 10 cm", quantity.Length),
	measure("retains", "retains 70 %", quantity.Ratio, quantity.None),
	{Word: "releasable", Shape: Flag, Example: "releasable"},
	measure("diameter", "diameter 11 mm", quantity.Length),
	{Word: "material", Shape: FreeWord, Example: "material polyamide"},
	measure("at", "at 3.5 m", quantity.Length),
	measure("length", "length 60 m", quantity.Length),
}

// The one table of the kinds of part. Every kind also takes AnyPart.
var kinds = []Kind{
	{"anchor", "a fixed point", words("strength efficiency friction turns")},
	{"focal", "the focal point of a multi-leg anchor, fixed while a leg holds", nil},
	{"leg", "one leg of a focal point", words("from to angle strength strut")},
	{"edge", "a fixed corner that the rope runs over", words("angle friction efficiency padded")},
	{"load", "what is moved", words("mass weight slope friction people raise")},
	{"counterweight", "a weight that is not what is raised", words("mass weight people")},
	{"hauler", "people pulling", words("people pull")},
	{"tender", "a person minding a rope end", nil},
	{"pulley", "a rope on a turning sheave", words("efficiency strength sheaves holds sideways set-back releasable")},
	{"carabiner", "a rope over metal that does not turn", words("efficiency strength locking plain holds sideways")},
	{"ring", "the same, a closed ring", words("efficiency strength sideways")},
	{"device", "a belay or braking device", words("efficiency strength holds takes turns set-back releasable")},
	{"hitch", "a friction hitch", words("cord wraps slips strength holds set-back releasable")},
	{"clamp", "a mechanical rope grab", words("slips damages strength holds set-back releasable")},
	{"knot", "a tie in mid rope, or a stopper", words("retains releasable")},
	{"rope", "a line", words("diameter length strength material friction")},
	{"cord", "a thin line", words("diameter length strength material friction")},
	{"sling", "a sewn or tied loop, or a line of tape", words("diameter length strength material friction")},
}

// Clauses that every part takes after its own.
var anyPart = words("at length mass")

// Clauses that a node of a reeving line takes in its parentheses.
var nodeClauses = words("angle efficiency friction turns share holds sideways retains")

// nodeFlags are those of them that no quantity follows, so that a misspelt one
// looks like the name of a knot.
var nodeFlags = words("holds sideways")

// Statements that are not parts, in the order of the reference.
var statements = words("rig use include join reeve expect accept units stock policy require rule")

// Words that structure a statement and cannot be names.
var structure = words("on at to from with without tail loop per because")

// LineKinds are the kinds that are lines and have a reeving line of their own.
var lineKinds = words("rope cord sling")

// Kinds lists the kinds of part in the order of the reference.
func Kinds() []Kind { return slices.Clone(kinds) }

// KindNamed finds a kind by its word.
func KindNamed(word string) (Kind, bool) {
	i := slices.IndexFunc(kinds, func(k Kind) bool { return k.Word == word })
	if i < 0 {
		return Kind{}, false
	}
	return kinds[i], true
}

// Clauses lists every clause word.
func Clauses() []Clause { return slices.Clone(clauses) }

// ClauseNamed finds a clause by its word.
func ClauseNamed(word string) (Clause, bool) {
	i := slices.IndexFunc(clauses, func(c Clause) bool { return c.Word == word })
	if i < 0 {
		return Clause{}, false
	}
	return clauses[i], true
}

// ClausesOf lists the clause words that a kind takes, in the formatter's order.
func ClausesOf(kind string) []string {
	k, ok := KindNamed(kind)
	if !ok {
		return nil
	}
	own := slices.Clone(k.Clauses)
	for _, w := range anyPart {
		if !slices.Contains(own, w) {
			own = append(own, w)
		}
	}
	return own
}

// NodeClauses lists the clause words that a node takes.
func NodeClauses() []string { return slices.Clone(nodeClauses) }

// Statements lists the words that begin a statement that is not a part.
func Statements() []string { return slices.Clone(statements) }

// Structure lists the words that structure a statement and cannot be names.
func Structure() []string { return slices.Clone(structure) }

// IsLine says whether a kind is a line: rope, cord or sling.
func IsLine(kind string) bool { return slices.Contains(lineKinds, kind) }

// Reserved says whether a word cannot be a name.
func Reserved(word string) bool { return reserved[word] }

// StartsStatement says whether a line that begins with the word starts a statement.
func StartsStatement(word string) bool { return starts[word] }

var starts, reserved = index()

func index() (starts, reserved map[string]bool) {
	starts, reserved = map[string]bool{}, map[string]bool{}
	for _, k := range kinds {
		starts[k.Word] = true
	}
	for _, s := range statements {
		starts[s] = true
	}
	for w := range starts {
		reserved[w] = true
	}
	for _, c := range clauses {
		reserved[c.Word] = true
		if c.Second != "" {
			reserved[c.Second] = true
		}
	}
	for _, w := range structure {
		reserved[w] = true
	}
	return starts, reserved
}

func measure(word, example string, dims ...quantity.Dimension) Clause {
	return Clause{Word: word, Shape: Measure, Dimensions: dims, Example: example}
}

func count(word, example string) Clause {
	return Clause{Word: word, Shape: Count, Dimensions: []quantity.Dimension{quantity.None}, Example: example}
}

func words(s string) []string { return strings.Fields(s) }

var clauseWords, kindWords = clauseAndKindWords()

func clauseAndKindWords() (clauseWords, kindWords []string) {
	for _, c := range clauses {
		clauseWords = append(clauseWords, c.Word)
	}
	for _, k := range kinds {
		kindWords = append(kindWords, k.Word)
	}
	return clauseWords, kindWords
}
