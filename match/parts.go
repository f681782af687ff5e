// The parts that a palette knife can do.

package match

// A touch is a share of 1 in 32 of the whole pile: what the tip of the knife
// brings of a strong tinter.
const touchShare = 1.0 / 32

// mostParts is the default of Options.MaxParts. Ours: on 100 aims and 24 paints,
// TestWhatPartsBuy, the nearest mixes miss by a mean of 2.31 CIEDE2000 with whole
// parts up to 12 in all, by 2.10 with touches beside them, and by 1.78 with parts
// from 1, 2, 3, 5, 8, 12, 20, 30. What the long parts still buy, 0.3, is under what
// is seen side by side, and nobody measures 30 to 12 to 1; a touch gives two fifths
// of it.
const mostParts = 12

// A level is how much of one paint goes into a pile: 0 is none, 1 to most are
// whole parts, and the levels after them are touches, whose size follows from
// the whole parts beside them, since a touch is a share of the whole.
type level uint8

// levels is the scale of levels for a number of parts.
type levels struct{ most level }

func (l levels) count() int { return 2*int(l.most) + 2 }

// touch is the level of a touch beside so many whole parts.
func (l levels) touch(wholes level) level { return l.most + wholes }

// twin is the level of each of two touches beside one whole part.
func (l levels) twin() level { return 2*l.most + 1 }

func (l levels) isTouch(v level) bool { return v > l.most }

// parts returns the amount of a level in parts: the share of a paint is its parts
// over the sum of all.
// One touch t beside n whole parts: t/(n + t) = 1/32, so t = n/31.
// Two beside one whole part: t/(1 + 2t) = 1/32, so t = 1/30.
func (l levels) parts(v level) float64 {
	switch {
	case v == l.twin():
		return touchShare / (1 - 2*touchShare)
	case l.isTouch(v):
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
		if l.isTouch(v) {
			effort += touchEffort
		} else {
			effort += int(v)
		}
	}
	return effort
}

// pairs returns the measures of two paints. A paint may come as a touch where
// its strong is true. No two measures have the same shares.
func (l levels) pairs(strong [2]bool) (all []measure) {
	for a := level(1); a < l.most; a++ {
		for b := level(1); a+b <= l.most; b++ {
			if coprime(a, b) {
				all = append(all, measure{a, b})
			}
		}
	}
	if strong[0] {
		all = append(all, measure{l.touch(1), 1})
	}
	if strong[1] {
		all = append(all, measure{1, l.touch(1)})
	}
	return all
}

// triples returns the measures of three paints: whole parts of all, a touch of
// one beside whole parts of two, and touches of two beside the third.
func (l levels) triples(strong [3]bool) (all []measure) {
	for a := level(1); a < l.most; a++ {
		for b := level(1); a+b <= l.most; b++ {
			for c := level(1); a+b+c <= l.most; c++ {
				if coprime(gcd(a, b), c) {
					all = append(all, measure{a, b, c})
				}
			}
			if coprime(a, b) {
				all = append(all, l.withTouch(a, b, strong)...)
			}
		}
	}
	return append(all, l.withTwoTouches(strong)...)
}

func (l levels) withTouch(a, b level, strong [3]bool) (all []measure) {
	touch := l.touch(a + b)
	if strong[0] {
		all = append(all, measure{touch, a, b})
	}
	if strong[1] {
		all = append(all, measure{a, touch, b})
	}
	if strong[2] {
		all = append(all, measure{a, b, touch})
	}
	return all
}

func (l levels) withTwoTouches(strong [3]bool) (all []measure) {
	for whole := range 3 {
		m := measure{l.twin(), l.twin(), l.twin()}
		m[whole] = 1
		if strong[(whole+1)%3] && strong[(whole+2)%3] {
			all = append(all, m)
		}
	}
	return all
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
// three paints of which the same are strong.
type program struct {
	bases []measure
	steps [2][]step // without and with touches of the third paint
}

type step struct {
	base int32
	more level
}

// newPrograms returns the programs by whether the first and second paint are strong.
func newPrograms(l levels) (programs [2][2]program) {
	for i := range 2 {
		for j := range 2 {
			programs[i][j] = newProgram(l, i == 1, j == 1)
		}
	}
	return programs
}

func newProgram(l levels, first, second bool) (p program) {
	place := map[measure]int32{}
	for k := range 2 {
		for _, m := range l.triples([3]bool{first, second, k == 1}) {
			base := measure{m[0], m[1]}
			if _, known := place[base]; !known {
				place[base] = int32(len(p.bases))
				p.bases = append(p.bases, base)
			}
			p.steps[k] = append(p.steps[k], step{place[base], m[2]})
		}
	}
	return p
}

func oneIf(yes bool) int {
	if yes {
		return 1
	}
	return 0
}
