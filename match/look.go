// The first look: a few mixes of some sets, which bound how near the best must be.

package match

import "tonewright/analyze/colour"

// The measures of a first look at sets of two and of three.
var (
	looksOfTwo   = []measure{{2, 1}, {1, 2}}
	looksOfThree = []measure{{1, 1, 1}, {5, 1, 1}, {1, 5, 1}, {1, 1, 5}}
)

const (
	// mostLooks is about how many sets of three get a first look. Ours: more
	// sharpen the bounds by less than they cost.
	mostLooks = 2000
	// sought is how many looks the bound lets through. Ours: with 24 it took half
	// as long again and found nothing nearer.
	sought = 8
)

// looks are the mixes of a first look by the column they lie in.
type looks struct {
	at    [columns][]point
	used  [columns]bool    // columns that a mix lies in or beside
	reach [columns]float32 // over any CIEDE2000 between the middle of a used column and a colour in it, L* aside
}

// firstLooks looks at the sets of two and three paints, or where they are many at
// each of so many.
func (s *search) firstLooks(most int) *looks {
	l := &looks{}
	n := len(s.paints)
	strideOfTwo, stride := 1+n*(n-1)/2/mostLooks, 1+n*(n-1)*(n-2)/6/mostLooks
	count := 0
	for i, of := range s.pairsOfPaints() {
		if i%strideOfTwo == 0 {
			l.add(s, of, looksOfTwo)
		}
		if most < 3 {
			continue
		}
		for k := int(of[1]) + 1; k < n; k++ {
			if count++; count%stride == 0 {
				l.add(s, set{of[0], of[1], int32(k)}, looksOfThree)
			}
		}
	}
	for column := range l.used {
		if l.used[column] {
			l.reach[column] = reachOf(column)
		}
	}
	return l
}

func (l *looks) add(s *search, of set, measures []measure) {
	const n = side / wide
	if !s.allows(of) {
		return
	}
	for _, m := range measures {
		p := s.screen(of, m)
		column := columnOf(p)
		l.at[column] = append(l.at[column], p)
		a, b := column/n, column%n
		for i := max(a-1, 0); i <= min(a+1, n-1); i++ {
			for j := max(b-1, 0); j <= min(b+1, n-1); j++ {
				l.used[i*n+j] = true
			}
		}
	}
}

// reachOf returns the largest CIEDE2000 from the middle of a column to its corners,
// and a half more, since CIEDE2000 does not keep the triangle's rule.
func reachOf(column int) (reach float32) {
	middle := middleOfColumn(column)
	for _, a := range []float64{-blockAB / 2, blockAB / 2} {
		for _, b := range []float64{-blockAB / 2, blockAB / 2} {
			corner := colour.Lab{A: middle.A + a, B: middle.B + b}
			reach = max(reach, 1.5*float32(colour.DeltaE00(middle, corner)))
		}
	}
	return reach
}

// bound returns a distance within which some mixes surely come of those looked at:
// so many as are sought, and all that are within fewerWithin of the nearest. It is
// farthest where there are not so many.
func (l *lens) bound() float32 {
	nearest := make([]float32, 0, sought) // squares, rising
	for _, near := range []bool{true, false} {
		for column, points := range l.looks.at {
			if len(points) == 0 || l.isNear(middleOfColumn(column)) != near {
				continue
			}
			if len(nearest) < sought || !l.isFar(column, sqrt32(nearest[sought-1])) {
				nearest = l.nearest(nearest, column, points)
			}
		}
	}
	if len(nearest) < sought {
		return farthest
	}
	return slack * max(sqrt32(nearest[sought-1]), sqrt32(nearest[0])+fewerWithin)
}

// nearest puts the squares of a column's points among the nearest.
func (l *lens) nearest(nearest []float32, column int, points []point) []float32 {
	g := l.form(column)
	for _, p := range points {
		away := p.l - float32(l.aim.L)
		square := l.weight[storeyOf(p.l)]*away*away + g.form(p.a, p.b)
		if len(nearest) < sought || square < nearest[sought-1] {
			nearest = insert(nearest, square)
		}
	}
	return nearest
}

// farthest is over any CIEDE2000 between two colours.
const farthest = 200

// insert puts a number in its place in a rising list, which keeps as many as are sought.
func insert(list []float32, v float32) []float32 {
	if len(list) == sought {
		list = list[:sought-1]
	}
	i := len(list)
	list = append(list, v)
	for ; i > 0 && v < list[i-1]; i-- {
		list[i] = list[i-1]
	}
	list[i] = v
	return list
}
