// The circle of hues as a drawing. Everything on it is told by place, size, line and
// tag; the fill of a disc only adds to that.

package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/report/plan"
)

// Sizes in units of the drawing, whose middle is 0, 0. Ours: at 390 pixels of screen a
// unit is 0.8 of a pixel, and the letters of 15 are 12 pixels high.
const (
	wheelSize   = 216 // half the drawing
	wheelRadius = 160 // where the largest chroma lies
	bandInner   = 168 // the band with the names of the hues
	bandOuter   = 206
	letterSize  = 15 // of the names
	tagSize     = 13.5
	ringStep    = 4  // chroma from ring to ring
	discOfAll   = 52 // radius of the disc of the whole panel
	smallestDot = 3.5
)

// wheel is what the template draws, in the order of drawing.
type wheel struct {
	ViewBox string
	Inner   string // radii
	Outer   string
	Gray    string
	Rings   []ring
	Spokes  []segment
	Names   []arcName
	Arcs    []string // spreads of hue, as paths
	Pairs   []pairLine
	Leaders []segment
	Discs   []disc
	Tags    []tag
}

type ring struct{ R, X, Y, Text string }

type segment struct{ X1, Y1, X2, Y2 string }

// arcName is a hue's letters and word along a path.
type arcName struct{ ID, Path, Letters, Word string }

type pairLine struct {
	segment
	Touch bool
}

type disc struct{ X, Y, R, Fill, Tag string }

// spot is a point of the drawing.
type spot struct{ x, y float64 }

// spotAt is rounded, so that no choice of place rests on a last bit.
func spotAt(x, y float64) spot { return spot{plan.Round(x, 2), plan.Round(y, 2)} }

// polar returns the point at a hue and a distance from the middle: 5R is at the top,
// and hues go on clockwise.
func polar(step, radius float64) spot {
	sin, cos := math.Sincos(2 * math.Pi * (step - 5) / 100)
	return spotAt(radius*sin, -radius*cos)
}

func (a spot) to(b spot) segment { return segment{number(a.x), number(a.y), number(b.x), number(b.y)} }

// mark is a hue on the circle.
type mark struct {
	at     spot
	radius float64 // of its disc, whose area is the share of the panel
	tag    string
}

func newWheel(h plan.Harmony, tags []string) wheel {
	w := wheel{
		ViewBox: fmt.Sprintf("%d %d %d %d", -wheelSize, -wheelSize, 2*wheelSize, 2*wheelSize),
		Inner:   number(bandInner), Outer: number(bandOuter),
		Names: arcNames(),
	}
	largest := largestChroma(h.Hues)
	unit := wheelRadius / largest
	w.Gray = number(plan.Hued * unit)
	marks := make([]mark, len(h.Hues))
	for i, one := range h.Hues {
		marks[i] = mark{polar(one.Step, one.Chroma*unit), discRadius(one.Share), tags[i]}
		if one.Spread >= 0.5 {
			w.Arcs = append(w.Arcs, arcPath(one.Step-one.Spread, one.Step+one.Spread, one.Chroma*unit, true))
		}
	}
	w.Rings, w.Spokes = rings(largest, unit, marks), spokes()
	for _, c := range h.Complements[:min(mostPairs, len(h.Complements))] {
		a, b := marks[hueAt(h.Hues, c.A, c.HueA)], marks[hueAt(h.Hues, c.B, c.HueB)]
		w.Pairs = append(w.Pairs, pairLine{a.at.to(b.at), c.Touch})
	}
	for _, i := range largestFirst(marks) {
		m := marks[i]
		w.Discs = append(w.Discs, disc{number(m.at.x), number(m.at.y), number(m.radius), h.Hues[i].SRGB, m.tag})
	}
	for i, at := range placeTags(marks) {
		if at != marks[i].at {
			w.Leaders = append(w.Leaders, marks[i].at.to(at))
		}
		w.Tags = append(w.Tags, boxed(at, marks[i].tag))
	}
	return w
}

// discRadius makes the area of a disc its share of the panel.
func discRadius(share float64) float64 { return max(smallestDot, discOfAll*math.Sqrt(share)) }

// largestChroma returns the chroma of the outermost ring: the least whole number of
// rings that holds every disc.
func largestChroma(hues []plan.HueShare) float64 {
	largest := 2.0 * ringStep
	for _, one := range hues {
		room := 1 - discRadius(one.Share)/wheelRadius
		largest = max(largest, math.Ceil(one.Chroma/room/ringStep)*ringStep)
	}
	return largest
}

func largestFirst(marks []mark) []int {
	order := make([]int, len(marks))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return int(100*marks[b].radius) - int(100*marks[a].radius)
	})
	return order
}

// rings are labelled along the border of two families that is furthest from all marks.
func rings(largest, unit float64, marks []mark) []ring {
	best, room := 0.0, -1.0
	for family := range 10 {
		near := math.Inf(1)
		for _, m := range marks {
			for chroma := float64(ringStep); chroma <= largest; chroma += ringStep {
				at := polar(float64(10*family), chroma*unit)
				near = min(near, math.Hypot(m.at.x-at.x, m.at.y-at.y)-m.radius)
			}
		}
		if near = math.Round(near); near > room {
			best, room = float64(10*family), near
		}
	}
	var list []ring
	for chroma := float64(ringStep); chroma <= largest; chroma += ringStep {
		at := polar(best, chroma*unit)
		list = append(list, ring{number(chroma * unit), number(at.x), number(at.y), fmt.Sprintf("%.0f", chroma)})
	}
	return list
}

// spokes part the ten families.
func spokes() (list []segment) {
	for family := range 10 {
		step := float64(10 * family)
		list = append(list, polar(step, bandInner).to(polar(step, bandOuter)))
	}
	return list
}

// arcNames lays the names of the hues along the band, readable from above.
func arcNames() (list []arcName) {
	const middle, half = (bandInner + bandOuter) / 2, 0.34 * letterSize
	for family := range 10 {
		step := float64(10*family + 5)
		letters := familyLetters(colour.Munsell{Hue: step, Value: 5, Chroma: 5}.Short())
		name := arcName{ID: "hue-" + letters, Letters: letters, Word: colour.HueName(step)}
		const reach = 7 // steps to either side, longer than any name
		if polar(step, 1).y > 0.01 {
			name.Path = arcPath(step+reach, step-reach, middle+half, false)
		} else {
			name.Path = arcPath(step-reach, step+reach, middle-half, true)
		}
		list = append(list, name)
	}
	return list
}

// familyLetters returns the letters of a notation that begins with a hue, "YR" of
// "7.5YR 5/8".
func familyLetters(notation string) string {
	hue, _, _ := strings.Cut(notation, " ")
	return strings.TrimLeft(hue, "0123456789.")
}

// arcPath is an arc around the middle from one hue to another, less than half the
// circle.
func arcPath(from, to, radius float64, clockwise bool) string {
	a, b := polar(from, radius), polar(to, radius)
	sweep := 0
	if clockwise {
		sweep = 1
	}
	return fmt.Sprintf("M%s %sA%[3]s %[3]s 0 0 %[4]d %[5]s %[6]s", number(a.x), number(a.y), number(radius), sweep, number(b.x), number(b.y))
}
