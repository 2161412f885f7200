// Package count puts the solved figures of a haul into the order in which an
// instructor counts them aloud.
//
// It is given a solved phase and gives steps as data: start with the pull, walk
// the rope, the same on both sides of every bend, add up what meets at each moving
// body, carry the sum into the rope that the body pulls. It writes no sentence
// and computes no mechanics of its own.
package count
