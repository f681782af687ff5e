// What makes the reading of a photo worthless, not only less sure.

package analyze

import (
	"fmt"
	"image"
)

// From where on nothing is to be gone by. Ours: where the colours that come of it are
// off by 2 CIEDE2000 or more in the middle, which is as much as a pile may miss by.
const (
	uselessGains = 3.5   // of the cones: 2.0 and 5.6 (median, 90th percentile), see gainsRatio
	uselessDark  = 0.008 // of the card's darkest channel: 2.6 and 6.8, see darkCard
	uselessMarks = 8     // CIEDE2000 of half of the cells off their middle: a card with waves of light 3.3 times up and down made a swatch 2.2 off
	halfOf       = 0.25  // of a sample in a shadow, from which on the middle half feels it
	whitest      = 100   // L* of a perfect white; a titanium white has 97
)

// useless says for which reasons a card or swatch is not to be read at all, each a
// sentence with what to do; what is "card" or "swatch". None if it may.
func (b *body) useless(what string, rect image.Rectangle) (all []string) {
	f := fieldOf(rect, b.pixels)
	spread, marks := b.spread(rect)
	switch t, slope := b.uneven(f, rect); {
	case t.apart > 0 && t.darker >= halfOf:
		all = append(all, fmt.Sprintf("Photograph it again: %s of the %s seems to lie in shadow.", aboutHalf(t.darker), what))
	case slope && f.change > mostSlope:
		all = append(all, fmt.Sprintf("Photograph it again: the %s is more than twice as light at one corner as at the opposite one.", what))
	case marks >= uselessMarks && marks >= marksOverGrain*spread:
		all = append(all, fmt.Sprintf("Photograph it again: the %s is not of one colour.", what))
	}
	_, top := b.clipped()
	if max(top[0], top[1], top[2]) > clipShare {
		all = append(all, fmt.Sprintf("Photograph it again with less exposure: the %s is too light for the photo's range.", what))
	}
	return all
}

// aboutHalf says a share in a shadow, of which the middle is what matters.
func aboutHalf(share float64) string {
	switch {
	case share < 0.4:
		return "a part"
	case share <= 0.6:
		return "half"
	}
	return "most"
}

// useless says why a swatch as it was read in a light is not to be gone by.
func (w *Swatch) useless(b *body, s Spot, c sample, card Card) (all []string) {
	if s.Rect.Overlaps(card.Rect) {
		all = append(all, "Draw the rectangles again: the swatch's lies over the card's.")
	}
	all = append(all, b.useless("swatch", c.rect)...)
	if w.Lab.L > whitest {
		all = append(all, fmt.Sprintf("Photograph it again: the swatch reads lighter than a perfect white, L* %.0f, so it had more light than the card, or the card is not what it is said to be.", w.Lab.L))
	}
	return all
}

// uselessCard says why a light cannot be evened out by its card; raw is the card as it
// was photographed.
func uselessCard(gains cones, raw rgb) (all []string) {
	if min(raw[0], raw[1], raw[2]) < uselessDark {
		all = append(all, "Photograph it again with more light: the card is nearly black in the photo.")
	}
	if max(gains[0], gains[1], gains[2]) > uselessGains*min(gains[0], gains[1], gains[2]) {
		all = append(all, "Photograph it again in daylight: the light on the card is too strongly coloured to be evened out.")
	}
	return all
}
