package plan

import (
	"image"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/analyze/colour"
)

// BenchmarkStudy paints the colour study of the demo at working size, the size of any
// large photo there, thick and as one coat over black; beside it, as the floor, what
// clustering the same picture costs.
func BenchmarkStudy(b *testing.B) {
	black, err := ParseGround("black")
	require.NoError(b, err)
	opt := Options{Photo: demo, Ground: black}.withDefaults()
	photo, layout, crop, err := open(opt)
	require.NoError(b, err)
	picture, err := photo.Picture(crop, 0, colour.Lab{})
	require.NoError(b, err)
	named, err := areas(opt, photo, layout, image.Rectangle{Max: image.Pt(photo.Width, photo.Height)})
	require.NoError(b, err)
	parting := analyze.Regions(picture, named)
	clustering := clustersOf(picture, parting, opt)
	of := colourOf(parting, clustering)
	m := newMixer(opt, clustering, tonesOf(picture, reachOf(opt.Box.Paints, opt.Mixing.Finish), false).key, analyze.Composed(parting, picture.Width, picture.Height).Ring)
	mixes := m.all()

	b.Run("study", func(b *testing.B) {
		for b.Loop() {
			studyOf(picture, of, mixes, clustering.Clusters, m)
		}
	})
	b.Run("floor-clusters", func(b *testing.B) {
		for b.Loop() {
			clustersOf(picture, parting, opt)
		}
	})
}
