// Rules that waiting does not mend: of film, medium and paint in one coat.

package layer

import (
	"fmt"
	"math"
	"slices"

	"tonewright/match/paint"
)

// thickest is the thickest film that dries without wrinkling where half of it is oil, µm
// wet, without solvent; the fatter, the less, down to none of oil alone. Ours, by common
// practice: impasto of a stiff paint is 0.5 mm and more, while oil that has run together
// wrinkles at a tenth of that.
const thickest = 500

// bears returns the thickest film of this coat that dries without wrinkling, µm wet and
// without solvent, in whole tens, at least 10.
func (c Coat) bears() float64 {
	if c.Medium.Kind == Alkyd { // runs together as oil does
		c.Medium.Kind = Linseed
	}
	oil := Oil(c)
	lean := min((1-(oil.From+oil.To)/2)/0.5, 1)
	return max(math.Floor(thickest*lean/10+1e-9), 1) * 10
}

// filmTie is less than anyone can lay, µm: a film at the bound is not over it.
const filmTie = 1e-3

// tooThick: a film that is thick for its oil skins over.
func tooThick(s judged, above int) (Fault, bool) {
	c := s.stack[above]
	most := c.bears()
	if c.left() <= most+filmTie {
		return Fault{}, false
	}
	film := most * c.Film / c.left()
	return Fault{
		Rule: TooThick, Below: above, Source: practice,
		Reason: fmt.Sprintf("%s is so thick for the oil it holds that it skins over: the skin wrinkles, and beneath it the paint stays soft for months.", c.Name),
		Mend:   fmt.Sprintf("Lay %s in coats of at most %.0f µm, each dry before the next.", c.Name, film),
		Change: Change{Coat: above, Film: film},
	}, true
}

// mostAdded is how thick a layer the oil or alkyd stirred into a coat may come to, µm.
// Ours, for what painters say of both: an ordinary coat of 100 µm bears a part to 3, and a
// glaze of 25 µm nearly anything.
const mostAdded = 25

// mostSolvent is how much solvent to one of paint leaves oil enough to bind it. Common
// practice, no source.
const mostSolvent = 1

// mostParts returns the most of its medium, to one of paint, that a coat bears, as parts
// a painter can measure.
func (c Coat) mostParts() float64 {
	if c.Medium.Kind == Solvent {
		return mostSolvent
	}
	if c.Film <= mostAdded*(1+1./mostMedium) {
		return mostMedium
	}
	most := mostAdded / (c.Film - mostAdded)
	if most >= 1 {
		return math.Floor(most + 1e-9)
	}
	return 1 / math.Ceil(1/most-1e-9)
}

// tooMuchMedium: a film wants enough pigment, or enough binder.
func tooMuchMedium(s judged, above int) (Fault, bool) {
	c := s.stack[above]
	if c.Medium.none() || c.Medium.Parts <= c.mostParts()*(1+1e-9) {
		return Fault{}, false
	}
	most := Medium{c.Medium.Kind, c.mostParts()}
	reason := fmt.Sprintf("%s holds so much %s that its film stays soft, wrinkles and yellows.", c.Name, c.Medium.Kind)
	if c.Medium.Kind == Solvent {
		reason = fmt.Sprintf("%s is thinned so far that too little oil is left to bind it: it sinks in and rubs off.", c.Name)
	}
	return Fault{
		Rule: TooMuchMedium, Below: above, Source: practice, Reason: reason,
		Mend:   fmt.Sprintf("Take at most %s in %s.", most, c.Name),
		Change: Change{Coat: above, Medium: &most},
	}, true
}

// zincMost is the share of zinc white that a coat beneath others bears. Ours: [Rogala2010]
// and the like warn of it in any underlayer and give no harmless share; a part in ten is
// what a touch-up of a mix brings.
const zincMost = 0.1

// zincBeneath: zinc white turns brittle and lets go of what lies over it. What is blended
// into it wet lies in its film and not over it.
func zincBeneath(s judged, above int) (Fault, bool) {
	if above == 0 {
		return Fault{}, false
	}
	for below := above - 1; below >= s.bottom(above-1); below-- {
		c := s.stack[below]
		for i, share := range c.shares() {
			if p := c.Paints[i]; slices.Contains(p.CI, "PW4") && share > zincMost+1e-9 {
				return s.zinc(below, above, p), true
			}
		}
	}
	return Fault{}, false
}

// zincSource is [PaintDamage] and [Rogala2010] in words.
const zincSource = "Modern Paint Damage Atlas, Cultural Heritage Agency of the Netherlands, and Rogala and others 2010, Journal of the American Institute for Conservation 49(2)"

// zinc is the fault of a zinc white beneath.
func (s judged) zinc(below, above int, white paint.Paint) Fault {
	upper, lower := s.stack[above].Name, s.stack[below].Name
	return Fault{
		Rule: ZincBeneath, Below: below, Source: zincSource,
		Reason: fmt.Sprintf("The zinc white in %s turns brittle within years and grows soaps: it cracks, and %s comes off it.", lower, upper),
		Mend:   fmt.Sprintf("Take titanium white in place of %s in %s, or keep zinc white for the last coat.", white.Name, lower),
		Change: Change{Coat: below, Swap: Swap{white.ID, "titanium-white"}},
	}
}
