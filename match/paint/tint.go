// What a paint does in white, and how it hides.

package paint

import "tonewright/analyze/colour"

// TintParts is the parts of white to one of the paint in a tint. Common practice, no
// source: makers' charts show tints of about this strength.
const TintParts = 4

// Tint returns the colour of one part of the paint in TintParts of a white by volume,
// thick and glossy.
func (p Paint) Tint(white Paint) colour.Lab {
	k, s := Mix([]Paint{p, white}, []float64{1, TintParts})
	r := Thick(&k, &s, Gloss)
	return r.Lab()
}

// whiteL is the L* of the masstone from which a white is white: unbleached titanium is
// a buff. Ours; the library's whites lie at 95 and over, the buff at 83.
const whiteL = 90

// TintingWhite returns the white that tints are made with: of the owned whites the
// lightest, else titanium white.
func TintingWhite(owned []Paint) Paint {
	if white := OwnWhite(owned); white != nil {
		return *white
	}
	return library()[0]
}

// OwnWhite returns the lightest of the owned whites, nil where none is light enough to
// make tints with.
func OwnWhite(owned []Paint) (white *Paint) {
	lightest := float64(whiteL)
	for i := range owned {
		if l := owned[i].Masstone().L; owned[i].White() && l > lightest {
			white, lightest = &owned[i], l
		}
	}
	return white
}
