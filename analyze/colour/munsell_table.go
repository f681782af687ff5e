package colour

import (
	_ "embed"
	"math"
	"strconv"
	"strings"
	"sync"
)

// renotation is the Munsell renotation in the layout its first lines tell.
// Source: [Newhall1943] table 1, the colours found real by [MacAdam1935].
//
//go:embed munsell.txt
var renotation string

const (
	tableHues    = 40 // 2.5 steps apart, from 10RP = 0 on
	tableValues  = 9  // 1 to 9
	tableChromas = 20 // 2 to 40 by 2; the table itself ends at 38
)

// polar is a point in the a*b* of illuminant C. Angle in degrees; along a ring
// it only rises, so it may be under 0 or over 360.
type polar struct{ angle, radius float64 }

// ring holds the points of one value and chroma, by hue.
type ring [tableHues]polar

// plane holds the rings of one value, all points at its luminance; plane[k] has
// chroma 2k+2.
type plane [tableChromas]ring

// planes returns the renotation; planes()[v-1] is that of value v. Read on first use.
var planes = sync.OnceValue(readPlanes)

func readPlanes() *[tableValues]plane {
	p := new([tableValues]plane)
	for line := range strings.Lines(renotation) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		row := wholeNumbers(line)
		p[row[0]-1].fill(row[1]/25, hueLine(row[0], row[2:]))
	}
	for v := range p {
		for k := range p[v] {
			p[v][k].unwrap()
		}
	}
	return p
}

// wholeNumbers returns the numbers of a line of an embedded table.
func wholeNumbers(line string) []int {
	fields := strings.Fields(line)
	row := make([]int, len(fields))
	for i, f := range fields {
		n, err := strconv.Atoi(f)
		if err != nil {
			panic("colour: munsell.txt: " + err.Error())
		}
		row[i] = n
	}
	return row
}

// hueLine returns the points of one value and hue for chroma 2, 4, … from their
// x and y times 10,000. Past the last tabled chroma it goes straight on in a*b*
// at the pace of the last two steps.
// Ours: of the lines of five colours or more, leaving out the last colour and
// drawing the line on misses it by 0.4° of hue angle and 1.0 of C* on average,
// and neighbouring lines drawn on so never cross up to chroma 40; along the last
// step alone they miss by 0.3° and 1.1; straight outwards from neutral, by 0.8°.
func hueLine(value int, xy []int) (line [tableChromas]Lab) {
	n := len(xy) / 2
	for k := range n {
		line[k] = tabled(value, float64(xy[2*k])/1e4, float64(xy[2*k+1])/1e4)
	}
	back := min(2, n)
	var from Lab // neutral, where the line has fewer than three colours
	if n > back {
		from = line[n-1-back]
	}
	a, b := (line[n-1].A-from.A)/float64(back), (line[n-1].B-from.B)/float64(back)
	for k := n; k < tableChromas; k++ {
		line[k].A, line[k].B = line[k-1].A+a, line[k-1].B+b
	}
	return line
}

// tabled returns the Lab under illuminant C of chromaticity x, y at the
// luminance of the value.
func tabled(value int, x, y float64) Lab {
	lum := luminance(float64(value)) / 100
	return fromRatios(x/y*lum/illuminantC[0], lum, (1-x-y)/y*lum/illuminantC[2])
}

// fill puts a line of one hue into the rings of p.
func (p *plane) fill(hue int, line [tableChromas]Lab) {
	for k, c := range line {
		p[k][hue] = polar{math.Atan2(c.B, c.A) * (180 / math.Pi), c.Chroma()}
	}
}

// unwrap adds whole turns so that the angles rise along r. The first, of 10RP,
// stays in -180 to 180; it is near 0 in every ring.
func (r *ring) unwrap() {
	for i := 1; i < len(r); i++ {
		r[i].angle = r[i-1].angle + wrap(r[i].angle-r[i-1].angle, 360)
	}
}
