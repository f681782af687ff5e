// Hues in words, and how far apart two lie on Munsell's circle.

package colour

import (
	"fmt"
	"math"
	"regexp"
	"strings"
)

// hueWords are the everyday words of hueFamilies, in the same order. Ours, after
// what painters call them: violet-blue for what Munsell calls purple-blue, orange
// for yellow-red.
var hueWords = [10]string{"red", "orange", "yellow", "yellow-green", "green", "blue-green", "blue", "violet-blue", "purple", "red-purple"}

// otherHueWords are read as hues too: Munsell's own names of the families that have
// another everyday word, and what found regions are called.
// Source: [ASTMD1535] for Munsell's names.
var otherHueWords = map[string]string{
	"yellow-red": "YR", "green-yellow": "GY", "purple-blue": "PB",
	"brown": "YR", "pink-purple": "RP",
}

// hueForm is a step, which may be left out, and the letters of a family.
var hueForm = regexp.MustCompile(`^` + digits + `?\s*([a-z]+)$`)

// ParseHue returns the hue, on the ASTM scale [0, 100), written as a step and a
// family, "5YR" or "7.5 bg"; as a family, "YR", or its everyday word, "orange" or
// "blue-green", which mean the middle of the family, its step 5. Large and small
// letters are alike, and a space will do for the hyphen.
// It is an error to write it otherwise or to go outside the steps 0-10.
// Source: [ASTMD1535].
func ParseHue(text string) (step float64, err error) {
	s := strings.ToLower(strings.Join(strings.Fields(text), " "))
	if i := hueWord(strings.ReplaceAll(s, " ", "-")); i >= 0 {
		return float64(10*i + 5), nil
	}
	f := hueForm.FindStringSubmatch(s)
	if f == nil || hueFamily(f[2]) < 0 {
		return 0, fmt.Errorf("hue %q: not a hue; write a step and letters, such as 5YR or 7.5 BG, with the letters %s, or one word of %s",
			text, strings.Join(hueFamilies[:], ", "), strings.Join(hueWords[:], ", "))
	}
	step = 5
	if f[1] != "" {
		step = toNumber(f[1])
	}
	if step > 10 {
		return 0, fmt.Errorf("hue %q: out of range; the step before the letters runs from 0 to 10, such as 5YR", text)
	}
	return wrap(step+float64(10*hueFamily(f[2])), 100), nil
}

// hueWord returns the family of a word in small letters, or -1.
func hueWord(word string) int {
	for i, w := range hueWords {
		if w == word {
			return i
		}
	}
	return hueFamily(otherHueWords[word])
}

// hueFamily returns the place of a family by its letters, large or small, or -1.
func hueFamily(letters string) int {
	for i, f := range hueFamilies {
		if strings.EqualFold(f, letters) {
			return i
		}
	}
	return -1
}

// HueName returns the everyday word of the family of a hue on the ASTM scale, see
// hueWords. As in the notation, the end of a family is its step 10: 10 is 10R, red.
func HueName(step float64) string { return hueWords[familyAt(step)] }

// HuesApart returns how many steps lie between two hues on the ASTM scale, the
// shorter way round: 0-50, 50 being opposite.
func HuesApart(a, b float64) float64 {
	d := math.Abs(wrap(a, 100) - wrap(b, 100))
	return min(d, 100-d)
}
