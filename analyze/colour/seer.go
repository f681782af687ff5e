// A sight made ready for many colours, as tristimulus values.

package colour

// mostWeak is the severity up to which cones are weak: from there to 1 they go over
// into none.
const mostWeak = 0.9

// seer is a sight that is not full. Tristimulus values are as ratios, Y of white 1.
type seer struct {
	weak matrix     // what is seen of linear-light sRGB, in tristimulus values
	lack *dichromat // nil up to mostWeak
	part float64    // of what lack sees, 0-1
}

var (
	rgbOf = xyzOf.inverse()
	// xyzOf turns linear-light sRGB into tristimulus values.
	xyzOf = func() (m matrix) {
		for k := range 3 {
			for i := range 3 {
				m[i][k] = linearRatios[i][k] * white[i]
			}
		}
		return m
	}()
)

// seer returns s made ready; s is not full.
func (s Sight) seer() seer {
	table := sights[s.Kind]
	tenths := 10 * min(s.Severity, mostWeak)
	low := min(int(tenths), len(table)-2)
	t := tenths - float64(low)
	e := seer{weak: xyzOf.after(table[low].toward(table[low+1], t))}
	if s.Severity > mostWeak {
		e.lack = dichromats[s.Kind]
		e.part = (min(s.Severity, 1) - mostWeak) / (1 - mostWeak)
	}
	return e
}

// see returns the tristimulus values that look to full sight as xyz does to e.
// Ours: to weak cones xyz is first brought to the nearest light of each channel that
// sRGB has, since their matrices are for a display's light. Carried past it they
// drive a strong yellow's blue on below nothing, where Lab is steepest: two paints
// 1.8 CIEDE2000 apart to full sight were 3.4 apart to a protan. What lacks a kind of
// cone is reckoned in what the other kinds catch and needs none of that.
func (e *seer) see(xyz [3]float64) (seen [3]float64) {
	if e.lack == nil {
		return e.weaken(xyz)
	}
	seen = e.lack.see(xyz)
	if e.part < 1 {
		weak := e.weaken(xyz)
		for i := range seen {
			seen[i] = weak[i] + e.part*(seen[i]-weak[i])
		}
	}
	return seen
}

func (e *seer) weaken(xyz [3]float64) [3]float64 {
	rgb := rgbOf.times(xyz)
	return e.weak.times([3]float64{lit(rgb[0]), lit(rgb[1]), lit(rgb[2])})
}

// lit returns the nearest light that a display's channel gives.
func lit(channel float64) float64 { return min(max(channel, 0), 1) }

// Lights is a sight made ready for a whole picture in linear-light sRGB.
type Lights struct {
	first, second matrix
	side          [3]float64 // of light: over 0 on the first side
}

// Lights returns s made ready for a whole picture.
func (s Sight) Lights() *Lights {
	if s.Full() {
		same := matrix{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
		return &Lights{first: same, second: same}
	}
	e := s.seer()
	weak := rgbOf.after(e.weak)
	if e.lack == nil {
		return &Lights{first: weak, second: weak}
	}
	l := &Lights{
		first:  weak.toward(rgbOf.after(e.lack.first).after(xyzOf), e.part),
		second: weak.toward(rgbOf.after(e.lack.second).after(xyzOf), e.part),
	}
	for j := range l.side {
		for i := range e.lack.side {
			l.side[j] += e.lack.side[i] * xyzOf[i][j]
		}
	}
	return l
}

// See returns what is seen of a light, each channel in 0-1, as linear-light sRGB,
// which may go outside: [Sight.See] in a few nanoseconds.
func (l *Lights) See(r, g, b float64) (red, green, blue float64) {
	m := &l.second
	if l.side[0]*r+l.side[1]*g+l.side[2]*b > 0 {
		m = &l.first
	}
	return m[0][0]*r + m[0][1]*g + m[0][2]*b, m[1][0]*r + m[1][1]*g + m[1][2]*b, m[2][0]*r + m[2][1]*g + m[2][2]*b
}
