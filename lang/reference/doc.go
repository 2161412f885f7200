// Package reference is the manual of the rig notation, in Markdown.
//
// It is given nothing and gives its pages and the schemas of the machine output
// as text. It parses and computes nothing; its tests run every block of notation
// in the pages, and write the tables that the vocabulary already has (with
// -update).
package reference
