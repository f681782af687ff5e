// The colour study as pictures: in the page, and as files of their own.

package report

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"slices"
	"strings"

	"tonewright/analyze"
	"tonewright/report/plan"
)

// Studies lists the pictures of the colour study that the plan has, in the words
// that Study takes: "study"; "gray", its lightness alone; "coat", as one coat over a
// ground that is not white; "sight", as a sight sees it that is not full.
func Studies(p *plan.Plan) []string {
	pics, list := &p.Pictures, []string{}
	if pics.Study != nil {
		list = append(list, "study", "gray")
	}
	if pics.OneCoat != nil {
		list = append(list, "coat")
	}
	if pics.StudySeen != nil {
		list = append(list, "sight")
	}
	return list
}

// Study writes one of the plan's Studies as a PNG of the photo's working size, sRGB.
// It is an error to ask for one that the plan has not.
func Study(w io.Writer, p *plan.Plan, which string) error {
	if has := Studies(p); !slices.Contains(has, which) {
		return fmt.Errorf("report: this plan has no picture %q of the colour study: it has %s", which, strings.Join(has, ", "))
	}
	return png.Encode(w, studyImage(&p.Pictures, which))
}

func studyImage(pics *plan.Pictures, which string) image.Image {
	w, h := pics.Photo.Width, pics.Photo.Height
	switch which {
	case "gray":
		return lightnessImage(pics.Study)
	case "coat":
		return rgbImage(pics.OneCoat.RGB, w, h)
	case "sight":
		return rgbImage(pics.StudySeen, w, h)
	}
	return rgbImage(pics.Study.RGB, w, h)
}

// lightnessImage shows each pixel as the gray of its own L*. Levels are looked up by
// tenths of L*, which is finer than the 256 levels are apart.
func lightnessImage(p *analyze.Picture) image.Image {
	var levels [1001]uint8
	for i := range levels {
		levels[i] = grayOf(float64(i) / 10)
	}
	m := image.NewGray(image.Rect(0, 0, p.Width, p.Height))
	for i := range m.Pix {
		m.Pix[i] = levels[int(min(100, max(0, p.Lab[3*i]))*10+0.5)]
	}
	return m
}

// missedImage shows the study's lightness, pale, with a pattern over what a sight
// misses of its colour: nothing, dots, dense hatching. Heavy lines run along the
// borders that others see and that sight hardly does. It holds grays only.
func missedImage(p *plan.Plan) image.Image {
	pics := &p.Pictures
	w, h := pics.Photo.Width, pics.Photo.Height
	m := image.NewGray(image.Rect(0, 0, w, h))
	pitch := max(5, max(w, h)/patterns)
	for y := range h {
		for x := range w {
			i := y*w + x
			m.Pix[i] = pale(float64(pics.Study.Lab[3*i]))
			if inked(pics.Missed[i], x, y, pitch) {
				m.Pix[i] = patternInk
			}
		}
	}
	lines := bordersImage(w, h, func(x, y int) bool { return pics.LostBorders[y*w+x] }, linePaletteDark)
	for i, c := range lines.Pix {
		if c != 0 {
			m.Pix[i] = lines.Palette[c].(color.Gray).Y
		}
	}
	return m
}

// patterns is how many dots go along the longer side, and patternInk is what they are
// drawn in. Ours: at 80 they are still dots on a telephone, some 4.5 pixels apart.
const (
	patterns   = 80
	patternInk = 70
)

// pale returns the level of the gray that stands for lightness l beneath a pattern:
// 160-255 in steps of 5, so that the pattern shows on all of them and the file is small.
func pale(l float64) uint8 { return 160 + 5*uint8(min(100, max(0, l))*19/100+0.5) }

// inked tells whether the pattern of a class has ink at a pixel: dots on staggered
// rows for 1, an eighth of it in ink; strokes from corner to corner for 2, a third.
func inked(class uint8, x, y, pitch int) bool {
	switch class {
	case 1:
		row := y / pitch
		dx, dy := (x+row%2*pitch/2)%pitch-pitch/2, y%pitch-pitch/2
		return 25*(dx*dx+dy*dy) <= pitch*pitch
	case 2:
		return (x+y)%(3*pitch/4) < pitch/4
	}
	return false
}
