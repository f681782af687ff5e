package plan

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

var (
	protan1 = colour.Sight{Kind: "protan", Severity: 1}
	deutan1 = colour.Sight{Kind: "deutan", Severity: 1}
	tritan1 = colour.Sight{Kind: "tritan", Severity: 1}
	starter = paint.StarterBox().Paints
)

func always(a, b int) bool { return true }
func never(a, b int) bool  { return false }

// mixOf is a colour whose mix looks like lab, of one part of a paint.
func mixOf(id string, share float64, lab colour.Lab, of string) Colour {
	return Colour{ID: id, Share: share, PanelShare: share / 2, Recipe: &Recipe{Lab: TripleOf(lab), Parts: []Part{{Paint: of, Parts: 2, Count: 2}}}}
}

func tagged(tag string, colours ...Colour) Region {
	return Region{Tag: tag, Share: 0.5, Colours: colours}
}

// x, y, Y is a colour by its chromaticity.
func xyY(x, y, lum float64) colour.Lab {
	return colour.XYZ{X: x / y * lum, Y: lum, Z: (1 - x - y) / y * lum}.Lab()
}

// A red and a green on one line to the deutan copunctal point, x 1.400, y -0.400
// ([Smith1975], from memory), as light as one another to who lacks the middle cones; and
// a yellow and a blue, far off any such line.
var (
	red    = xyY(0.4010, 0.2990, 20)
	green  = xyY(0.2766, 0.3783, 22.92)
	yellow = colour.Lab{L: 80, A: 0, B: 70}
	blue   = colour.Lab{L: 35, A: 5, B: -40}
)

func TestFullSightTakesNothingForAnother(t *testing.T) {
	l := lookAlikesOf([]Region{tagged("A", mixOf("A1", 1, red, "pyrrole-red")), tagged("B", mixOf("B1", 1, green, "viridian"))}, always, starter, colour.Sight{})
	none := []LookAlike{}
	assert.Equal(t, LookAlikes{Sight: "full sight", Piles: none, Tubes: none, Regions: none, Reverse: none}, l)
}

func TestPilesOnOneLineLookAlike(t *testing.T) {
	regions := []Region{
		tagged("A", mixOf("A1", 0.5, red, "pyrrole-red"), mixOf("A2", 0.5, yellow, "cadmium-yellow-lemon")),
		tagged("B", mixOf("B1", 0.5, green, "viridian"), mixOf("B2", 0.5, blue, "ultramarine-blue")),
	}
	l := lookAlikesOf(regions, never, starter, deutan1)
	require.Len(t, l.Piles, 1, "%+v", l.Piles)
	p := l.Piles[0]
	assert.Equal(t, "A1", p.A)
	assert.Equal(t, "B1", p.B)
	assert.Greater(t, p.Full, 20.0)
	assert.LessOrEqual(t, p.Seen, 4.0)
	assert.Empty(t, l.Regions, "they do not touch")
	assert.Empty(t, lookAlikesOf(regions, never, starter, tritan1).Piles)
	weak := colour.Sight{Kind: "deutan", Severity: 0.2}
	assert.Empty(t, lookAlikesOf(regions, never, starter, weak).Piles)
}

// A pile used twice is one pile, and counts for both its places.
func TestSamePileIsListedOnce(t *testing.T) {
	again := mixOf("B1", 1, red, "pyrrole-red")
	again.SameAs = "A1"
	regions := []Region{tagged("A", mixOf("A1", 1, red, "pyrrole-red")), tagged("B", again), tagged("C", mixOf("C1", 1, green, "viridian"))}
	e := eye{sight: deutan1}
	piles := e.dabsOf(regions, starter)
	require.Len(t, piles, 2)
	assert.InDelta(t, 1, piles[0].share, 1e-9)
	assert.Equal(t, []float64{1}, piles[0].of.Parts, "two parts of one paint are the whole pile")
	l := lookAlikesOf(regions, never, starter, deutan1)
	require.Len(t, l.Piles, 1)
	assert.Equal(t, "A1", l.Piles[0].A)
}

// The largest first, a dozen at most, and the rest counted.
func TestWeightiestPairsFirst(t *testing.T) {
	var region Region
	for i := range 5 {
		share := 0.02 + 0.01*float64(i)
		region.Colours = append(region.Colours, mixOf(fmt.Sprintf("A%d", i+1), share, red, "pyrrole-red"), mixOf(fmt.Sprintf("B%d", i+1), share, green, "viridian"))
	}
	l := lookAlikesOf([]Region{region}, never, starter, deutan1)
	assert.Len(t, l.Piles, 12)
	assert.Equal(t, 13, l.More.Piles, "five by five pairs")
	assert.Equal(t, "A5", l.Piles[0].A)
	assert.Equal(t, "B5", l.Piles[0].B)
}

// The tube pair and its figure are match.AlikeTubes' own, reached by another way.
func TestTubesAgreeWithTheBox(t *testing.T) {
	regions := []Region{tagged("A", mixOf("A1", 1, red, "pyrrole-red")), tagged("B", mixOf("B1", 1, blue, "quinacridone-rose"), mixOf("B2", 1, blue, "titanium-white"))}
	l := lookAlikesOf(regions, never, starter, tritan1)
	require.Len(t, l.Tubes, 1, "%+v", l.Tubes)
	p := l.Tubes[0]
	assert.Equal(t, []string{"pyrrole-red", "quinacridone-rose", "tint"}, []string{p.A, p.B, p.Kind})
	for _, box := range match.AlikeTubes(starter, tritan1) {
		if starter[box.A].ID == p.A && starter[box.B].ID == p.B {
			assert.Equal(t, "a tint in white, where Pyrrole Red is darker by 0.7 value", box.Tells)
			assert.Equal(t, box.Masstone.Full, p.Full)
			assert.Equal(t, box.Masstone.Seen, p.Seen)
		}
	}
	assert.Contains(t, p.Tells, "1 part to 4: Pyrrole Red comes out darker than Quinacridone Rose, by 0.7 value.")
	assert.Contains(t, p.Tells, "To others Pyrrole Red is now deep pink, Quinacridone Rose strong purplish pink.")
}

// Rose and viridian in white are one to a deutan (see match's tests); thick they are not.
func TestTubesAlikeInWhite(t *testing.T) {
	regions := []Region{tagged("A", mixOf("A1", 1, red, "quinacridone-rose")), tagged("B", mixOf("B1", 1, blue, "viridian"), mixOf("B2", 1, blue, "ultramarine-blue"))}
	l := lookAlikesOf(regions, never, starter, deutan1)
	require.Len(t, l.Tubes, 1, "%+v", l.Tubes)
	assert.Equal(t, "Alike in white, 1 part to 4. As they come from the tube Viridian looks darker to you than Quinacridone Rose by 2.4 value; as printed it is by 1.9.", l.Tubes[0].Tells)
	assert.Greater(t, l.Tubes[0].Full, 20.0)
	assert.Empty(t, lookAlikesOf(regions, never, starter[1:], deutan1).Tubes, "no white, no tints")
}

// One pigment ground five times as weak looks the same thick, is paler in white, and
// lets black through: what scatters and absorbs less per thickness hides less
// ([Kubelka1948]).
func TestWhatTellsTwoPilesApart(t *testing.T) {
	strong, _ := paint.Find(starter, "yellow-ochre")
	weak := strong.Vary(1, 1, 0)
	for b := range weak.K {
		weak.K[b] /= 5
		weak.S[b] /= 5
	}
	made := func(name string, p paint.Paint, lighter float64) *dab {
		lab := p.Masstone()
		lab.L += lighter
		return &dab{name: name, lab: lab, seen: deutan1.See(lab), of: match.Pile{Paints: []paint.Paint{p}, Parts: []float64{1}}}
	}
	white := starter[0]
	with, without := eye{sight: deutan1, white: &white}, eye{sight: deutan1}

	kind, how := with.test(made("P", strong, 0), made("Q", weak, 4))
	assert.Equal(t, "value", kind)
	assert.Equal(t, "Side by side P looks darker to you than Q by 0.4 value.", how)
	kind, how = with.test(made("Q", weak, 0), made("P", strong, 0))
	assert.Equal(t, "tint", kind)
	assert.Contains(t, how, "P comes out darker than Q")
	kind, how = without.test(made("P", strong, 0), made("Q", weak, 0))
	assert.Equal(t, "opacity", kind)
	assert.Contains(t, how, "over it Q is darker than P")
	kind, how = with.tellPiles(made("P", strong, 0), made("Q", strong, 0), false)
	assert.Equal(t, "tag", kind)
	assert.Equal(t, "Only the tags: keep P and Q apart on the palette, each by its tag.", how)
	q := made("Q", strong, 0)
	kind, _ = with.tellPiles(&dab{name: "P", lab: q.lab, seen: q.seen}, q, false)
	assert.Equal(t, "tag", kind, "a pile of paints that are not in the box")
}

// Neighbours are lost where their main colours are; a small colour loses no border.
func TestNeighboursByMainColours(t *testing.T) {
	lost := []Region{
		tagged("A", mixOf("A1", 0.2, yellow, "cadmium-yellow-lemon"), mixOf("A2", 0.8, red, "pyrrole-red")),
		tagged("B", mixOf("B1", 1, green, "viridian")),
		tagged("C"),
	}
	l := lookAlikesOf(lost, always, starter, deutan1)
	require.Len(t, l.Regions, 1)
	assert.Equal(t, "A", l.Regions[0].A)
	assert.Equal(t, "B", l.Regions[0].B)
	assert.Equal(t, "Keep the drawn line between them open until both are laid in, A2 on one side and B1 on the other.", l.Regions[0].Tells)

	for _, first := range []float64{0.6, 0.8} { // over half: the region is called by it alone
		lost[0].Colours[0].Share, lost[0].Colours[1].Share = first, 1-first
		l = lookAlikesOf(lost, always, starter, deutan1)
		assert.Empty(t, l.Regions)
		assert.Len(t, l.Piles, 1)
	}
}

// To a protanope reds are far darker than to others ([Wyszecki1982] 5.14, from memory),
// so that a red and a gray of one value part; a deutan and a tritan have no such thing:
// light is what the long and middle cones catch together.
func TestWhatOnlyTheProtanSeesInValue(t *testing.T) {
	same := colour.Lab{L: 45, A: 65, B: 45}
	regions := []Region{tagged("A", mixOf("A1", 1, same, "pyrrole-red")), tagged("B", mixOf("B1", 1, colour.Lab{L: 45}, "ivory-black"))}
	l := lookAlikesOf(regions, never, starter, protan1)
	require.Len(t, l.Reverse, 1)
	p := l.Reverse[0]
	assert.Equal(t, "value", p.Kind)
	assert.Regexp(t, `^To your eyes A1 is darker than B1 by 1\.\d value; to others they are equal\.`, p.Tells)
	assert.LessOrEqual(t, p.Seen, p.Full, "no sight with less tells more apart")
	assert.Empty(t, lookAlikesOf(regions, never, starter, tritan1).Reverse)
	regions[1].Colours[0].Recipe.Lab = TripleOf(colour.Lab{L: 41})
	assert.Empty(t, lookAlikesOf(regions, never, starter, protan1).Reverse, "others see this one too")
}

// bordering tells which regions of a parting share a border, by pixels side by side.
func bordering(p *analyze.Picture, of []uint8) func(a, b int) bool {
	met := map[[2]uint8]bool{}
	for i := range of {
		if i%p.Width > 0 {
			met[[2]uint8{of[i-1], of[i]}] = true
		}
		if i >= p.Width {
			met[[2]uint8{of[i-p.Width], of[i]}] = true
		}
	}
	return func(a, b int) bool { return met[[2]uint8{uint8(a), uint8(b)}] || met[[2]uint8{uint8(b), uint8(a)}] }
}

// hueWordsOf are words that a painter who cannot trust hue cannot use.
var hueWordsOf = []string{"red", "orange", "yellow", "green", "blue", "violet", "purple", "pink", "brown"}

// Every pair of a real plan keeps to the limits and is told apart without hue.
func TestLookAlikesOfPhotos(t *testing.T) {
	slow(t)
	files := []string{"../../testdata/kettle.jpg"}
	for _, name := range []string{"01_tulips_pink.png", "05_fig_red_bowl.jpg", "03_daisies_violet.jpg"} {
		file := filepath.Join("..", "..", "..", "shared", "photos", name)
		if _, err := os.Stat(file); err != nil {
			t.Logf("without %s: the reference photographs are kept in a folder shared beside the checkout", name)
			continue
		}
		files = append(files, file)
	}
	for _, file := range files {
		p, err := Make(Options{Photo: file})
		require.NoError(t, err)
		touching := bordering(p.Pictures.Photo, p.Pictures.Parting.Of)
		for _, sight := range []colour.Sight{deutan1, protan1, tritan1} {
			l := lookAlikesOf(p.Regions, touching, starter, sight)
			assert.Equal(t, l, lookAlikesOf(p.Regions, touching, starter, sight))
			kinds := map[string]int{}
			for _, pair := range append(append(l.Piles, l.Tubes...), l.Regions...) {
				kinds[pair.Kind]++
				assert.True(t, pair.Full >= 10 && pair.Seen <= 4, "%+v", pair)
				own, _, _ := strings.Cut(pair.Tells, "To others")
				for _, p := range starter { // their names may hold a hue
					own = strings.ReplaceAll(own, p.Name, "")
				}
				for _, word := range hueWordsOf {
					assert.NotContains(t, own, word)
				}
			}
			t.Logf("%s, %v: %d pairs of piles of %d, %d of tubes, %d of regions, %d the reverse; told by %v", filepath.Base(file), sight,
				len(l.Piles)+l.More.Piles, len(p.Pictures.Colours), len(l.Tubes)+l.More.Tubes, len(l.Regions)+l.More.Regions, len(l.Reverse)+l.More.Reverse, kinds)
			if sight == deutan1 {
				assert.NotEmpty(t, l.Piles, file)
			}
		}
	}
}

func BenchmarkLookAlikes(b *testing.B) {
	p, err := Make(Options{Photo: "../../testdata/kettle.jpg"})
	require.NoError(b, err)
	for b.Loop() {
		lookAlikesOf(p.Regions, always, starter, deutan1)
	}
}
