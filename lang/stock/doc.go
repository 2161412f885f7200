// Package stock is the built-in catalogue of parts: generic models of the trade,
// each value with its source, written in the notation itself.
//
// It is given nothing and gives the text of stock.rig. It reads none of it: what
// the statements mean is the resolver's to say. A figure without a published
// source does not stand in it; such a value is left unset.
package stock
