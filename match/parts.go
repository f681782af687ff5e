// The parts that a palette knife can do.

package match

// A touch is a share of 1 in 32 of the whole pile: what the tip of the knife
// brings. A speck is a quarter of that, 1 in 128: what clings to its corner.
const (
	touchShare = 1.0 / 32
	speckShare = 1.0 / 128
)

// A Measure is how a part is measured.
type Measure string

const (
	Knife Measure = ""      // whole parts, by the blade
	Touch Measure = "touch" // by the tip: 1 in 32 of the pile
	Speck Measure = "speck" // by its corner: 1 in 128
)

// mostParts is the default of Options.MaxParts. Ours: on 100 aims and 24 paints,
// TestWhatPartsBuy, the nearest mixes miss by a mean of 2.31 CIEDE2000 with whole
// parts up to 12 in all, by 1.91 with touches and specks beside them, and by 1.78
// with parts from 1, 2, 3, 5, 8, 12, 20, 30. What the long parts still buy is not
// seen, and nobody measures 30 to 12 to 1. The small amounts buy most in pale tints,
// where 12 to 1 is too coarse for a highlight: hence every paint may come as a touch
// beside white, and white alone takes specks. Two touches and two specks of one paint
// in white fill what lies between: without them a light gray of white and black, value
// 8, is missed by 3.0 instead of 1.9. A small box allows more: see fewPaints.
const mostParts = 12

// A level is how much of one paint goes into a pile: 0 is none, 1 to most are
// whole parts, and the levels after them are small amounts, whose size follows
// from what is beside them, since they are shares of the whole.
type level uint8

// levels is the scale of levels for a number of parts.
type levels struct{ most level }

// The small amounts after the touches beside 1 to most whole parts; all of them
// stand beside one whole part.
func (l levels) twinTouch() level  { return 2*l.most + 1 } // each of two touches
func (l levels) loneSpeck() level  { return 2*l.most + 2 }
func (l levels) twinSpeck() level  { return 2*l.most + 3 } // each of two specks
func (l levels) touchMixed() level { return 2*l.most + 4 } // the touch beside a speck
func (l levels) speckMixed() level { return 2*l.most + 5 } // the speck beside a touch

func (l levels) twoTouches() level    { return 2*l.most + 6 } // of one paint, beside one whole part
func (l levels) twoSpecks() level     { return 2*l.most + 7 }
func (l levels) twoSpecksEach() level { return 2*l.most + 8 } // of each of two, beside one whole part

func (l levels) count() int { return 2*int(l.most) + 9 }

// touch is the level of a touch beside so many whole parts.
func (l levels) touch(wholes level) level { return l.most + wholes }

// measure tells how a level is measured, and how many whole parts, touches or specks
// it is.
func (l levels) measure(v level) (Measure, int) {
	switch v {
	case l.twoTouches():
		return Touch, 2
	case l.twoSpecks(), l.twoSpecksEach():
		return Speck, 2
	case l.loneSpeck(), l.twinSpeck(), l.speckMixed():
		return Speck, 1
	}
	if v > l.most {
		return Touch, 1
	}
	return Knife, int(v)
}

// parts returns the amount of a level in parts: the share of a paint is its parts
// over the sum of all. A share s of a pile of which wholes whole parts are the share
// rest is wholes·s/rest parts.
func (l levels) parts(v level) float64 {
	switch v {
	case l.twinTouch():
		return touchShare / (1 - 2*touchShare)
	case l.loneSpeck():
		return speckShare / (1 - speckShare)
	case l.twinSpeck():
		return speckShare / (1 - 2*speckShare)
	case l.twoTouches():
		return 2 * touchShare / (1 - 2*touchShare)
	case l.twoSpecks():
		return 2 * speckShare / (1 - 2*speckShare)
	case l.twoSpecksEach():
		return 2 * speckShare / (1 - 4*speckShare)
	case l.touchMixed():
		return touchShare / (1 - touchShare - speckShare)
	case l.speckMixed():
		return speckShare / (1 - touchShare - speckShare)
	}
	if v > l.most {
		return float64(v-l.most) * touchShare / (1 - touchShare)
	}
	return float64(v)
}

// A measure is the levels of up to three paints, in the order of the box.
type measure [3]level

// touchEffort is how many whole parts a touch counts as when two recipes are
// compared for ease. Ours: it takes more care than measuring up to half a pile.
const touchEffort = 6

// effort is how much measuring a measure asks for.
func (l levels) effort(m measure) (effort int) {
	for _, v := range m {
		measure, count := l.measure(v)
		if measure != Knife {
			count *= touchEffort
		}
		effort += count
	}
	return effort
}

// A kind says what a set of paints allows beside whole parts.
type kind struct {
	touch [3]bool // of which paints a touch is allowed
	white int     // the paint that takes specks, 0-2; -1 for none
	fine  bool    // of a small box, see fewPaints: of two paints either takes specks
}

// fewPaints is the most paints of a box whose kinds are fine.
//
// A box so small is the palette of a region. It has no other paint to fill the gaps
// that its amounts leave: a transparent dark leaps from its masstone to a touch of
// white, and one of two strong tinters to a part in twelve. In a larger box fine kinds
// would slow the search.
//
// Ours: over the two values above the masstone of the library's 43 darks, each with
// white, TestDarksAreLightenedByLittle, values are missed by a mean of 0.05 instead of
// 0.08, and by over a quarter at 15 of 1,763 instead of 143; at worst by 0.32 instead of
// 0.70. What two paints of the starter box and white give by value,
// TestRecipesFollowTheLadder, is missed by 1.2 CIEDE2000 at nine in ten instead of 2.1.
const fewPaints = 4

// kindOf returns what a set allows. A touch is for strong tinters, and in a pile
// with white, which shows the least of anything, for every paint; so it is in a small
// box.
func (s *search) kindOf(of set) kind {
	k := kind{white: -1, fine: s.fine}
	for i := range of.size() {
		k.touch[i] = s.strong[of[i]]
		if s.white[of[i]] && k.white < 0 {
			k.white = i
		}
	}
	if k.white >= 0 || k.fine {
		k.touch = [3]bool{true, true, true}
	}
	return k
}

// pairs returns the measures of two paints. No two measures have the same shares.
func (l levels) pairs(k kind) (all []measure) {
	for a := level(1); a < l.most; a++ {
		for b := level(1); a+b <= l.most; b++ {
			if coprime(a, b) {
				all = append(all, measure{a, b})
			}
		}
	}
	if k.touch[0] {
		all = append(all, measure{l.touch(1), 1}, measure{l.twoTouches(), 1})
	}
	if k.touch[1] {
		all = append(all, measure{1, l.touch(1)}, measure{1, l.twoTouches()})
	}
	if k.white == 0 || k.fine {
		all = append(all, measure{1, l.loneSpeck()}, measure{1, l.twoSpecks()})
	}
	if k.white == 1 || k.fine {
		all = append(all, measure{l.loneSpeck(), 1}, measure{l.twoSpecks(), 1})
	}
	return all
}

// triples returns the measures of three paints: whole parts of all, a touch of
// one beside whole parts of two, small amounts of two beside the third.
func (l levels) triples(k kind) (all []measure) {
	for a := level(1); a < l.most; a++ {
		for b := level(1); a+b <= l.most; b++ {
			for c := level(1); a+b+c <= l.most; c++ {
				if coprime(gcd(a, b), c) {
					all = append(all, measure{a, b, c})
				}
			}
			if coprime(a, b) {
				all = append(all, l.withTouch(a, b, k.touch)...)
			}
		}
	}
	return append(append(all, l.withTwoTouches(k.touch)...), l.withSpecks(k.white)...)
}

func (l levels) withTouch(a, b level, of [3]bool) (all []measure) {
	touch := l.touch(a + b)
	if of[0] {
		all = append(all, measure{touch, a, b})
	}
	if of[1] {
		all = append(all, measure{a, touch, b})
	}
	if of[2] {
		all = append(all, measure{a, b, touch})
	}
	return all
}

func (l levels) withTwoTouches(of [3]bool) (all []measure) {
	for whole := range 3 {
		if of[(whole+1)%3] && of[(whole+2)%3] {
			all = append(all, wholeOf(whole, l.twinTouch(), l.twinTouch()))
		}
	}
	return all
}

func (l levels) withSpecks(white int) []measure {
	if white < 0 {
		return nil
	}
	return []measure{
		wholeOf(white, l.twinSpeck(), l.twinSpeck()),
		wholeOf(white, l.twoSpecksEach(), l.twoSpecksEach()),
		wholeOf(white, l.touchMixed(), l.speckMixed()),
		wholeOf(white, l.speckMixed(), l.touchMixed()),
	}
}

// wholeOf puts one whole part of one paint beside the amounts of the two others.
func wholeOf(whole int, one, other level) (m measure) {
	m[whole], m[(whole+1)%3], m[(whole+2)%3] = 1, one, other
	return m
}

func coprime(a, b level) bool { return gcd(a, b) == 1 }

func gcd(a, b level) level {
	for b > 0 {
		a, b = b, a%b
	}
	return a
}

// A program is the order in which the measures of three paints are made: each is
// a base of the first two and an amount of the third. It is the same for every
// three paints of a kind.
type program struct {
	all   []measure
	bases []measure
	steps []step
}

type step struct {
	base int32
	more level
}

func newProgram(l levels, k kind) *program {
	p, place := &program{all: l.triples(k)}, map[measure]int32{}
	for _, m := range p.all {
		base := measure{m[0], m[1]}
		if _, known := place[base]; !known {
			place[base] = int32(len(p.bases))
			p.bases = append(p.bases, base)
		}
		p.steps = append(p.steps, step{place[base], m[2]})
	}
	return p
}
