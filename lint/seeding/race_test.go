//go:build race

package seeding_test

// racing: the race detector makes thousands of faults take minutes, and there is nothing in
// them that it has not seen in the other tests.
const racing = true
