// Package resolve gives a parsed file its meaning: every name is found, every
// clip made, every value judged, and every node of a rope gets its role.
//
// It is given a syntax.Tree and gives a model.File and the findings, those of
// the tree among them. It never fails: what cannot be resolved is reported and
// left out, and the rest stands. A model is looked up among the file's own stock
// statements, then in the files that it uses, then in the built-in catalogue, which is
// read when first needed. The rigs that a rig includes are copied as statements, under
// new names, and the ends that it joins made one, before anything of it is resolved. The
// package opens no file, but asks its caller for those used, and computes no mechanics:
// that a rope would jam or a load fall is not known here.
package resolve
