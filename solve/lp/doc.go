// Package lp solves small sparse linear programs, exactly while every number is
// exact and in floating point as soon as one is not, behind one interface.
//
// A program is: maximise Σ cost·x subject to A·x = rhs, x ≥ 0. The package is
// given numbers and gives numbers; it knows nothing of ropes.
//
// All solving code is written once, for any kind of number: Num where exact, a
// float64 that settles its own rounding noise where not. Inside,
//
//   - a dictionary is the program solved for its basic unknowns, in sparse lines;
//     search walks it to a basis,
//   - a vertex is what follows from a basis by taking it apart anew (factors), and
//     proves the outcome; nothing that is told comes from the walk itself,
//   - a face is the small dictionary of the columns that can still move without
//     loss, which answers Range, Extremes, Open, Unique, Least and Largest,
//   - slopes are the places where the vertex is degenerate, which answer
//     MultiplierRange.
package lp
