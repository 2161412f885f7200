package rules

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// right are rigs that do their job as riggers build them, one of each kind: none of
// them gives any finding, but that most leave the belay out. A line "name" begins each.
const right = `
# a carriage on a run that is tied at both its ends, the other run hauled
anchor head
anchor tree
anchor stump
load litter
hauler team
pulley top on head holds litter
pulley carriage on litter
knot eye on tree
rope long
reeve long: stump / carriage / eye ~ litter / top \ team

# three to one with everything said of its hardware, over a padded edge, with a belay
anchor head strength 30 kN
anchor tree strength 30 kN
edge lip rock angle 130 deg padded
load litter mass 200 kg people 2
hauler team people 4
tender belayer
carabiner hook general-use on head locking
carabiner eye general-use on tree locking
pulley top bushing-pulley on hook strength 36 kN holds litter releasable
hitch grab prusik-8mm
carabiner clip general-use on grab locking
pulley runner bearing-pulley on clip strength 36 kN
device brake on eye holds litter takes 9 to 12 mm
rope main diameter 12 mm
rope belay diameter 12 mm
reeve main: litter (figure-eight) / lip / grab / top \ runner / team
reeve belay: litter (figure-eight) / lip / brake \ belayer

# a sling with a carabiner as the high point, its rope turned aside
anchor tree
load bucket mass 40 kg
hauler team people 2
sling strap on tree
carabiner eye on strap locking
pulley top on eye holds bucket
rope line diameter 11 mm
reeve line: bucket / top (angle 120 deg) \ team

# moving pulley
anchor head
load box
hauler team
pulley runner on box holds head
rope line
reeve line: head \ runner / team

# moving pulley with a hitch for a capture
anchor head
load box
hauler team
pulley runner on box
hitch catch on box
rope line
reeve line: head \ runner / catch / team

# three to one
anchor head strength 30 kN
load litter mass 180 kg people 2
hauler team people 3
pulley top on head holds litter releasable
hitch grab cord 8 mm
pulley runner on grab
rope long diameter 11 mm length 60 m
reeve long: litter / grab / top \ runner / team

# three to one with a hitch at the head for a capture
anchor head
load litter
hauler team
pulley top on head
hitch catch on head
hitch grab
pulley runner on grab
rope long
reeve long: litter / grab / catch / top \ runner / team

# three to one with a clamp, its hauled strand turned wide
anchor head
anchor tree
load litter mass 100 kg
hauler team
pulley top on head holds litter
clamp jaw
pulley runner on jaw
pulley corner on tree
rope long
reeve long: litter / jaw / top \ runner / corner (angle 135 deg) \ team

# luff tackle
anchor head
load frame mass 240 kg
hauler team people 3
pulley upper on head holds head
pulley lower on frame sheaves 2
rope fall
reeve fall: head \ lower / upper \ lower / team

# five strands
anchor head
load frame
hauler team
pulley upper on head sheaves 2
pulley lower on frame sheaves 2
rope fall
reeve fall: frame / upper (holds) \ lower / upper \ lower / team

# second line
anchor head
anchor rear
load litter
hauler team
pulley top on head holds litter
hitch grab
pulley runner on grab
pulley block
rope long
rope short
reeve long: litter / grab / top \ block / team
reeve short: rear \ runner / block

# one rope, its far end the second line
anchor head
load litter
hauler team
pulley top on head holds litter
knot tie-off on head
hitch grab
pulley runner on grab
pulley block
rope long
reeve long: litter / grab / top \ block / team ~ tie-off \ runner / block

# two to one on three to one
anchor head
anchor rear
load drum mass 320 kg
hauler team
pulley top on head holds drum
hitch grab
pulley runner on grab
pulley block
rope long
rope short
reeve long: drum / grab / top \ runner / block
reeve short: rear \ block / team

# seven to one
anchor head
load litter
hauler team
pulley top on head holds litter
hitch grab
pulley q on head
pulley runner on grab
pulley block
rope long
rope short
reeve long: litter / grab / top \ block / team
reeve short: grab / q \ runner / block

# nine to one
anchor head
anchor rear
load drum
hauler team
pulley top on head holds drum
hitch grab
pulley runner on grab
hitch far-grab
pulley far-top on rear holds drum
pulley far-runner on far-grab
rope long
reeve long: drum / grab / top \ runner / far-grab / far-top \ far-runner / team

# two to one on two to one
anchor head
anchor beam
load stone mass 300 kg
hauler team
pulley low on stone mass 15 kg
pulley high holds beam mass 10 kg
rope first
rope second
reeve first: head \ low / high
reeve second: beam \ high / team

# burton
anchor head
load frame mass 150 kg
hauler team
pulley top on head holds frame
pulley fly
rope pendant
rope whip
reeve pendant: frame / top \ fly
reeve whip: frame / fly \ team

# a jigger hauls on a main line that a brake keeps
anchor head
anchor rear
load litter people 2
hauler team
tender braker
device brake on head holds litter releasable
hitch grab
pulley upper on rear
pulley lower on grab sheaves 2
rope main
rope jig
reeve main: litter / grab / brake \ braker
reeve jig: rear \ lower / upper \ lower / team

# up the wall by one's own hands
anchor head
load climber mass 85 kg people 1
hauler hands on climber people 1
pulley top on head holds climber releasable
rope line
reeve line: climber / top \ hands

# platform with one's own tackle
anchor head
load platform mass 110 kg people 1
hauler washer on platform
pulley upper on head
pulley lower on platform holds upper releasable
rope fall
reeve fall: upper \ lower / upper \ washer

# balance
anchor head
load tub mass 120 kg
counterweight box mass 60 kg
hauler team
pulley wheel on head holds tub
rope main
rope hand-line
reeve main: tub / wheel \ box
reeve hand-line: box \ team

# main and belay
anchor head
anchor tree
load litter mass 200 kg people 2
hauler team
tender belayer
pulley top on head holds litter
hitch grab
pulley runner on grab
device brake on tree holds litter releasable
rope main
rope belay
reeve main: litter / grab / top \ runner / team
reeve belay: litter / brake \ belayer

# twin ropes through two captures, one team
anchor head
anchor tree
load litter mass 200 kg
hauler team
pulley top on head holds litter
pulley side on tree holds litter
rope red
rope blue
reeve red: litter / top \ team
reeve blue: litter / side \ team

# two teams, one of them steering
anchor head
anchor wall
load litter mass 200 kg
hauler team
hauler guides
pulley top on head holds litter
hitch grab
pulley runner on grab
pulley side on wall
knot eye on litter
rope long
rope tag
reeve long: litter / grab / top \ runner / team
reeve tag: eye / side (angle 130 deg) \ guides

# two teams, each with its own line
anchor head
anchor tree
load platform mass 150 kg
hauler red-team
hauler blue-team
pulley top on head holds platform
hitch grab
pulley runner on grab
pulley side on tree holds platform
rope red-line
rope blue-line
reeve red-line: platform / grab / top \ runner / red-team
reeve blue-line: platform / side \ blue-team

# a tag line that is only minded
anchor head
load litter
hauler team
tender tagger
pulley top on head holds litter
hitch grab
pulley runner on grab
rope long
cord tag
reeve long: litter / grab / top \ runner / team
reeve tag: litter \ tagger

# over the lip, up a slope
anchor head
edge lip angle 145 deg padded
load trolley mass 250 kg slope 35 deg friction 0.1
hauler team
pulley top on head holds trolley
hitch grab
pulley runner on grab
rope long
reeve long: trolley / lip / grab / top \ runner / team

# a trolley that its own friction keeps
anchor head
load sledge mass 80 kg slope 15 deg friction 0.5
hauler team
pulley runner on sledge
rope long
reeve long: head \ runner / team

# the pull at an angle
anchor head
load crate mass 60 kg
hauler team
pulley runner on crate holds head
rope long
reeve long: head (angle 20 deg) \ runner (angle 40 deg) / team (angle 20 deg)

# two legs
anchor left strength 15 kN
anchor right strength 15 kN
focal master
leg a from left to master angle -20 deg
leg b from right to master angle 40 deg
load litter mass 180 kg people 2
hauler team
pulley top on master holds litter releasable
hitch grab
pulley runner on grab
rope long
reeve long: litter / grab / top \ runner / team

# sliding loop on two bolts
anchor left-bolt
anchor right-bolt
load bucket mass 30 kg
hauler team
carabiner master locking
pulley runner on bucket holds master
sling strop
rope line
reeve strop: left-bolt \ master / right-bolt \ master / loop
reeve line: master \ runner / team

# a back-tie that is slack
anchor head
anchor tree
load litter
hauler team
ring plate on head
pulley top on plate holds litter
hitch grab
pulley runner on grab
rope long
sling tie
reeve long: litter / grab / top \ runner / team
reeve tie: plate ~ tree

# a back-tie that is tight
anchor head
anchor tree
load litter
hauler team
pulley top on head holds litter
hitch grab
pulley runner on grab
rope long
sling tie
reeve long: litter / grab / top \ runner / team
reeve tie: head / tree

# two fixed lines over one carriage
anchor left
anchor right
load litter mass 100 kg
hauler team
pulley wheel
hitch catch on wheel
pulley runner on litter
rope track
rope drop
reeve track: left \ wheel (angle 140 deg) / right
reeve drop: wheel \ runner / catch / team

# hands through the middle of a rope with a loose tail
anchor head
load box mass 50 kg
hauler team
pulley runner on box holds head
rope line
reeve line: head \ runner / team ~ tail

# a stopper at the end
anchor head
load box mass 50 kg
hauler team
knot stop
pulley runner on box holds head
rope line
reeve line: head \ runner / team ~ stop

# held and belayed, nobody hauls
anchor head
anchor tree
load litter people 1
tender first
tender second
device brake on head holds litter
device belay on tree holds litter
rope main
rope safety
reeve main: litter / brake \ first
reeve safety: litter / belay \ second

# a load that hangs by, beside the one that is raised
anchor head
anchor beam
load litter mass 180 kg raise 12 m
load lamp mass 4 kg
hauler team
pulley top on head holds litter
hitch grab
pulley runner on grab
rope long
cord pendant
reeve long: litter / grab / top \ runner / team
reeve pendant: lamp / beam

# a tied-off second load line that comes along slack
anchor head
anchor tree
load litter people 1
hauler team
pulley top on head holds litter releasable
hitch grab
pulley runner on grab
rope long
rope static
reeve long: litter / grab / top \ runner / team
reeve static: tree \ litter
`

func TestRightRigsGiveNoFinding(t *testing.T) {
	rigs := strings.Split(strings.TrimSpace(right), "\n\n")
	assert.GreaterOrEqual(t, len(rigs), 25)
	for _, rig := range rigs {
		name, _, _ := strings.Cut(strings.TrimPrefix(rig, "# "), "\n")
		t.Run(name, func(t *testing.T) {
			f, found := drawnShort(rig + "\n")
			assert.Empty(t, printed(f, found))
		})
	}
}
