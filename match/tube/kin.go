// Whether a tube can be of the paint that it was fitted as.

package tube

import (
	"fmt"
	"math"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// How far a tube of a paint may be from the typical one: CIEDE2000 thick and in white,
// and times its scattering. Ours. Thick more is let pass, since the hue of a paint that
// is nearly black turns easily. 3,350 tubes made of the library's paints with standard
// deviations of 30 % and 6 nm came to 17 and 13 at most; light and deep cadmium red lie
// 14 and 9 apart; a phthalo green of another optics 23 and 6 (fit_test.go). Of the
// library's 4,032 offers of one paint as another, 370 pass: near relations.
const (
	mostThick   = 25
	mostInWhite = 13
	mostScatter = 5
)

// unlike returns why the tube is hardly of the paint that it was fitted as, as a part
// of a sentence about it; "" if it may well be.
func (f *Fitted) unlike() string {
	var why []string
	if f.MasstoneAway > mostThick || f.TintAway > mostInWhite {
		why = append(why, fmt.Sprintf("is %.0f CIEDE2000 from the typical tube thick and %.0f in white", f.MasstoneAway, f.TintAway))
	}
	if f.Scatter > mostScatter || f.Scatter < 1./mostScatter {
		why = append(why, fmt.Sprintf("throws back %.2g times the light", f.Scatter))
	}
	return strings.Join(why, " and ")
}

// nearest returns the library paint that the tube is most like, thick and in white
// together; of equals the first.
func (f *Fitted) nearest(white paint.Paint) paint.Paint {
	var near paint.Paint
	least := math.Inf(1)
	for _, p := range paint.Library() {
		away := round2(colour.DeltaE00(f.Masstone, p.Masstone()) + colour.DeltaE00(f.Tint, p.Tint(white)))
		if away < least {
			near, least = p, away
		}
	}
	return near
}

// scatterOf returns how many times as much a paint scatters as another, in the
// geometric mean over the bands.
func scatterOf(own, like paint.Paint) float64 {
	sum := 0.0
	for b := range own.S {
		sum += math.Log(own.S[b]/like.S[b]) / colour.Bands
	}
	return math.Exp(sum)
}
