package analyze

import (
	"math"
	"slices"

	"tonewright/analyze/colour"
)

// clone returns a copy to try things on.
func (s *settled) clone() *settled {
	return &settled{s.cells, slices.Clone(s.centres), slices.Clone(s.of), slices.Clone(s.accent), s.blur}
}

// mend joins the two clusters it costs least to join and splits the worst, as long
// as that lowers the squared error; it reports whether it did.
func (s *settled) mend() bool {
	mended := false
	for len(s.centres) > 2 {
		try := s.clone()
		if !try.joinCheapest() || !try.split() {
			break
		}
		try.lloyd(mostRounds)
		if try.squaredError() >= s.squaredError()*(1-1e-6) {
			break
		}
		*s = *try
		mended = true
	}
	return mended
}

// squaredError returns the sum over the pixels of the squared distance to their centre.
func (s *settled) squaredError() float64 {
	sum := 0.0
	for i := range s.cells {
		sum += s.cells[i].even.squared(&s.centres[s.of[i]]) * s.cells[i].pixels
	}
	return sum
}

// joinCheapest joins the two clusters, neither an accent, whose joining adds least to
// the squared error [Ward1963]; it returns false if there are none.
func (s *settled) joinCheapest() bool {
	pixels := make([]float64, len(s.centres))
	for i, k := range s.of {
		pixels[k] += s.cells[i].pixels
	}
	from, to, least := -1, -1, math.MaxFloat64
	for a := range s.centres {
		for b := range a {
			if s.accent[a] || s.accent[b] {
				continue
			}
			ward := pixels[a] * pixels[b] / (pixels[a] + pixels[b]) * s.centres[a].squared(&s.centres[b])
			if ward < least {
				from, to, least = a, b, ward
			}
		}
	}
	if from < 0 {
		return false
	}
	s.join(from, to)
	return true
}

// join moves the cells of cluster from into cluster to; the last takes from's number.
func (s *settled) join(from, to int) {
	last := len(s.centres) - 1
	for i, k := range s.of {
		switch int(k) {
		case from:
			s.of[i] = uint8(to)
		case last:
			s.of[i] = uint8(from)
		}
	}
	s.centres[from], s.accent[from] = s.centres[last], s.accent[last]
	s.centres, s.accent = s.centres[:last], s.accent[:last]
	s.centres[to] = s.mean(uint8(to))
}

// joinAlike joins clusters whose centres cannot be told apart.
func (s *settled) joinAlike() {
	for a := 1; a < len(s.centres); a++ {
		for b := range a {
			means := s.means()
			if colour.DeltaE00(means[a].lab, means[b].lab) < alike {
				s.join(a, b)
				a = 0
				break
			}
		}
	}
}
