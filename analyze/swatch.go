package analyze

import (
	"image"

	"tonewright/analyze/colour"
)

// Spot is a painted swatch to be read from a photo: a name and where it lies, in
// upright pixels of the photo.
type Spot struct {
	Name string
	Rect image.Rectangle
}

// Card is a card of known colour in the photo, by which the light is evened out:
// where it lies, in upright pixels, and what it is. The usual gray card gives back
// 18 % of the light, which is L* 49.5; a white one is as its maker says, about L* 96.
type Card struct {
	Rect image.Rectangle
	Lab  colour.Lab
}

// Swatch is what was read at a Spot.
type Swatch struct {
	Name     string
	Lab      colour.Lab // the middle of its pixels, as it would look in even daylight (D65)
	Spread   float64    // median CIEDE2000 of the pixels from Lab
	Pixels   int        // that Lab was taken from: inside the edge, without glare
	Warnings []string   // a sentence each, what is wrong and what to do; none if all is well
	Useless  []string   // a sentence each, why Lab is not to be gone by at all and what to do; none if it may
}

// CardReading is what the card said of the light.
type CardReading struct {
	// What the light, at the card's middle, is multiplied by in sharpened responses of the
	// eye's cones to long, middle and short waves; 1, 1, 1 is full daylight (D65), and
	// a warm light has a small first one and a large last one.
	Gains    [3]float64
	Spread   float64 // median CIEDE2000 of the card's pixels from its colour
	Slope    float64 // how much the light changes from one side of the card to the other: 0.2 is a fifth more
	Warnings []string
	Useless  []string // as of a Swatch: then no swatch of the photo is to be gone by
}

// Swatches returns the colours of painted swatches, in the order of the spots, after
// the light has been evened out by a card that lies beside them in the same light.
//
// The photo is decoded once at its full size and taken to linear light by its colour
// profile; three gains of the cone responses bring the card's middle to its known
// colour: see cones. Where the light clearly changes across the card, its slope is
// carried on to the swatches: see lamp. The outer tenth of a rectangle is not looked
// at, since hands draw over edges, and glare is left out: see body.
//
// A camera is no colorimeter, and one card evens out the light, not the camera's own
// way with colours. On made photos in light near daylight the colours come back to
// within 0.3 to 0.8 CIEDE2000 in the middle and 1.3 nine times in ten. Other light costs
// more: at 4000 K 1.0 and 2.9 by a plain camera set to daylight, under illuminant A
// 2.2 and 6.4, under an office lamp (F11) 2.5 and 5.7. A camera that is set to
// a warm lamp hides it from the card and does no better: under A 4.6 and 8.7 if
// it has one matrix for all light, and nothing warns of it. What a real camera does to
// contrast comes on top.
// Two swatches of one photo compare better than a swatch with a colour from elsewhere.
//
// It is an error if a rectangle is empty or leaves the photo, if the card's known
// colour is too dark to go by, and if the card is black or clipped in the photo.
func (p *Photo) Swatches(card Card, spots []Spot) ([]Swatch, CardReading, error) {
	if err := p.checkSpots(card, spots); err != nil {
		return nil, CardReading{}, err
	}
	img, err := p.decode()
	if err != nil {
		return nil, CardReading{}, err
	}
	open, err := p.sampleReader(img)
	if err != nil {
		return nil, CardReading{}, p.sentence(err)
	}
	lamp, reading, err := p.readCard(card, open(card.Rect))
	if err != nil {
		return nil, CardReading{}, err
	}
	switch img.(type) {
	case *image.Gray, *image.Gray16:
		reading.Warnings = append(reading.Warnings, "The photo is in gray, so only lightness can be read from it: save it in colour.")
		reading.Useless = append(reading.Useless, "Photograph it again in colour: the photo is in gray.")
	}
	swatches := make([]Swatch, len(spots))
	for i, s := range spots {
		if swatches[i], err = p.readSwatch(s, open(s.Rect), lamp, card); err != nil {
			return nil, CardReading{}, err
		}
	}
	return swatches, reading, nil
}

// checkSpots refuses what cannot be read, before the photo is decoded.
func (p *Photo) checkSpots(card Card, spots []Spot) error {
	whole := image.Rect(0, 0, p.Width, p.Height)
	if card.Rect.Empty() || !card.Rect.In(whole) {
		return p.errorf("the card's rectangle %v is empty or leaves the photo, which has %d × %d pixels; draw it on the card", card.Rect, p.Width, p.Height)
	}
	for _, s := range spots {
		if s.Rect.Empty() || !s.Rect.In(whole) {
			return p.errorf("the rectangle %v of swatch %q is empty or leaves the photo, which has %d × %d pixels; draw it on the paint", s.Rect, s.Name, p.Width, p.Height)
		}
	}
	known := linearOf(card.Lab)
	if !(min(known[0], known[1], known[2]) >= darkestCard && card.Lab.L <= 100) {
		return p.errorf("the card's known colour, L* %.1f a* %.1f b* %.1f, cannot be gone by; use a gray card (L* 49.5) or a white one", card.Lab.L, card.Lab.A, card.Lab.B)
	}
	return nil
}

// darkestCard is the least linear light of a card's known colour in each channel.
// Ours: L* 18; a black card tells nothing of the light.
const darkestCard = 0.025

// readSwatch reads one swatch in a light that is known.
func (p *Photo) readSwatch(s Spot, c sample, lamp lamp, card Card) (Swatch, error) {
	if len(c.pixels) == 0 {
		return Swatch{}, p.errorf("swatch %q is transparent in the photo, so there is no paint to read; draw it elsewhere", s.Name)
	}
	far := lamp.even(c)
	b := bodyOf(c.pixels)
	w := Swatch{Name: s.Name, Lab: b.lab(), Pixels: len(b.pixels)}
	w.Spread, _ = b.spread(c.rect)
	w.Warnings = append(b.warn("swatch", c.rect), warnPlace(s, card, far)...)
	w.Useless = w.useless(&b, s, c, card)
	return w, nil
}
