package colour

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// The ends of what is read as a colour. Chroma runs a little past the last ring
// of the renotation's planes, and a* and b* past any colour that sRGB or paint has.
const (
	maxChroma  = 50
	maxRedBlue = 150 // of |a*| and |b*|
)

// forms says how a colour may be written, for the errors.
const forms = "write it as #rrggbb, lab(52, 18, 30), or Munsell such as 5YR 6/8 or N 5"

// digits is a plain decimal number without a sign, as the forms below are made of.
const digits = `([0-9]+\.?[0-9]*|\.[0-9]+)`

var (
	labForm     = regexp.MustCompile(`(?i)^lab\(\s*([-+]?` + digits + `)(?:\s*,\s*|\s+)([-+]?` + digits + `)(?:\s*,\s*|\s+)([-+]?` + digits + `)\s*\)$`)
	chromaForm  = regexp.MustCompile(`(?i)^` + digits + `\s*([A-Z]+)\s*` + digits + `\s*/\s*` + digits + `$`)
	neutralForm = regexp.MustCompile(`(?i)^N\s*` + digits + `\s*/?$`)
)

// Parse returns the colour written as #rrggbb or #rgb, as lab(L, a, b) with
// commas or spaces, L in 0-100 and a, b in -150 to 150, or in Munsell notation,
// see ParseMunsell. Large and small letters are alike.
// It is an error to write it otherwise or to go past those ends.
func Parse(text string) (Lab, error) {
	s := strings.TrimSpace(text)
	switch {
	case strings.HasPrefix(s, "#"):
		c, err := ParseHex(s)
		if err != nil {
			return Lab{}, fmt.Errorf("colour %q: not a hex colour; %s", text, forms)
		}
		return c, nil
	case len(s) >= 3 && strings.EqualFold(s[:3], "lab"):
		return parseLab(s)
	}
	m, err := ParseMunsell(s)
	return m.Lab(), err
}

// parseLab returns the colour written as lab(L, a, b).
func parseLab(text string) (Lab, error) {
	f := labForm.FindStringSubmatch(text)
	if f == nil {
		return Lab{}, fmt.Errorf("colour %q: not a colour; %s", text, forms)
	}
	c := Lab{toNumber(f[1]), toNumber(f[3]), toNumber(f[5])}
	if !(c.L >= 0 && c.L <= 100 && math.Abs(c.A) <= maxRedBlue && math.Abs(c.B) <= maxRedBlue) {
		return Lab{}, fmt.Errorf("colour %q: out of range; L runs from 0 to 100, a and b from -%d to %d", text, maxRedBlue, maxRedBlue)
	}
	return c, nil
}

// ParseMunsell returns the notation written as hue, value/chroma, "5.2YR 6.1/8.3",
// or as a neutral, "N 6.1" or "N6/"; spaces may be left out and letters may be
// small. The step of hue runs from 0 to 10, 0 being 10 of the family before;
// value from 0 to 10, chroma from 0 to 50.
// It is an error to write it otherwise or to go past those ends.
// Source: [ASTMD1535] for the notation.
func ParseMunsell(text string) (Munsell, error) {
	s := strings.TrimSpace(text)
	if f := neutralForm.FindStringSubmatch(s); f != nil {
		return ranged(text, 0, Munsell{Value: toNumber(f[1])})
	}
	if f := chromaForm.FindStringSubmatch(s); f != nil {
		if i := hueFamily(f[2]); i >= 0 {
			step := toNumber(f[1])
			return ranged(text, step, Munsell{wrap(step+float64(10*i), 100), toNumber(f[3]), toNumber(f[4])})
		}
		return Munsell{}, fmt.Errorf("colour %q: no such hue as %s; the hues are %s",
			text, strings.ToUpper(f[2]), strings.Join(hueFamilies[:], ", "))
	}
	return Munsell{}, fmt.Errorf("colour %q: not a colour; %s", text, forms)
}

// ranged returns m, or an error if it or its step of hue runs past the ends.
func ranged(text string, step float64, m Munsell) (Munsell, error) {
	switch {
	case step > 10:
		return Munsell{}, fmt.Errorf("colour %q: hue out of range; the step before the letters runs from 0 to 10", text)
	case m.Value > 10:
		return Munsell{}, fmt.Errorf("colour %q: value out of range; it runs from 0, black, to 10, white", text)
	case m.Chroma > maxChroma:
		return Munsell{}, fmt.Errorf("colour %q: chroma out of range; it runs from 0 to %d", text, maxChroma)
	}
	return m, nil
}

// toNumber returns the value of a plain decimal number; one too large is infinite.
func toNumber(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64) // the form has been checked: only the range can be wrong
	return v
}
