// Package quantity reads a number with a unit, or a range of two, into exact
// fractions of SI units.
//
// It keeps the written form, so that a formatted file keeps the author's
// units. It does not know which clause wants which dimension.
package quantity
