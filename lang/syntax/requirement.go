package syntax

import (
	"slices"
	"strings"

	"fairlead/lang/quantity"
)

// Bound says from which side a house rule bounds a figure.
type Bound int

const (
	// Floor: the figure is at least so much; with "over" it is more.
	Floor Bound = iota
	// Ceiling: the figure is at most so much; with "under" it is less.
	Ceiling
	// Band: the figure lies between two.
	Band
)

// Figure is one figure that a policy may require.
type Figure struct {
	// Name is what stands after "require".
	Name string
	// Meaning says what is compared.
	Meaning    string
	Bound      Bound
	Dimensions []quantity.Dimension
	// ForKind says that it may be asked of one kind of part, "for hitch".
	ForKind bool
	// PerPerson says that it may be counted per person.
	PerPerson bool
	// Example is a whole statement.
	Example string
}

var proportions = []quantity.Dimension{quantity.Ratio, quantity.None}

// The one table of the figures that a policy may require.
var figures = []Figure{
	{Name: "factor", Bound: Floor, Dimensions: plain, ForKind: true, Example: "require factor 4 for hitch",
		Meaning: "strength over load of each part, or of each part of a kind"},
	{Name: "pull", Bound: Ceiling, Dimensions: forces, PerPerson: true, Example: "require pull under 300 N per person",
		Meaning: "what the whole team pulls, or what one person pulls"},
	{Name: "lower hand", Bound: Ceiling, Dimensions: forces, Example: "require lower hand under 200 N",
		Meaning: "what hands must hold while they lower"},
	{Name: "people times advantage", Bound: Ceiling, Dimensions: plain, Example: "require people times advantage under 18",
		Meaning: "people on the rope times the ideal advantage"},
	{Name: "drop", Bound: Ceiling, Dimensions: lengths, Example: "require drop under 1 m",
		Meaning: "how far a load goes down until something catches it"},
	{Name: "anchor angle", Bound: Ceiling, Dimensions: angles, Example: "require anchor angle under 90 deg",
		Meaning: "between two legs of an anchor"},
	{Name: "turn", Bound: Ceiling, Dimensions: angles, Example: "require turn under 30 deg",
		Meaning: "between two directions that count as one"},
	{Name: "cord", Bound: Band, Dimensions: proportions, Example: "require cord 60 to 80 %",
		Meaning: "a hitch's cord over the diameter of its rope"},
	{Name: "set-back", Bound: Ceiling, Dimensions: proportions, Example: "require set-back under 30 %",
		Meaning: "the part of each stroke that a capture gives back"},
	{Name: "stroke", Bound: Floor, Dimensions: lengths, Example: "require stroke over 1 m",
		Meaning: "how far a haul raises the load until it stops to reset"},
	{Name: "resets", Bound: Ceiling, Dimensions: plain, Example: "require resets under 12",
		Meaning: "how often the raise stops to reset"},
	{Name: "stage", Bound: Floor, Dimensions: proportions, Example: "require stage 50 %",
		Meaning: "the rise of the stage that runs out first over that of the next one"},
	{Name: "gain", Bound: Floor, Dimensions: proportions, Example: "require gain 3 %",
		Meaning: "of advantage, from which a change of hardware is worth advice"},
}

var angles = []quantity.Dimension{quantity.Angle}

// Figures lists the figures that a policy may require, in the order of the reference.
func Figures() []Figure { return slices.Clone(figures) }

// FigureNamed finds a figure by its name.
func FigureNamed(name string) (Figure, bool) {
	i := slices.IndexFunc(figures, func(f Figure) bool { return f.Name == name })
	if i < 0 {
		return Figure{}, false
	}
	return figures[i], true
}

func figureNames() []string {
	names := make([]string, len(figures))
	for i, f := range figures {
		names[i] = f.Name
	}
	return names
}

// figuresLike lists the names of the figures for which yes says so, as one says them.
func figuresLike(yes func(Figure) bool) string {
	var names []string
	for _, f := range figures {
		if yes(f) {
			names = append(names, f.Name)
		}
	}
	return list(names, "or")
}

// figureNear gives the figures that were probably meant: near as a whole, or, of several
// words, by the first of them.
func figureNear(name string) []string {
	if near := nearest(name, figureNames()); len(near) > 0 || name == "" {
		return near
	}
	first, _, _ := strings.Cut(name, " ")
	var near []string
	for _, f := range figureNames() {
		if head, _, _ := strings.Cut(f, " "); head == first {
			near = append(near, f)
		}
	}
	return near
}
