// Package model is what a rig file means: rigs of parts, ropes and claims, every
// name resolved and every item with the place where it was written.
//
// A model is made by lang/resolve and does not change after. It computes no
// mechanics and reports nothing.
package model
