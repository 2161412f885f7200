//go:build !race

package seeding_test

const racing = false
