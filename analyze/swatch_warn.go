package analyze

import (
	"fmt"
	"image"
	"math"
)

// From where on a painter is warned.
const (
	glareShare = 0.01 // of the pixels left out
	clipShare  = 0.05 // of the pixels at an end of the photo's range
	leastSide  = 12   // pixels, without the edge
	leastArea  = 400
	slopeShare = 0.1 // of change in luminance from corner to corner, which is some 2 L*

	partsApart = 2.5 // CIEDE2000 between two parts
	partsClean = 4   // their distance over the scatter within: a plain slope has 3.5
	partsShare = 0.1 // of the blocks in the smaller part

	spreadMost = 4.0 // CIEDE2000

	gainsRatio = 4.0  // of the largest gain to the smallest
	darkCard   = 0.01 // linear light of the card's darkest channel
)

// warn says what may spoil a sample: glare, clipping, a small area, uneven light or
// paint. what is "card" or "swatch".
func (b *body) warn(what string, rect image.Rectangle, f field, spread float64) (all []string) {
	say := func(text string, args ...any) { all = append(all, fmt.Sprintf(text, args...)) }
	if rect.Dx() < leastSide || rect.Dy() < leastSide || rect.Dx()*rect.Dy() < leastArea {
		say("Only %d × %d pixels of the %s are left inside its edge: come closer, or draw a larger rectangle.", rect.Dx(), rect.Dy(), what)
	}
	if b.glare >= glareShare {
		say("%s of the %s is much lighter, glare or specks of white, and was left out: turn it or the lamp until nothing shines.", percent(b.glare), what)
	}
	all = append(all, b.warnClipped(what)...)
	switch t := twoToneOf(f.blocks); {
	case t.plain():
		say("The %s has two parts that differ by %.1f CIEDE2000, the darker one %s of it: a shadow or a second colour lies across; move it off, or draw the rectangle inside one part.", what, t.apart, percent(t.darker))
	case f.change >= slopeShare && f.change >= slopeOverNoise*f.noise:
		say("The light changes by %s across the %s: light it more evenly, from farther off.", percent(f.change), what)
	case spread > spreadMost:
		say("The %s is uneven, half of its pixels are more than %.1f CIEDE2000 off its middle: lay it out smooth, and photograph it in more light.", what, spread)
	}
	return all
}

// plain tells whether a sample is clearly in two parts.
func (t twoTone) plain() bool {
	return t.apart >= partsApart && t.clean >= partsClean && min(t.darker, 1-t.darker) >= partsShare
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
func warnCard(card Card, gains, raw rgb) (all []string) {
	if least := min(raw[0], raw[1], raw[2]); least < darkCard {
		all = append(all, "The card is very dark in the photo, so grain tells more than light: photograph it again with more light.")
	}
	if max(gains[0], gains[1], gains[2]) > gainsRatio*min(gains[0], gains[1], gains[2]) {
		all = append(all, "The light on the card is strongly coloured, which gains alone cannot undo: use daylight, or set the camera's white balance by the card.")
	}
	return all
}

// percent is a share in words.
func percent(share float64) string { return fmt.Sprintf("%.0f %%", math.Round(100*share)) }
