package answer

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"tonewright/analyze"
	"tonewright/match/paint"
	"tonewright/match/tube"
	"tonewright/report/plan"
)

// fitPhoto fits a tube to painted swatches in a photo.
func fitPhoto(opt TubeOptions, like, named paint.Paint, data []byte) (*OwnTube, error) {
	photo, err := analyze.Open(opt.File, analyze.Limits{})
	if err != nil {
		return nil, noPhoto(err, data)
	}
	white, surface, err := photoOnly(opt)
	if err != nil {
		return nil, plan.Misused(err)
	}
	card, spots, ratios, err := spotsOf(opt, photo)
	if err != nil {
		return nil, plan.Misused(err)
	}
	read, light, err := photo.Swatches(card, spots)
	if err != nil {
		return nil, err
	}
	seen := tube.Painted{Masstone: tube.Swatch{Lab: read[0].Lab, Spread: read[0].Spread}, Surface: surface}
	for i, r := range read[1:] {
		seen.Tints = append(seen.Tints, tube.TintSwatch{Paint: ratios[i][0], White: ratios[i][1], Swatch: tube.Swatch{Lab: r.Lab, Spread: r.Spread}})
	}
	f, err := tube.FitSwatches(like, white, seen)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", opt.File, err)
	}
	a := answerOf(opt, like, named, sourceOf(spots), f)
	a.Warnings = append(append(a.Warnings, photo.Warnings...), light.Warnings...)
	for _, r := range read {
		for _, warning := range r.Warnings {
			a.Warnings = append(a.Warnings, r.Name+": "+warning)
		}
	}
	return a, nil
}

// noPhoto adds to why a file cannot be read as a photo that it is no text either, where
// it does not begin as a photo does.
func noPhoto(err error, data []byte) error {
	if bytes.HasPrefix(data, []byte(jpegMark)) || bytes.HasPrefix(data, []byte(pngMark)) {
		return err
	}
	return fmt.Errorf("%w; nor is it text, as spectra are", err)
}

// photoOnly checks what only a photo has or lacks, and returns the white and the
// swatches' surface.
func photoOnly(opt TubeOptions) (white paint.Paint, surface paint.Finish, err error) {
	switch {
	case opt.Card == "":
		return white, surface, fmt.Errorf("%s is a photo, which needs a gray or white card in it: --card x,y,w,h", opt.File)
	case opt.Masstone == "":
		return white, surface, fmt.Errorf("%s is a photo; say where the paint alone is: --masstone x,y,w,h", opt.File)
	case len(opt.Tints) == 0:
		return white, surface, fmt.Errorf("a masstone alone cannot tell a strong paint from one that scatters little; paint a tint too and say where it is: --tint x,y,w,h=1:4")
	case len(opt.OverBlack)+len(opt.OverWhite) > 0 || opt.BareBlack+opt.BareWhite+opt.Shine != "":
		return white, surface, fmt.Errorf("films (--over-black, --over-white, --bare-black, --bare-white) and --shine are for spectra; leave them out for a photo")
	case opt.Anyway:
		return white, surface, fmt.Errorf("--anyway is for spectra; from a photo a tube is never fitted far from the typical one, so leave it out")
	}
	if white, err = whiteNamed(opt.White); err != nil {
		return white, surface, fmt.Errorf("--white: %w", err)
	}
	if opt.Finish != "" {
		if surface, err = paint.ParseFinish(opt.Finish); err != nil {
			return white, surface, fmt.Errorf("--finish: %w", err)
		}
	}
	return white, surface, nil
}

// spotsOf returns the card, where masstone and tints lie, and the tints' parts.
func spotsOf(opt TubeOptions, photo *analyze.Photo) (card analyze.Card, spots []analyze.Spot, ratios [][2]float64, err error) {
	if card.Lab, err = cardColour(opt.CardIs); err != nil {
		return card, nil, nil, fmt.Errorf("--card-is: %w", err)
	}
	if card.Rect, err = analyze.ParseRect(opt.Card, photo.Width, photo.Height); err != nil {
		return card, nil, nil, fmt.Errorf("--card: %w", err)
	}
	r, err := analyze.ParseRect(opt.Masstone, photo.Width, photo.Height)
	if err != nil {
		return card, nil, nil, fmt.Errorf("--masstone: %w", err)
	}
	spots = append(spots, analyze.Spot{Name: "masstone", Rect: r})
	for _, text := range opt.Tints {
		spot, ratio, err := tintSpot(text, photo)
		if err != nil {
			return card, nil, nil, err
		}
		if slices.ContainsFunc(spots, func(s analyze.Spot) bool { return s.Rect == spot.Rect }) {
			return card, nil, nil, fmt.Errorf("--tint %q: this place is given twice; each swatch is wanted once", text)
		}
		spots, ratios = append(spots, spot), append(ratios, ratio)
	}
	return card, spots, ratios, nil
}

// tintSpot reads where a tint lies and its parts, 1:4 where they are not said.
func tintSpot(text string, photo *analyze.Photo) (spot analyze.Spot, ratio [2]float64, err error) {
	rect, parts, err := cutTint(text)
	if err != nil {
		return spot, ratio, err
	}
	if parts == "" {
		parts = "1:4"
	}
	if ratio[0], ratio[1], err = parseRatio(parts); err != nil {
		return spot, ratio, fmt.Errorf("--tint: %w", err)
	}
	spot.Name = "tint " + parts
	if spot.Rect, err = analyze.ParseRect(rect, photo.Width, photo.Height); err != nil {
		err = fmt.Errorf("--tint: %w", err)
	}
	return spot, ratio, err
}

// sourceOf says which swatches a tube was fitted to.
func sourceOf(spots []analyze.Spot) string {
	names := make([]string, len(spots))
	for i, s := range spots {
		names[i] = s.Name
	}
	return "photographed swatches: " + strings.Join(names, ", ")
}
