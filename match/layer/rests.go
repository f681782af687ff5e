// How long a coat has to rest before a faster one goes over it.

package layer

import "math"

// drying is a coat with how it dries as it is laid, and as it would were its film an
// ordinary one.
type drying struct {
	Dries
	plain float64 // days to touch dry, the middle, as an ordinary film
	black bool    // it waits for a carbon black, the slowest of paints
}

func dryingOf(c Coat, air Air) drying {
	d := drying{Dries: Drying(c, air)}
	if d.Slowest < 0 {
		return d
	}
	slowest := c.Paints[d.Slowest]
	d.black = slowest.Black() && slowest.Facts.Drying == "very slow"
	c.Film, c.Soaks = thinFilm, false
	if c.Medium.Kind == Solvent { // which does nothing but thin the film
		c.Medium = Medium{}
	}
	d.plain = Drying(c, air).Touch.middle()
	return d
}

// clearly is how many times as long one coat must take for another to dry clearly faster.
// Ours: titanium white over lamp black, which the trade warns of, is at 1.25; a touch of
// umber in one of two like mixes, which it does not, at 1.15.
const clearly = 1.2

// faster tells whether one coat dries clearly faster than another, by the middle.
func (d drying) faster(than drying) bool { return d.Touch.middle()*clearly < than.Touch.middle() }

// rest returns the days a coat has to lie before another may go over it because that one
// dries clearly faster; zero where it does not. By the early end it is dry through.
// Over a carbon black the late end counts for both, and a thin film is held to be as slow as
// its paint: such blacks skin over while they are soft beneath, and no finger tells.
// Source: [Saitzyk1987], none of the carbon blacks under faster paint; that the late end
// is enough is ours.
func (d drying) rest(above drying) Range {
	if d.black && !above.black && above.plain*clearly < d.plain {
		return Range{d.Through.To, d.Through.To}
	}
	if above.faster(d) {
		return d.Through
	}
	return Range{}
}

// longer returns the range that ends later, end by end.
func (r Range) longer(than Range) Range {
	return Range{math.Max(r.From, than.From), math.Max(r.To, than.To)}
}
