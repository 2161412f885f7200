// Package syntax turns the text of a rig file into a tree of statements and
// keeps everything the author wrote: tokens, comments, blank lines, places.
//
// It is given a source.File and gives a Tree with its diagnostics, one for every
// fault, however many there are. It does not know what a part does to a rope,
// nor whether a name is declared.
package syntax
