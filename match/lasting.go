// A lasting paint to take in place of one that fades.

package match

import (
	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// MostUnlike is the CIEDE2000 up to which a lasting paint is offered in place of a weak
// one. Ours: of the library's paints, those that the trade sells as permanent alizarin,
// quinacridone crimson and rose, lie 8.0 and 14.5 from alizarin; from 16.7 on the nearest
// to dioxazine violet is Prussian blue.
const MostUnlike = 15

// Stead is a paint to take in place of another.
type Stead struct {
	Paint  int     // index
	DeltaE float64 // CIEDE2000, as it comes or as a tint in white, the farther; to a tenth
}

// LastingLike returns which of some paints of lightfastness I is most like a weak one,
// white and black aside: of a hue that meets its own, within MostUnlike. Where clear is
// asked for, it is one that Glazes. ok is false where
// there is none. Of equals the first.
func LastingLike(weak paint.Paint, among []paint.Paint, clear bool) (best Stead, ok bool) {
	white := paint.TintingWhite(nil)
	hue := strongest(&weak).Hue
	for i := range among {
		p := &among[i]
		if p.Facts.LightClass() != 1 || p.White() || p.Black() || clear && !Glazes(*p) {
			continue
		}
		apart := max(colour.DeltaE00(weak.Masstone(), p.Masstone()), colour.DeltaE00(weak.Tint(white), p.Tint(white)))
		s := Stead{i, tenth(apart)}
		if s.DeltaE <= MostUnlike && (!ok || s.DeltaE < best.DeltaE) && colour.HuesApart(hue, strongest(p).Hue) <= meets {
			best, ok = s, true
		}
	}
	return best, ok
}
