package analyze

import (
	"fmt"
	"image"
	"math"
)

// From where on a painter is warned. Ours, set on made photos of flat paint, 2160
// swatches of 20 to 64 pixels a side in three lights, with grain, as PNG and JPEG: none
// is said to be in two parts, sloping or shining, two of the darkest and grainiest to
// be uneven, and a channel at its end only where the paint truly is near it.
const (
	leastSide = 12 // pixels, without the edge
	leastArea = 400

	glareShare = 0.01 // of the pixels left out
	clipShare  = 0.2  // of the pixels at an end of the photo's range; from 0.25 on the middle half feels it

	partsApart = 2.5 // CIEDE2000 between two parts, or L* from corner to corner
	edgeClean  = 4   // their distance over the scatter within: a slope has 3.5, the edge of a shadow more
	partsWhole = 0.8 // of neighbouring blocks alike; a straight edge leaves 0.93, every second row 0.5
	partsShare = 0.1 // of the blocks in the smaller part

	marksMost      = 3   // CIEDE2000
	marksOverGrain = 0.7 // of the pixels' own spread: 4 × 4 pixels have a quarter of the grain, half of it in a JPEG

	// The largest gain of the cones over the smallest. 68 paints, pure and in white, 23 colours
	// of a chart and 14 chips, under glowing bodies, seen by a plain camera that is set to
	// daylight and evened out by a gray: median and 90th percentile in CIEDE2000 are 1.0 and
	// 2.9 at a ratio of 1.9 (4000 K), 1.4 and 3.9 at 2.5 (3500 K), 2.0 and 5.6 at 3.5
	// (3000 K), 2.2 and 6.4 at 3.9 (2856 K). Of a camera in daylight that is set to those
	// lamps: 2.5 and 4.7, 3.5 and 7.2, 5.3 and 11, 6.1 and 13.
	gainsRatio = 2.4
	// Linear light of the card's darkest channel, some 25 of 255. A JPEG of 23 patches with
	// much grain is off by 1.4 and 2.6 (median, 90th percentile) at 0.014, by 2.6 and 6.8 at 0.008.
	darkCard = 0.01
)

// warn says what may spoil a sample: a small area, glare, clipping, uneven light or
// paint. what is "card" or "swatch".
func (b *body) warn(what string, rect image.Rectangle) (all []string) {
	if rect.Dx() < leastSide || rect.Dy() < leastSide || rect.Dx()*rect.Dy() < leastArea {
		all = append(all, fmt.Sprintf("Only %d × %d pixels of the %s are left inside its edge: come closer, or draw a larger rectangle.", rect.Dx(), rect.Dy(), what))
	}
	if b.glare >= glareShare {
		all = append(all, fmt.Sprintf("%s of the %s is much lighter, glare or specks of white, and was left out: turn it or the lamp until nothing shines.", percent(b.glare), what))
	}
	all = append(all, b.warnClipped(what)...)
	if text := b.warnUneven(what, rect); text != "" {
		all = append(all, text)
	}
	return all
}

// warnUneven tells of the plainest way in which a sample is not of one colour; ""
// if it is.
func (b *body) warnUneven(what string, rect image.Rectangle) string {
	f := fieldOf(rect, b.pixels)
	spread, marks := b.spread(rect)
	t, slope := b.uneven(f, rect)
	switch {
	case t.apart > 0:
		return fmt.Sprintf("The %s has two parts that differ by %.1f CIEDE2000, the darker one %s of it: a shadow, a second colour or a reflection lies across; move it off, or draw the rectangle inside one part.", what, t.apart, percent(t.darker))
	case slope:
		return fmt.Sprintf("The %s is %.2f times as light at one corner as at the opposite one: light it more evenly, from farther off.", what, 1+f.change)
	case marks >= marksMost && marks >= marksOverGrain*spread:
		return fmt.Sprintf("The %s is uneven, half of it more than %.1f CIEDE2000 off its middle: brush marks, dirt or unmixed paint; make it smooth, or draw the rectangle where it is.", what, marks)
	}
	return ""
}

// uneven returns the two parts that a sample plainly has, the zero twoTone where it has
// not, and else whether its light slopes clearly. Grain makes blocks differ too, the
// more the smaller they are, and a JPEG joins it over 8 pixels, so it raises what is
// asked of both.
func (b *body) uneven(f field, rect image.Rectangle) (t twoTone, slope bool) {
	spread, _ := b.spread(rect)
	least := partsApart + 4*spread*mostBlocks/math.Sqrt(float64(rect.Dx()*rect.Dy()))
	t = twoToneOf(f.blocks)
	slope = b.rise(f.change) >= least && f.change >= slopeOverNoise*f.noise
	if t.apart >= least && t.plain() && (!slope || t.clean >= edgeClean) {
		return t, false
	}
	return twoTone{}, slope
}

// rise is a change in luminance about the body's own, as a share, in L*.
func (b *body) rise(change float64) float64 {
	half := math.Sqrt(1 + change)
	return rgb{b.colour[0] * half, b.colour[1] * half, b.colour[2] * half}.lab().L -
		rgb{b.colour[0] / half, b.colour[1] / half, b.colour[2] / half}.lab().L
}

// warnClipped tells of channels at an end of the photo's range.
func (b *body) warnClipped(what string) (all []string) {
	bottom, top := b.clipped()
	for k, channel := range channels {
		if top[k] > clipShare {
			all = append(all, fmt.Sprintf("The %s of the %s is at the top of the photo's range, so it is lighter or stronger than it reads: photograph it again with less exposure.", channel, what))
		}
		if bottom[k] > clipShare {
			all = append(all, fmt.Sprintf("The %s of the %s is at the bottom of the photo's range, so it is darker or stronger than it reads: photograph it again with more exposure.", channel, what))
		}
	}
	return all
}

// warnPlace tells of a swatch that lies badly.
func warnPlace(s Spot, card Card, far bool) (all []string) {
	if s.Rect.Overlaps(card.Rect) {
		all = append(all, "The swatch's rectangle overlaps the card's: draw them apart.")
	}
	if far {
		all = append(all, "The light changes across the card and the swatch is far from it, so its lightness is a guess: lay the card close beside it.")
	}
	return all
}

// warnCard tells of a light that a card cannot even out; raw is the card as
// it was photographed.
func warnCard(gains cones, raw rgb) (all []string) {
	if least := min(raw[0], raw[1], raw[2]); least < darkCard {
		all = append(all, "The card is very dark in the photo, so grain tells more than light: photograph it again with more light.")
	}
	if max(gains[0], gains[1], gains[2]) > gainsRatio*min(gains[0], gains[1], gains[2]) {
		all = append(all, "The light on the card is strongly coloured, or the camera is set to another light, which a card evens out only in part: use daylight, and set the camera to it.")
	}
	return all
}

// percent is a share in words.
func percent(share float64) string { return fmt.Sprintf("%.0f %%", math.Round(100*share)) }
