package analyze

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tonewright/analyze/colour"
)

// look is what a region is named by.
type look struct {
	lab                      colour.Lab // mean
	x, y                     float64    // mean place, 0 to 1
	left, top, right, bottom int        // the outermost pixels
	pixels                   int
}

// describe returns the regions of of with a name each, by where they lie and what
// they look like: "upper left, dark". No two names are the same.
func describe(p *Picture, of []uint8) []Region {
	looks := looksOf(p, of)
	regions := make([]Region, len(looks))
	for r := range looks {
		l := &looks[r]
		regions[r] = Region{Name: l.place(p) + ", " + l.appearance(), Pixels: l.pixels}
	}
	tellApart(regions, looks)
	return regions
}

// looksOf measures every region.
func looksOf(p *Picture, of []uint8) []look {
	var looks []look
	for y := range p.Height {
		for x, n := range of[y*p.Width : (y+1)*p.Width] {
			for int(n) >= len(looks) {
				looks = append(looks, look{left: p.Width, top: p.Height})
			}
			looks[n].add(x, y, p.Lab[3*(y*p.Width+x):])
		}
	}
	for r := range looks {
		l, n := &looks[r], float64(looks[r].pixels)
		l.lab = colour.Lab{L: l.lab.L / n, A: l.lab.A / n, B: l.lab.B / n}
		l.x = (l.x/n + 0.5) / float64(p.Width)
		l.y = (l.y/n + 0.5) / float64(p.Height)
	}
	return looks
}

// add adds a pixel to the sums that looksOf will divide.
func (l *look) add(x, y int, lab []float32) {
	l.lab.L += float64(lab[0])
	l.lab.A += float64(lab[1])
	l.lab.B += float64(lab[2])
	l.x += float64(x)
	l.y += float64(y)
	l.left, l.right = min(l.left, x), max(l.right, x)
	l.top, l.bottom = min(l.top, y), max(l.bottom, y)
	l.pixels++
}

// A region that reaches over this share of the picture's width or height spans it.
const spanShare = 0.85

// place says where the region lies: a ninth of the picture, or the band it spans.
func (l *look) place(p *Picture) string {
	wide := float64(l.right-l.left+1) >= spanShare*float64(p.Width)
	tall := float64(l.bottom-l.top+1) >= spanShare*float64(p.Height)
	row := []string{"upper", "middle", "lower"}[third(l.y)]
	column := []string{"left", "centre", "right"}[third(l.x)]
	switch {
	case wide && tall:
		return "all over"
	case wide:
		return []string{"across the top", "across the middle", "across the bottom"}[third(l.y)]
	case tall:
		return []string{"down the left", "down the middle", "down the right"}[third(l.x)]
	case row == "middle":
		return column
	case column == "centre":
		return row + " middle"
	}
	return row + " " + column
}

// third returns which third of 0 to 1 f lies in.
func third(f float64) int { return min(2, int(3*f)) }

// Ours: below this Munsell chroma a mean of many pixels is named by its lightness alone.
const namedChroma = 1.5

// grayNames are what lightness is called without a hue. Ours.
var grayNames = map[string]string{"very dark": "very dark", "dark": "dark", "mid": "mid gray", "light": "light gray", "pale": "near white"}

// appearance says what the region looks like: its lightness and, if it has one, its hue.
func (l *look) appearance() string {
	m := l.lab.Munsell()
	light := lightness(m.Value)
	if m.Chroma < namedChroma {
		return grayNames[light]
	}
	hue := hueName(m)
	if light == "mid" {
		return hue
	}
	return light + " " + hue
}

// lightness names a Munsell value in five words. Ours.
func lightness(value float64) string {
	for i, name := range []string{"very dark", "dark", "mid", "light"} {
		if value < []float64{1.5, 4, 6, 8}[i] {
			return name
		}
	}
	return "pale"
}

// hueName names a Munsell hue by its family; an orange that is dark or dull is called
// brown, and a red-purple pink-purple. Ours: the eye that looks for a region in the
// photo meets pinks in that family, petals and skin, more than purples.
func hueName(m colour.Munsell) string {
	switch name := colour.HueName(m.Hue); {
	case name == "orange" && (m.Value < 5 || m.Chroma < 5):
		return "brown"
	case name == "red-purple":
		return "pink-purple"
	default:
		return name
	}
}

// tellApart adds to names that are the same what tells their regions apart: which is
// lighter, or, of three and more, their order from the left.
func tellApart(regions []Region, looks []look) {
	for r := range regions {
		var same []int
		for s := range regions {
			if regions[s].Name == regions[r].Name {
				same = append(same, s)
			}
		}
		switch {
		case len(same) == 2 && math.Abs(looks[same[0]].lab.L-looks[same[1]].lab.L) >= 2:
			byLook(same, looks, func(l *look) float64 { return l.lab.L })
			regions[same[0]].Name += " (darker)"
			regions[same[1]].Name += " (lighter)"
		case len(same) == 2:
			byLook(same, looks, func(l *look) float64 { return float64(l.pixels) })
			regions[same[0]].Name += " (smaller)"
			regions[same[1]].Name += " (larger)"
		case len(same) > 2:
			byLook(same, looks, func(l *look) float64 { return l.x })
			for n, s := range same {
				regions[s].Name += fmt.Sprintf(" (%s from the left)", ordinal(n))
			}
		}
	}
}

// byLook sorts regions by a measure, ties by index.
func byLook(regions []int, looks []look, measure func(*look) float64) {
	slices.SortStableFunc(regions, func(a, b int) int { return cmp.Compare(measure(&looks[a]), measure(&looks[b])) })
}

// ordinal returns "first" for 0 and so on to the most areas found in a picture.
func ordinal(n int) string {
	return [mostAreas]string{"first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"}[n]
}
