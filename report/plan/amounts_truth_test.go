package plan

import (
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/match/paint"
)

// masksOf writes a mask of each object of the demo scene, light where it is, and returns
// them as regions of its name.
func masksOf(t *testing.T, known truth, objects *image.Paletted) (wishes []RegionWish) {
	for _, o := range known.Objects {
		mask := image.NewGray(objects.Rect)
		for i, at := range objects.Pix {
			if int(at) == o.Mask {
				mask.Pix[i] = 255
			}
		}
		file := filepath.Join(t.TempDir(), fmt.Sprintf("%d.png", o.Mask))
		f, err := os.Create(file)
		require.NoError(t, err)
		require.NoError(t, png.Encode(f, mask))
		require.NoError(t, f.Close())
		wishes = append(wishes, RegionWish{Name: o.Name, Mask: file})
	}
	return wishes
}

// onceOver is one coat of an ordinary film over every region, each colour of its own mix.
func onceOver(regions []Region) Layers {
	l := Layers{FilmUM: FilmUsual}
	for _, r := range regions {
		c := Coat{ID: r.Tag + ".1", Region: r.Tag, Pass: PassNext, Medium: "none", FilmUM: FilmUsual}
		for _, col := range r.Colours {
			pile := col.ID
			if col.SameAs != "" {
				pile = col.SameAs
			}
			c.Mixes = append(c.Mixes, CoatMix{ID: col.ID, Pile: pile, On: []string{col.ID}, Parts: col.Recipe.Parts})
		}
		l.Coats = append(l.Coats, c)
	}
	return l
}

// The things of the demo scene on a panel of 12 × 9 in, 696.77 cm²: what each covers is
// known from the ray that was traced through each pixel (testdata/kettle.json). The area
// of the mixes of each agrees to 0.2 cm², and the paint with it; all together they are the
// panel.
func TestAmountsAgainstTheScene(t *testing.T) {
	known, objects := demoTruth(t)
	p, err := Make(Options{Photo: demo, Regions: masksOf(t, known, objects)})
	require.NoError(t, err)
	const panel = 30.48 * 22.86
	none, whole := 0.0, 0.0
	for i, o := range known.Objects {
		r := p.Regions[i]
		require.Equal(t, o.Name, r.Name)
		for j := range r.Colours {
			r.Colours[j].SameAs = "" // each thing for itself
		}
		l := onceOver(p.Regions[i : i+1])
		a := amountsOf(p.Regions[i:i+1], l, once(l), p.Grid.Layout(), paint.StarterBox(), Options{Work: Work{Waste: &none}})
		area, ml, painted := 0.0, 0.0, 0.0
		for _, m := range a.Mixes {
			area, ml = area+m.CM2, ml+m.ML
			painted += max(leastPile, m.CM2*FilmUsual/1e4)
		}
		assert.InDelta(t, o.Share*panel, area, 0.2, o.Name)
		assert.InDelta(t, painted, ml, 0.01*float64(len(a.Mixes)), o.Name)
		whole += area
		t.Logf("%s: %.2f cm², true %.2f; %.2f ml", o.Name, area, o.Share*panel, ml)
	}
	assert.InDelta(t, panel, whole, 0.5)
}

// In the demo's own plan the mixes cover the panel, and what the tubes give is what the
// sessions lay out, in millilitres and grams; no less than one film over the whole panel.
func TestAmountsOfTheDemo(t *testing.T) {
	p, err := makeDemo()
	require.NoError(t, err)
	var area, mixes, mixed, tubes, weighed, piles float64
	for _, m := range p.Amounts.Mixes {
		area, mixes, mixed = area+m.CM2, mixes+m.ML, mixed+m.Grams
	}
	for _, tube := range p.Amounts.Tubes {
		tubes, weighed = tubes+tube.ML, weighed+tube.Grams
		assert.InDelta(t, tube.ML*known(t, tube.Paint).TubeDensity(), tube.Grams, 0.02, tube.Name) // ml is told to 0.01, and 1 ml weighs up to 2.7 g
	}
	for _, s := range p.Days.Sessions {
		assert.NotEmpty(t, s.Piles, "session %d", s.Number)
		for _, pile := range s.Piles {
			piles += pile.ML
		}
	}
	const panel = 30.48 * 22.86
	assert.InDelta(t, panel, area, 0.5)
	assert.InDelta(t, mixes, tubes, 0.2) // each is rounded to 0.01
	assert.InDelta(t, mixes, piles, 0.2)
	assert.InDelta(t, mixed, weighed, 0.4)
	assert.GreaterOrEqual(t, mixes, panel*FilmUsual/1e4*(1+WasteUsual)-0.2)
}
