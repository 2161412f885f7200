// Package seeding draws faults into correct rigs, one at a time, as they come about on a
// whiteboard or in a hurried copy: a hitch on the next strand, a capture left out, a
// thinner cord, a stroke the wrong way.
//
// It is given a loaded file and one of its rigs, and gives seeds: each says in words what
// was done, as edits of the text, and names the parts at fault. What a seed changes is
// never asserted but found out, by solving the rig before and after. It serves to test
// how many faults the linter finds, and to set exercises.
//
// It lints nothing and knows no rule: what is found in a seeded rig is for its caller to
// ask. It does not write files.
package seeding
