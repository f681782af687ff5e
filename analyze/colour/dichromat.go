// What a dichromat sees: colours brought onto the two half-planes of light that look
// the same to a dichromat and to full sight.

package colour

// cones maps CIE 1931 tristimulus values to what the long-, middle- and
// short-wavelength cones catch; long and middle add up to Y.
// Source: [Smith1975], the figures as [Wyszecki1982] p. 615 prints them. They were
// derived with the observer of 1931 as Judd and Vos mended it below 460 nm, for which
// a photo has no figures. Ours, to use them as they are: over a 9 × 9 × 9 grid of
// sRGB what is seen differs from that by [Vienot1999]'s matrix for the mended observer
// by 0.1 to 0.3 CIEDE2000 in the mean, 1.8 at most.
var cones = matrix{
	{0.15514, 0.54312, -0.03286},
	{-0.15514, 0.45684, 0.03286},
	{0, 0, 0.01608},
}

var fromCones = cones.inverse()

// The lights that a dichromat and full sight see alike, as those with one such eye
// tell: yellow and blue to who has no long or no middle cones, red and blue-green to
// who has no short ones. Tristimulus values of the spectrum.
// Source: [Brettel1997] for the wavelengths, [CIE15] table T.4 for the values.
var (
	blue475      = [3]float64{0.1421, 0.1126, 1.0419}
	blueGreen485 = [3]float64{0.05795, 0.1693, 0.6162}
	yellow575    = [3]float64{0.8425, 0.9154, 0.0018}
	red660       = [3]float64{0.1649, 0.0610, 0}
)

// dichromat is the sight of who lacks one kind of cone: 0 long, 1 middle, 2 short.
type dichromat struct {
	lacks int
	// What is seen of tristimulus values, on the side of the neutral axis where the
	// other two cones catch more, compared to white, of the first than of the second,
	// and on the other side.
	first, second matrix
	side          [3]float64 // of tristimulus values: over 0 on the first side
}

// dichromats holds the sight of each kind at severity 1.
var dichromats = map[string]*dichromat{
	"protan": newDichromat(0, yellow575, blue475),
	"deutan": newDichromat(1, blue475, yellow575),
	"tritan": newDichromat(2, red660, blueGreen485),
}

// newDichromat returns the sight that lacks a kind of cone; first and second are
// the lights of either side that it sees as full sight does.
// Source: [Brettel1997] eq. 5-11: a colour slides along the axis of the lacking cone
// onto the plane through black, white and the light of its side. Ours: white is D65,
// not the equal-energy light, so that grays stay gray; as the display's white does in
// [Vienot1999].
func newDichromat(lacks int, first, second [3]float64) *dichromat {
	d := &dichromat{lacks: lacks}
	w := cones.times(white)
	a, b := (lacks+1)%3, (lacks+2)%3
	for j := range d.side {
		d.side[j] = cones[a][j]*w[b] - cones[b][j]*w[a]
	}
	d.first, d.second = slide(lacks, w, cones.times(first)), slide(lacks, w, cones.times(second))
	return d
}

// slide returns the map of tristimulus values that brings them along the axis of one
// kind of cone onto the plane through black and two lights, given as caught by cones.
func slide(axis int, white, light [3]float64) matrix {
	onto := matrix{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
	normal := cross(white, light)
	for j := range onto[axis] {
		onto[axis][j] = -normal[j] / normal[axis]
	}
	onto[axis][axis] = 0
	return fromCones.after(onto).after(cones)
}

// cross returns the vector at right angles to two others.
func cross(u, v [3]float64) (n [3]float64) {
	for i := range n {
		a, b := (i+1)%3, (i+2)%3
		n[i] = u[a]*v[b] - u[b]*v[a]
	}
	return n
}

// see returns the tristimulus values that look to full sight as xyz does to d.
func (d *dichromat) see(xyz [3]float64) [3]float64 {
	if d.side[0]*xyz[0]+d.side[1]*xyz[1]+d.side[2]*xyz[2] > 0 {
		return d.first.times(xyz)
	}
	return d.second.times(xyz)
}
