// Package solve is the mechanics: it is given a model.Rig and gives its figures.
//
// It computes motion and force at once from one linear program (the tension
// program), phase by phase, and asks the same program whether the rig stays up
// when hands let go or a part is lost. It knows no text, writes no prose and
// returns no error for a bad rig: jammed, falling and unknown are statuses of
// its result.
//
// Signs: positions and motions are along the haul line, up positive. Forces are
// in fractions of the weight of the reference load unless a field says newtons.
package solve
