// The photo as it is printed: cut, reduced, mirrored.

package sheet

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"slices"
	"sync"

	"github.com/disintegration/imaging"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/grid"
)

// dots is how finely a photo is printed, to the inch. Ours: at arm's length an eye parts
// about 90 lines to the inch; more than this is paper that nobody sees.
const dots = 160

// mostPixels bounds the longer side of the picture that is read for printing: 15 bytes a
// pixel are then 240 MB at most. Ours; on a panel of 24 in it still gives 166 dots.
const mostPixels = 4000

// jpegQuality is of the photos in the sheets, of 100. Ours: at 90 nothing is to be seen
// of it in print, and a panel of 12 in takes half a megabyte.
const jpegQuality = 90

// pixels returns how long the picture is wanted to be shown on a panel, and an error
// where the sheets asked for cannot be made at all.
func (o Options) pixels(g grid.Grid) (int, error) {
	o = o.withDefaults()
	if err := o.check(g); err != nil {
		return 0, err
	}
	if o.As != Photo && o.As != GrayAs {
		return 0, nil
	}
	long := float64(max(g.Width, g.Height)) / 25.4
	want := 0.0
	for _, k := range o.Kinds {
		switch k {
		case Whole:
			want = max(want, min(long, float64(max(o.Paper.Width, o.Paper.Height))/25.4)*dots)
		case Panel:
			want = max(want, long*dots)
		case Cards:
			want = max(want, long*dots*o.Enlarge)
		}
	}
	return int(min(mostPixels, math.Ceil(want))), nil
}

// shown is the photo as it is printed.
type shown struct {
	image image.Image
	panel grid.Grid
	wide  map[int]bool // the widths in pixels of the parts cut so far
}

// newShown returns the picture, in gray where it is asked for.
func newShown(p *analyze.Picture, g grid.Grid, as As) *shown {
	bounds := image.Rect(0, 0, p.Width, p.Height)
	if as == GrayAs {
		m, levels := image.NewGray(bounds), grays()
		for i := range m.Pix {
			m.Pix[i] = levels[int(min(100, max(0, p.Lab[3*i]))*10+0.5)]
		}
		return &shown{m, g, map[int]bool{}}
	}
	m := image.NewNRGBA(bounds)
	for i := range p.Width * p.Height {
		copy(m.Pix[4*i:], p.RGB[3*i:3*i+3])
		m.Pix[4*i+3] = 255
	}
	return &shown{m, g, map[int]bool{}}
}

// grays returns the gray of every tenth of L*.
var grays = sync.OnceValue(func() (levels [1001]uint8) {
	for i := range levels {
		levels[i] = colour.Gray(float64(i) / 10)
	}
	return levels
})

// fineness says how finely the photo is printed at a scale of the panel, where it is.
func (b *book) fineness(scale float64) string {
	if b.shown == nil {
		return ""
	}
	inches := float64(b.grid.Width) / 25.4 * scale
	return fmt.Sprintf(", photo at %.0f dots to the inch", min(dots, float64(b.shown.image.Bounds().Dx())/inches))
}

// part cuts what a view shows out of the photo, whole pixels of it, and brings it to the
// paper's fineness where it is finer.
func (s *shown) part(v view) (Image, error) {
	size := s.image.Bounds().Size()
	wide, high := float64(s.panel.Width)/float64(size.X), float64(s.panel.Height)/float64(size.Y) // of a pixel
	r := image.Rect(
		int(math.Floor(float64(v.part.X)/wide)), int(math.Floor(float64(v.part.Y)/high)),
		int(math.Ceil(float64(v.part.X+v.part.Width)/wide)), int(math.Ceil(float64(v.part.Y+v.part.Height)/high)))
	r = r.Intersect(s.image.Bounds())
	box := grid.Box{X: grid.Millimetres(float64(r.Min.X) * wide), Y: grid.Millimetres(float64(r.Min.Y) * high),
		Width: grid.Millimetres(float64(r.Dx()) * wide), Height: grid.Millimetres(float64(r.Dy()) * high)}
	cut := imaging.Crop(s.image, r)
	if most := int(math.Ceil(float64(v.length(box.Width)) / 25.4 * dots)); most > 0 && cut.Rect.Dx() > most*5/4 {
		cut = imaging.Resize(cut, most, 0, imaging.Box)
	}
	if v.mirrored {
		cut = imaging.FlipH(cut)
	}
	onPage := v.boxOf(box)
	cut, onPage.Width = s.unlike(cut, onPage.Width)
	var b bytes.Buffer
	if err := jpeg.Encode(&b, s.flat(cut), &jpeg.Options{Quality: jpegQuality}); err != nil {
		return Image{}, fmt.Errorf("the photo could not be put onto a sheet: %w", err)
	}
	return Image{Box: onPage, JPEG: slices.Clip(b.Bytes())}, nil
}

// unlike makes a part wider by as many columns of pixels as it takes to have a width that
// no part before it has, and its width on the page as much: they lie outside of what is
// seen. The PDF library sorts images by their width and leaves those of one width in any
// order, so that the same job would give another file each time.
func (s *shown) unlike(cut *image.NRGBA, onPage grid.Millimetres) (*image.NRGBA, grid.Millimetres) {
	have := cut.Rect.Dx()
	want := have
	for s.wide[want] {
		want++
	}
	s.wide[want] = true
	if want == have {
		return cut, onPage
	}
	wider := imaging.New(want, cut.Rect.Dy(), color.White)
	for at := want - have; at > 0; at -= have { // of the picture's own colours, for clean edges
		wider = imaging.Paste(wider, cut, image.Pt(at, 0))
	}
	return imaging.Paste(wider, cut, image.Pt(0, 0)), onPage * grid.Millimetres(want) / grid.Millimetres(have)
}

// flat returns a gray picture as one channel.
func (s *shown) flat(m *image.NRGBA) image.Image {
	if _, gray := s.image.(*image.Gray); !gray {
		return m
	}
	flat := image.NewGray(m.Rect)
	for i := range flat.Pix {
		flat.Pix[i] = m.Pix[4*i]
	}
	return flat
}
