// Where the tags of the circle go.

package report

import "math"

// Sizes of a tag's box in the drawing, see boxed.
const (
	tagHeight = 18
	tagPad    = 8
)

func tagWidth(text string) float64 { return tagPad + 0.62*tagSize*float64(len(text)) }

// boxed is a tag with its middle at a point.
func boxed(at spot, text string) tag {
	wide := tagWidth(text)
	return tag{label{number(at.x), number(at.y), number(tagSize), text},
		number(at.x - wide/2), number(at.y - tagHeight/2), number(wide), number(tagHeight), number(tagSize * 0.2)}
}

// placeTags puts a tag on its disc where the disc holds it, else beside it, where it
// hides no other tag and as little as can be of other discs; the largest discs
// choose first.
func placeTags(marks []mark) []spot {
	at := make([]spot, len(marks))
	var placed []int
	for _, i := range largestFirst(marks) {
		least := math.MaxInt
		for n, try := range places(marks[i]) {
			cost := n
			for _, j := range placed {
				if overlap(try, marks[i].tag, at[j], marks[j].tag) {
					cost += 10000
				}
			}
			for j, other := range marks {
				if j != i && hides(try, marks[i].tag, other) {
					cost += 300
				}
			}
			if cost < least {
				least, at[i] = cost, try
			}
		}
		placed = append(placed, i)
	}
	return at
}

// places lists where a mark's tag may go, the best first: on a disc that holds it,
// then around it, outward first, and ever further away. None is off the circle.
func places(m mark) (list []spot) {
	wide := tagWidth(m.tag)
	if math.Hypot(wide, tagHeight) <= 2*m.radius {
		list = append(list, m.at)
	}
	outward := math.Atan2(m.at.y, m.at.x)
	for _, gap := range []float64{3, 14, 26, 40, 56, 74} {
		for turn := range 16 {
			side := float64((turn+1)/2) * math.Pi / 8
			if turn%2 == 0 {
				side = -side
			}
			sin, cos := math.Sincos(outward + side)
			reach := m.radius + gap + min(wide/2/max(math.Abs(cos), 1e-9), tagHeight/2/max(math.Abs(sin), 1e-9))
			if at := spotAt(m.at.x+reach*cos, m.at.y+reach*sin); math.Hypot(math.Abs(at.x)+wide/2, math.Abs(at.y)+tagHeight/2) < bandInner {
				list = append(list, at)
			}
		}
	}
	return list
}

// overlap tells whether two tags touch, with a little air between them.
func overlap(a spot, aText string, b spot, bText string) bool {
	const air = 3
	return math.Abs(a.x-b.x) < (tagWidth(aText)+tagWidth(bText))/2+air && math.Abs(a.y-b.y) < tagHeight+air
}

// hides tells whether a tag at a point would lie on another mark's disc.
func hides(at spot, text string, other mark) bool {
	dx := max(0, math.Abs(at.x-other.at.x)-tagWidth(text)/2)
	dy := max(0, math.Abs(at.y-other.at.y)-tagHeight/2)
	return math.Hypot(dx, dy) < other.radius+1
}
