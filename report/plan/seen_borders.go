// The borders that others see in the study and the painter's sight hardly does.

package plan

import (
	"math"
	"slices"

	"tonewright/analyze"
	"tonewright/analyze/colour"
)

// How a border is looked at, as shares of the picture's short side. Ours: at 667 pixels a
// pile narrower than 5 pixels between two wider ones is their transition and no side of a
// border; each side is taken from 2 to 6 pixels away; and what hangs together in fewer
// than 20 is a speck. A deutan of severity 1 then has 37 pixels of such borders in pink
// tulips and none in dandelions or a dahlia; pixel against pixel they are 848, 296 and
// 52.
const (
	settledShare = 1.0 / 110
	besideShare  = 1.0 / 330
	speckShare   = 0.03
)

// lostBorders returns of each pixel of the study whether a border runs between it and
// the next or the one below, whose sides are clearly different to full sight and nearly
// alike to the painter's: the limits of look-alikes.
func lostBorders(study *analyze.Picture, colourOf []uint16, sight colour.Sight) []bool {
	w, h := study.Width, study.Height
	share := func(of float64) int { return max(1, int(math.Round(of*float64(min(w, h))))) }
	settled := settledOf(colourOf, w, h, share(settledShare))
	s := sides{study: study, eye: eye{sight: sight}, off: 2 * share(besideShare), half: share(besideShare)}
	lost := make([]bool, w*h)
	inBands(h, func(from, to int) {
		for y := from; y < to; y++ {
			for x := range w {
				i := y*w + x
				lost[i] = x+1 < w && settled[i] != settled[i+1] && s.lost(x, y, 1, 0) ||
					y+1 < h && settled[i] != settled[i+w] && s.lost(x, y, 0, 1)
			}
		}
	})
	dropSpecks(lost, w, h, share(speckShare))
	return lost
}

// sides compares the study on both sides of a border.
type sides struct {
	study     *analyze.Picture
	eye       eye
	off, half int // how far from the border the middle of a side is, and half its breadth
}

// lost tells whether the eye loses the border between a pixel and the one dx and dy on.
func (s *sides) lost(x, y, dx, dy int) bool {
	a, b := s.mean(x-dx*s.off, y-dy*s.off), s.mean(x+dx*(s.off+1), y+dy*(s.off+1))
	if math.Abs(a.A-b.A)+math.Abs(a.B-b.B)+math.Abs(a.L-b.L) < clearlyApart/2 {
		return false // CIEDE2000 is nowhere twice as long, and dear
	}
	first, second := dab{lab: a, seen: s.eye.sight.See(a)}, dab{lab: b, seen: s.eye.sight.See(b)}
	return s.eye.pairOf(0, 1, &first, &second).lost()
}

// mean returns the study's colour about a pixel, as far as that is in the picture.
func (s *sides) mean(x, y int) (mean colour.Lab) {
	x, y = min(max(x, 0), s.study.Width-1), min(max(y, 0), s.study.Height-1)
	n := 0.0
	for v := max(0, y-s.half); v <= min(s.study.Height-1, y+s.half); v++ {
		for u := max(0, x-s.half); u <= min(s.study.Width-1, x+s.half); u++ {
			c := s.study.At(v*s.study.Width + u)
			mean.L, mean.A, mean.B, n = mean.L+c.L, mean.A+c.A, mean.B+c.B, n+1
		}
	}
	return colour.Lab{L: mean.L / n, A: mean.A / n, B: mean.B / n}
}

// settledOf gives each pixel the pile that most about it are of, up to reach pixels away
// along both axes: specks and thin transitions go to the piles beside them.
func settledOf(of []uint16, w, h, reach int) []uint16 {
	settled, piles := make([]uint16, len(of)), int(slices.Max(of))+1
	inBands(h, func(from, to int) {
		for y := from; y < to; y++ {
			top, bottom := max(0, y-reach), min(h-1, y+reach)
			v := votes{of: make([]int, piles), with: make([]int, (2*reach+1)*(2*reach+1)+1)}
			for x := -reach; x < w; x++ {
				for row := top; row <= bottom; row++ {
					if out := x - reach - 1; out >= 0 {
						v.drop(of[row*w+out])
					}
					if in := x + reach; in < w {
						v.add(of[row*w+in])
					}
				}
				if x >= 0 {
					settled[y*w+x] = v.leader(of[y*w+x])
				}
			}
		}
	})
	return settled
}

// votes counts piles in a window that moves on.
type votes struct {
	of   []int // by pile
	with []int // how many piles have so many votes
	most int
}

func (v *votes) add(pile uint16) {
	v.with[v.of[pile]]--
	v.of[pile]++
	v.with[v.of[pile]]++
	v.most = max(v.most, v.of[pile])
}

func (v *votes) drop(pile uint16) {
	v.with[v.of[pile]]--
	v.of[pile]--
	v.with[v.of[pile]]++
	for v.most > 0 && v.with[v.most] == 0 {
		v.most--
	}
}

// leader returns the pile with the most votes: of several own, or the first.
func (v *votes) leader(own uint16) uint16 {
	if v.of[own] == v.most {
		return own
	}
	for pile, n := range v.of {
		if n == v.most {
			return uint16(pile)
		}
	}
	return own
}

// dropSpecks takes away what hangs together, corners included, and is fewer than least.
func dropSpecks(on []bool, w, h, least int) {
	met := make([]bool, len(on))
	for i := range on {
		if !on[i] || met[i] {
			continue
		}
		met[i] = true
		run := []int{i}
		for n := 0; n < len(run); n++ {
			x, y := run[n]%w, run[n]/w
			for v := max(0, y-1); v <= min(h-1, y+1); v++ {
				for u := max(0, x-1); u <= min(w-1, x+1); u++ {
					if at := v*w + u; on[at] && !met[at] {
						met[at] = true
						run = append(run, at)
					}
				}
			}
		}
		if len(run) < least {
			for _, at := range run {
				on[at] = false
			}
		}
	}
}
