package answer

import (
	"fmt"
	"strings"

	"tonewright/analyze"
	"tonewright/match/paint"
	"tonewright/match/tube"
	"tonewright/report/plan"
)

// fitPhoto fits a tube to painted swatches in a photo.
func fitPhoto(opt TubeOptions, like, named paint.Paint, _ []byte) (*OwnTube, error) {
	white, err := photoOnly(opt)
	if err != nil {
		return nil, plan.Misused(err)
	}
	photo, err := analyze.Open(opt.File, analyze.Limits{})
	if err != nil {
		return nil, err
	}
	card, spots, ratios, err := spotsOf(opt, photo)
	if err != nil {
		return nil, plan.Misused(err)
	}
	read, light, err := photo.Swatches(card, spots)
	if err != nil {
		return nil, err
	}
	seen := tube.Painted{Masstone: tube.Swatch{Lab: read[0].Lab, Spread: read[0].Spread}, Surface: opt.Finish}
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

// photoOnly checks what needs no photo yet, and returns the white.
func photoOnly(opt TubeOptions) (white paint.Paint, err error) {
	switch {
	case opt.Card == "":
		return white, fmt.Errorf("%s is a photo, which needs a gray or white card in it: --card x,y,w,h", opt.File)
	case opt.Masstone == "":
		return white, fmt.Errorf("%s is a photo; say where the paint alone is: --masstone x,y,w,h", opt.File)
	case len(opt.Tints) == 0:
		return white, fmt.Errorf("a masstone alone cannot tell a strong paint from one that scatters little; paint a tint too and say where it is: --tint x,y,w,h=1:4")
	case len(opt.OverBlack)+len(opt.OverWhite) > 0 || opt.BareBlack+opt.BareWhite+opt.Shine != "":
		return white, fmt.Errorf("films (--over-black, --over-white, --bare-black, --bare-white) and --shine are for spectra; leave them out for a photo")
	case opt.Anyway:
		return white, fmt.Errorf("--anyway is for spectra; from a photo a tube is never fitted far from the typical one, so leave it out")
	}
	if white, err = whiteNamed(opt.White); err != nil {
		return white, fmt.Errorf("--white: %w", err)
	}
	return white, nil
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
		rect, ratio := cutRatio(text)
		if ratio == "" {
			ratio = "1:4"
		}
		part, white, err := parseRatio(ratio)
		if err != nil {
			return card, nil, nil, fmt.Errorf("--tint: %w", err)
		}
		r, err := analyze.ParseRect(rect, photo.Width, photo.Height)
		if err != nil {
			return card, nil, nil, fmt.Errorf("--tint: %w", err)
		}
		spots, ratios = append(spots, analyze.Spot{Name: "tint " + ratio, Rect: r}), append(ratios, [2]float64{part, white})
	}
	return card, spots, ratios, nil
}

// sourceOf says which swatches a tube was fitted to.
func sourceOf(spots []analyze.Spot) string {
	names := make([]string, len(spots))
	for i, s := range spots {
		names[i] = s.Name
	}
	return "photographed swatches: " + strings.Join(names, ", ")
}
