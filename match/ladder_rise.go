// Making a palette's row rise from dark to light.

package match

import (
	"math"
	"slices"
)

// leastDip is the L* by which a row may fall and still count as rising; the fallen mixes
// are left out. mostBridges bounds how often a row is bridged.
//
// Ours: of every eleventh of the library's 50,116 palettes of three, with white, 1,153
// of 4,556 want one bridge and none two, but for 15. In those a string between two darks
// is lighter in its middle than at its ends, by up to 0.07; what is left out of them
// after two bridges falls by 0.003 at most.
const (
	leastDip    = 0.002
	mostBridges = 2
)

// rising returns the row from its darkest mix to its lightest, each lighter than the
// one before.
//
// Where it falls in between, it is bridged: from the last mix that is darker than the
// dip it goes by mixes of that one and the first mix past the dip that is lighter than
// all before, or from further back if that bridge would go dark first.
func (l *Ladder) rising(row []rung) []rung {
	for range mostBridges {
		row = darkToLight(row)
		from, to, found := dip(row)
		if !found {
			break
		}
		for from > 0 && !l.rises(row[from], row[to]) {
			from--
		}
		row = slices.Concat(row[:from+1], l.bridge(row[from], row[to]), row[to:])
	}
	row = darkToLight(row)
	rungs := row[:1:1]
	for _, r := range row[1:] {
		if r.lab.L > rungs[len(rungs)-1].lab.L {
			rungs = append(rungs, r)
		}
	}
	return rungs
}

// darkToLight returns the part of a row between its darkest and its lightest mix.
func darkToLight(row []rung) []rung {
	dark := 0
	for i, r := range row {
		if r.lab.L < row[dark].lab.L {
			dark = i
		}
	}
	light := dark
	for i := dark; i < len(row); i++ {
		if row[i].lab.L > row[light].lab.L {
			light = i
		}
	}
	return row[dark : light+1]
}

// dip returns the mixes between which the first fall of a row lies: the last that is
// darker than all of it, and the first past it that is lighter than all before. The
// row goes from its darkest to its lightest.
func dip(row []rung) (from, to int, found bool) {
	peak := 0
	for i := range row {
		if row[i].lab.L > row[peak].lab.L {
			peak = i
		}
		if row[i].lab.L < row[peak].lab.L-leastDip {
			from, to = around(row, peak)
			return from, to, true
		}
	}
	return 0, 0, false
}

// around returns where to leave a row before a peak that it falls from, and where to
// join it again.
func around(row []rung, peak int) (from, to int) {
	low := row[peak].lab.L
	for to = peak; row[to].lab.L <= row[peak].lab.L; to++ {
		low = min(low, row[to].lab.L)
	}
	for from = peak; from > 0 && row[from].lab.L >= low; from-- {
	}
	return from, to
}

// probes are the shares of the far mix at which rises looks.
var probes = []float64{0.001, 0.01, 0.1, 0.3, 0.6, 1}

// rises tells whether a bridge goes towards the light from its first step.
func (l *Ladder) rises(a, b rung) bool {
	last := a.lab.L
	for _, share := range probes {
		at := l.between(a, b, share).lab.L
		if at <= last {
			return false
		}
		last = at
	}
	return true
}

// bridge returns the mixes of two mixes, as many as way has.
func (l *Ladder) bridge(a, b rung) (row []rung) {
	for i := range waySamples {
		odds := math.Log(leastOdds) * (1 - 2*float64(i)/(waySamples-1))
		row = append(row, l.between(a, b, 1/(1+math.Exp(-odds))))
	}
	return row
}

// between returns the mix of one mix with a share of another.
func (l *Ladder) between(a, b rung, share float64) rung {
	shares := make([]float64, len(l.paints))
	for i := range shares {
		shares[i] = (1-share)*a.shares[i] + share*b.shares[i]
	}
	return l.mixed(shares)
}
