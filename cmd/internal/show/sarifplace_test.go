package show

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestURIs(t *testing.T) {
	for _, c := range []struct {
		volume, rest, want string
		relative           bool
	}{
		{"", "yard.rig", "yard.rig", true},
		{"", "/srv/a b.rig", "file:///srv/a%20b.rig", false},
		{"C:", "/rigs/ü.rig", "file:///C:/rigs/%C3%BC.rig", false},
		{"//store/rigs", "/yard.rig", "file://store/rigs/yard.rig", false},
	} {
		uri, relative := uriFrom(c.volume, c.rest)
		assert.Equal(t, c.want, uri)
		assert.Equal(t, c.relative, relative)
	}
}
