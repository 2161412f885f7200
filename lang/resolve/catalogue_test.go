package resolve

import (
	"fmt"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fairlead/lang/model"
	"fairlead/lang/source"
	"fairlead/lang/syntax"
)

func TestCatalogueIsSound(t *testing.T) {
	c := builtIn()
	assert.Empty(t, c.problems)
	assert.Len(t, c.models, len(c.list), "each name is given once a kind")
	assert.Len(t, Catalogue(), len(c.list))
	Catalogue()[0] = nil
	assert.NotNil(t, Catalogue()[0], "a caller's list is its own")
}

// Every built-in model reaches the part that names it, with every value.
func TestEveryModelApplies(t *testing.T) {
	kinds := map[string]int{}
	for _, m := range Catalogue() {
		kind, name := m.Kind.Text, m.Model.Text
		kinds[kind]++
		rig, found := oneRig(t, basic+line+fmt.Sprintf("%s thing %s\n", kind, name))
		for _, d := range found {
			assert.Contains(t, []string{"unused-part", "missing-reeve"}, d.Rule, d.Message)
		}
		thing := rig.Part("thing")
		require.Same(t, m, thing.Stock, name)
		assert.Equal(t, m.Values, thing.Values, name)
		for _, c := range m.Clauses {
			assert.Same(t, m, thing.FromStock(c.Word.Text), "%s of %s", c.Word.Text, name)
		}
		assert.Nil(t, thing.FromStock("mass"))
	}
	for _, kind := range []model.Kind{
		model.Pulley, model.Carabiner, model.Ring, model.Device, model.Hitch, model.Clamp, model.Knot,
		model.RopeLine, model.CordLine, model.SlingLine, model.Anchor, model.Edge, model.Hauler,
	} {
		assert.Positive(t, kinds[string(kind)], kind)
	}
}

func TestBuiltInModelGivesItsValues(t *testing.T) {
	rig, found := oneRig(t, "anchor head bolt-radial\nload litter\nhauler team short-haul people 3\nrope long low-stretch-a diameter 11 mm\n"+
		"pulley top bearing-pulley on head strength 36 kN\ncarabiner low class-b on litter efficiency 50 % strength 22 kN\n"+
		"hitch grab prusik-8mm\nedge lip rock angle 90 deg\n"+
		"reeve long: litter / lip / grab / top (efficiency 80 %) \\ low / top \\ team\n")
	require.Empty(t, found)
	top, low, grab := rig.Part("top"), rig.Part("low"), rig.Part("grab")
	assert.Equal(t, "17/20", top.Values.Efficiency.Low.RatString(), "ranges are kept")
	assert.Equal(t, "19/20", top.Values.Efficiency.High.RatString())
	assert.Equal(t, "36000", top.Values.Strength.Low.RatString())
	assert.Equal(t, "bearing-pulley", top.FromStock("efficiency").Model.Text)
	assert.Equal(t, "handbooks, from memory, not checked", top.FromStock("efficiency").Source)
	assert.Equal(t, []string{"A rescue pulley that turns on a ball bearing."}, top.FromStock("efficiency").Doc)
	assert.Nil(t, top.FromStock("strength"), "written at the part")
	assert.Equal(t, "1/2", low.Values.Efficiency.Low.RatString(), "a clause beats the model")
	assert.Equal(t, "22000", low.Values.Strength.High.RatString())
	assert.Nil(t, low.FromStock("efficiency"))
	assert.Equal(t, "9500", grab.Values.Slips.High.RatString())
	assert.Equal(t, "25000", rig.Part("head").Values.Strength.Low.RatString())
	assert.Equal(t, "50", rig.Part("team").Values.Pull.Written)
	assert.Equal(t, "22000", rig.Part("long").Values.Strength.Low.RatString())
	n := rig.Ropes[0].Nodes
	assert.Equal(t, "2/5", n[1].Friction.Low.RatString(), "of the edge's model")
	assert.Equal(t, "90", n[1].Angle.Low.RatString())
	assert.Equal(t, "4/5", n[3].Efficiency.Low.RatString(), "the node beats the model")
	assert.Equal(t, "17/20", n[5].Efficiency.Low.RatString())
}

// What a file defines comes before the built-in model of that name and kind.
func TestTheFilesModelsComeFirst(t *testing.T) {
	file, found := resolved("yard.rig", "stock hitch prusik wraps 2  # our own trial\n"+basic+
		"hitch grab prusik\nring eye metal-ring on litter\nreeve long: litter / grab / head \\ eye / team\n")
	require.Empty(t, found)
	grab := file.Rigs[0].Part("grab")
	assert.Equal(t, "2", grab.Values.Wraps.Low.RatString())
	assert.Same(t, file.Stock[0], grab.FromStock("wraps"))
	assert.Equal(t, "our own trial", grab.Stock.Source)
	assert.Equal(t, "metal-ring", file.Rigs[0].Part("eye").Stock.Model.Text)
}

func TestSourceIsTheCommentBesideOrAbove(t *testing.T) {
	file, _ := resolved("yard.rig", "# What it is,\n# in two lines.\nstock ring a  # beside\n\n# Above.\n# And on.\nstock ring b\n\nstock ring c\n")
	require.Len(t, file.Stock, 3)
	assert.Equal(t, "beside", file.Stock[0].Source)
	assert.Equal(t, []string{"What it is,", "in two lines."}, file.Stock[0].Doc)
	assert.Equal(t, "Above. And on.", file.Stock[1].Source)
	assert.Empty(t, file.Stock[2].Source)
}

func TestKnotsLeaveWhatTheirModelSays(t *testing.T) {
	rig, found := oneRig(t, "stock knot crown-knot retains 45 %\nstock knot bare-knot\n"+basic+
		"knot mid overhand on litter\nknot own on litter retains 50 %\n"+
		"reeve long: litter (figure-eight) / head \\ mid / head (crown-knot) \\ own (retains 40 %) / head (bowline retains 30 %) \\ own (bare-knot) / head \\ team (halyard-bend)\n")
	require.Empty(t, found)
	n := rig.Ropes[0].Nodes
	retains := func(i int) string {
		if n[i].Retains == nil {
			return ""
		}
		return n[i].Retains.Low.RatString() + " to " + n[i].Retains.High.RatString()
	}
	assert.Equal(t, "33/50 to 4/5", retains(0), "the tie's")
	assert.Equal(t, "figure-eight", n[0].TieStock.Model.Text)
	assert.Equal(t, "29/50 to 17/25", retains(2), "the part's model's")
	assert.Nil(t, n[2].TieStock)
	assert.Equal(t, "9/20 to 9/20", retains(3), "the file's own knot")
	assert.Equal(t, "2/5 to 2/5", retains(4), "the node beats the part")
	assert.Equal(t, "3/10 to 3/10", retains(5), "the node beats the tie")
	assert.Equal(t, "1/2 to 1/2", retains(6), "the part's, where the tie's model says nothing")
	assert.Empty(t, retains(8))
	assert.Empty(t, retains(1))
}

// A model with a bare holds that is not the file's own is pointed at by its name.
func TestHoldsOfAModelFromElsewhere(t *testing.T) {
	elsewhere := readCatalogue(source.New("shelf.rig", "# a long line of nothing, so that places would lie outside the rig's own file ............\n"+
		"# and another ................................................................................................\n"+
		"# and another ................................................................................................\n"+
		"stock pulley catching efficiency 90 %  holds  # a trial\n"))
	text := basic + "pulley top catching on head\npulley low on litter\nreeve long: litter / top \\ low / top \\ team\n"
	r := resolve(syntax.Parse(source.New("yard.rig", text)), nil, func() *catalogue { return elsewhere })
	file, found := r.Model, r.Problems
	require.Len(t, found, 1)
	assert.Equal(t, "hold-ambiguous", found[0].Rule)
	assert.Equal(t, "catching", found[0].Place.Text())
	assert.Same(t, file.Source, found[0].Place.File)
}

// The catalogue is not read for rigs that do not ask for one of its models.
func TestCatalogueIsReadOnlyWhenNeeded(t *testing.T) {
	for text, needed := range map[string]bool{
		usual:       false,
		tackle(200): false,
		stocked + basic + "pulley top twin on head\nreeve long: litter / top \\ team\n":                            false,
		"stock knot k retains 50 %\n" + basic + "reeve long: litter (k) / head \\ team\n":                          false,
		"use \"stock.rig\"\n" + basic + "pulley top twin on head\nreeve long: litter (k) / top \\ team\n":          false,
		basic + "puley top twin on head\nreeve long: litter / head \\ tea\n":                                       false,
		basic + "hitch grab prusik\nreeve long: litter / grab / head \\ team\n":                                    true,
		basic + "hitch grab twister\nreeve long: litter / grab / head \\ team\n":                                   true,
		basic + "reeve long: litter (figure-eight) / head \\ team\n":                                               true,
		"stock hitch twister wraps 4\n" + basic + "clamp grab twister\nreeve long: litter / grab / head \\ team\n": true,
	} {
		asked := false
		resolve(syntax.Parse(source.New("yard.rig", text)), nil, func() *catalogue {
			asked = true
			return builtIn()
		})
		assert.Equal(t, needed, asked, text)
	}
}

// Files are resolved side by side while the catalogue is read for the first time.
func TestCatalogueIsSharedSafely(t *testing.T) {
	fresh := sync.OnceValue(func() *catalogue { return readCatalogue(source.New("shelf.rig", "stock hitch prusik wraps 3\n")) })
	text := basic + "hitch grab prusik cord 8 mm\nreeve long: litter / grab / head \\ team\n"
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			file := resolve(syntax.Parse(source.New("yard.rig", text)), nil, fresh).Model
			assert.Equal(t, "1/125", file.Rigs[0].Part("grab").Values.Cord.Low.RatString())
			assert.Nil(t, file.Rigs[0].Part("grab").Stock.Values.Cord)
		})
	}
	all.Wait()
}
