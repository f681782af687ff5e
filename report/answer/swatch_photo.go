package answer

import (
	"fmt"
	"image"
	"slices"
	"strings"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/report/plan"
)

// reading is what a photo says of a swatch.
type reading struct {
	swatch   analyze.Swatch
	warnings []string // of the photo, the card and the swatch
	useless  []string // why it is not to be gone by; none where it may
}

// measure reads the swatch from the photo.
func measure(opt SwatchOptions) (r reading, err error) {
	card, err := cardColour(opt.CardIs)
	if err != nil {
		return r, plan.Misused(fmt.Errorf("--card-is: %w", err))
	}
	photo, err := analyze.Open(opt.Photo, analyze.Limits{})
	if err != nil {
		return r, err
	}
	places := [2]image.Rectangle{}
	for i, flag := range []struct{ name, text string }{{"card", opt.Card}, {"swatch", opt.Spot}} {
		if places[i], err = analyze.ParseRect(flag.text, photo.Width, photo.Height); err != nil {
			return r, plan.Misused(fmt.Errorf("--%s: %w", flag.name, err))
		}
	}
	read, of, err := photo.Swatches(analyze.Card{Rect: places[0], Lab: card}, []analyze.Spot{{Name: "swatch", Rect: places[1]}})
	if err != nil {
		return r, err
	}
	r.swatch = read[0]
	r.warnings = slices.Concat(photo.Warnings, of.Warnings, r.swatch.Warnings)
	r.useless = slices.Concat(r.swatch.Useless, of.Useless)
	return r, nil
}

// Lightness of the usual cards. Common practice, no source: a gray card gives back
// 18 % of the light; a white one is as its maker says, about L* 96.
const (
	grayCard  = 49.5
	whiteCard = 96
)

// cardColour reads what a card is.
func cardColour(text string) (colour.Lab, error) {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "", "gray", "grey":
		return colour.Lab{L: grayCard}, nil
	case "white":
		return colour.Lab{L: whiteCard}, nil
	}
	c, err := colour.Parse(text)
	if err != nil {
		return c, fmt.Errorf("write gray, white, or the card's own colour: %w", err)
	}
	return c, nil
}
