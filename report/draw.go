package report

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"runtime"
	"sync"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/report/plan"
)

// quality is the JPEG quality of the views. Ours: at 82 the demo's views show no
// blocks at arm's length on a tablet and take 150-250 kB.
const quality = 82

// thumbWidth is the width, in image pixels, of the small pictures that say where
// a colour lies; the page shows them at two thirds of it.
const thumbWidth = 240

// art is every image of the report, encoded, and the numbers they go by.
type art struct {
	files                    []picture
	photo, five, nine, mixes int
	outline                  int
	study, coat              int // these and the next are 0 where the plan has no such picture
	photoSeen, studySeen     int
	missed                   int
	regions                  []int // by region
	colours                  []int // by colour, over all regions
	thumbW, thumbH           int
}

// draw encodes all images, several at once; which is which does not depend on
// the number of cores.
func draw(p *plan.Plan) *art {
	var jobs []func() picture
	add := func(job func() picture) int {
		jobs = append(jobs, job)
		return len(jobs) - 1
	}
	pics := &p.Pictures
	w, h := pics.Photo.Width, pics.Photo.Height
	a := &art{}
	a.photo = add(func() picture { return asJPEG(rgbImage(pics.Photo.RGB, w, h)) })
	a.five = add(func() picture { return asPNG(valueImage(pics.Values5, w, h)) })
	a.nine = add(func() picture { return asPNG(valueImage(pics.Values9, w, h)) })
	a.mixes = add(func() picture { return asPNG(mixImage(pics, w, h)) })
	a.outline = add(func() picture { return asPNG(outlineImage(pics.Parting.Of, w, h)) })
	a.drawStudy(p, add)

	a.thumbW = min(thumbWidth, w)
	a.thumbH = max(1, a.thumbW*h/w)
	small := thumbIndex(w, h, a.thumbW, a.thumbH)
	for r := range p.Regions {
		a.regions = append(a.regions, add(func() picture { return asPNG(regionThumb(pics, small, a.thumbW, a.thumbH, r)) }))
	}
	n := 0
	for r := range p.Regions {
		for range p.Regions[r].Colours {
			colour := n
			a.colours = append(a.colours, add(func() picture { return asPNG(colourThumb(pics, small, a.thumbW, a.thumbH, r, colour)) }))
			n++
		}
	}
	a.files = run(jobs)
	return a
}

// drawStudy adds the pictures of the colour study and of the painter's sight.
func (a *art) drawStudy(p *plan.Plan, add func(func() picture) int) {
	pics := &p.Pictures
	w, h := pics.Photo.Width, pics.Photo.Height
	if pics.Study != nil {
		a.study = add(func() picture { return asJPEG(studyImage(pics, "study")) })
	}
	if pics.OneCoat != nil {
		a.coat = add(func() picture { return asJPEG(studyImage(pics, "coat")) })
	}
	if pics.PhotoSeen != nil {
		a.photoSeen = add(func() picture { return asJPEG(rgbImage(pics.PhotoSeen, w, h)) })
	}
	if pics.StudySeen != nil {
		a.studySeen = add(func() picture { return asJPEG(studyImage(pics, "sight")) })
	}
	if pics.Missed != nil && pics.Study != nil {
		a.missed = add(func() picture { return asPNG(missedImage(p)) })
	}
}

// run does the jobs on all cores and returns their results in order.
func run(jobs []func() picture) []picture {
	result := make([]picture, len(jobs))
	next := make(chan int)
	var wg sync.WaitGroup
	for range min(len(jobs), runtime.GOMAXPROCS(0)) {
		wg.Go(func() {
			for i := range next {
				result[i] = jobs[i]()
			}
		})
	}
	for i := range jobs {
		next <- i
	}
	close(next)
	wg.Wait()
	return result
}

// asJPEG and asPNG encode into memory, which cannot fail for the sizes in use:
// a picture at working size is far below both formats' 65,535 pixels.
func asJPEG(m image.Image) picture {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: quality}); err != nil {
		panic("report: " + err.Error())
	}
	return picture{"image/jpeg", b.Bytes()}
}

func asPNG(m image.Image) picture {
	var b bytes.Buffer
	e := png.Encoder{CompressionLevel: png.BestSpeed, BufferPool: &encoders}
	if err := e.Encode(&b, m); err != nil {
		panic("report: " + err.Error())
	}
	return picture{"image/png", b.Bytes()}
}

// encoders keeps what PNG encoders work in: a report has some hundred small
// images, and without it more time goes into fresh memory than into them.
var encoders encoderPool

type encoderPool struct{ pool sync.Pool }

func (p *encoderPool) Get() *png.EncoderBuffer {
	b, _ := p.pool.Get().(*png.EncoderBuffer)
	return b
}

func (p *encoderPool) Put(b *png.EncoderBuffer) { p.pool.Put(b) }

// wide fills a palette up to more than 16 colours: image/png writes 8 bits a pixel
// then, several times faster than fewer, and compressed it is hardly larger.
func wide(palette color.Palette) color.Palette {
	for len(palette) <= 16 {
		palette = append(palette, palette[len(palette)-1])
	}
	return palette
}

// rgbImage makes an image of sRGB bytes, three a pixel.
func rgbImage(rgb []uint8, w, h int) image.Image {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for i, j := 0, 0; i < len(rgb); i, j = i+3, j+4 {
		m.Pix[j], m.Pix[j+1], m.Pix[j+2], m.Pix[j+3] = rgb[i], rgb[i+1], rgb[i+2], 255
	}
	return m
}

// grayOf returns the sRGB level of the gray with lightness l.
func grayOf(l float64) uint8 { return colour.Gray(l) }

func valueImage(v analyze.ValueMap, w, h int) image.Image {
	palette := make(color.Palette, len(v.Steps))
	for i, step := range v.Steps {
		palette[i] = color.Gray{grayOf(colour.LOf(step))}
	}
	return &image.Paletted{Pix: v.Of, Stride: w, Rect: image.Rect(0, 0, w, h), Palette: wide(palette)}
}

// mixImage shows each pixel in the colour of its mix.
func mixImage(pics *plan.Pictures, w, h int) image.Image {
	palette := make(color.Palette, len(pics.Colours))
	for i, c := range pics.Colours {
		palette[i] = swatchColour(c.Mix)
	}
	if len(palette) > 256 { // more than a palette holds
		m := image.NewRGBA(image.Rect(0, 0, w, h))
		for i, c := range pics.ColourOf {
			m.SetRGBA(i%w, i/w, palette[c].(color.RGBA))
		}
		return m
	}
	m := image.NewPaletted(image.Rect(0, 0, w, h), wide(palette))
	for i, c := range pics.ColourOf {
		m.Pix[i] = uint8(c)
	}
	return m
}

func swatchColour(c colour.Lab) color.RGBA {
	r, g, b := c.SRGB()
	level := func(v float64) uint8 { return uint8(min(1, max(0, v))*255 + 0.5) }
	return color.RGBA{level(r), level(g), level(b), 255}
}
