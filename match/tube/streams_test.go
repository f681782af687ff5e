package tube

import (
	"math"
	"math/rand/v2"

	"tonewright/analyze/colour"
)

// Another optics than ours, to measure tubes with: light in six directions down and
// six up, each scattered into all, in layers doubled until they hide, under a surface
// that mirrors each direction by Fresnel's law. Kubelka and Munk's two streams and
// Saunderson's one surface figure are only near it.
// Sources: discrete ordinates and doubling, S. Chandrasekhar, "Radiative Transfer"
// (1950) chapter II, and H. C. van de Hulst, "Multiple Light Scattering" (1980)
// chapter 4; K = 2·absorption and S = 3/4·scattering for isotropic scattering, P. S.
// Mudgett, L. W. Richards, Applied Optics 10 (1971) 1485-1502; all from memory.

// Six directions: Gauss's points and weights on 0-1, as cosines from the normal.
// M. Abramowitz, I. Stegun, "Handbook of Mathematical Functions" (1964) table 25.4, n = 6,
// from ±1 to 0-1; from memory, and checked in TestStreamsAlone by what they integrate.
var (
	cosines = [6]float64{0.033765242898424, 0.169395306766868, 0.380690406958402, 0.619309593041598, 0.830604693233132, 0.966234757101576}
	weights = [6]float64{0.085662246189585, 0.180380786524069, 0.233956967286346, 0.233956967286346, 0.180380786524069, 0.085662246189585}
)

type square [6][6]float64

func (a square) times(b square) (c square) {
	for i := range a {
		for j := range a {
			for k := range a {
				c[i][j] += a[i][k] * b[k][j]
			}
		}
	}
	return c
}

// overOneLess returns (1 - a)⁻¹ by Gauss and Jordan; a is a contraction.
func (a square) overOneLess() (inverse square) {
	for i := range a {
		for j := range a {
			a[i][j] = -a[i][j]
		}
		a[i][i]++
		inverse[i][i] = 1
	}
	for i := range a {
		p := a[i][i]
		for j := range a {
			a[i][j] /= p
			inverse[i][j] /= p
		}
		for k := range a {
			if f := a[k][i]; k != i {
				for j := range a {
					a[k][j] -= f * a[i][j]
					inverse[k][j] -= f * inverse[i][j]
				}
			}
		}
	}
	return inverse
}

// layer returns what a layer sends back and lets through, direction by direction;
// absorption and scattering per unit thickness, 2^doublings times a thin beginning.
func layer(absorption, scattering, thickness float64, doublings int) (back, through square) {
	depth := (absorption + scattering) * thickness / math.Exp2(float64(doublings))
	albedo := scattering / (absorption + scattering)
	for i := range back {
		for j := range back {
			back[i][j] = albedo * depth * weights[j] / (2 * cosines[i])
			through[i][j] = back[i][j]
		}
		through[i][i] += 1 - depth/cosines[i]
	}
	for range doublings {
		between := back.times(back).overOneLess()
		out := through.times(between)
		deep := out.times(back).times(through)
		through = out.times(through)
		for i := range back {
			for j := range back {
				back[i][j] += deep[i][j]
			}
		}
	}
	return back, through
}

// mirrored returns Fresnel's reflectance from inside a binder of index 1.5.
func mirrored(cos float64) float64 {
	sin := 1.5 * math.Sqrt(1-cos*cos)
	if sin >= 1 {
		return 1
	}
	out := math.Sqrt(1 - sin*sin)
	s := (1.5*cos - out) / (1.5*cos + out)
	p := (1.5*out - cos) / (1.5*out + cos)
	return (s*s + p*p) / 2
}

// seenBack returns what an eye straight above sees of a layer in diffuse light, its
// shine left out, against a perfect white.
func seenBack(back square) float64 {
	var under square // mirrored at the surface, then back from the layer
	for i := range back {
		for j := range back {
			under[i][j] = mirrored(cosines[i]) * back[i][j]
		}
	}
	inverse := under.overOneLess()
	last, seen := len(cosines)-1, 0.0
	for i := range back {
		down := 0.0
		for j := range back {
			down += inverse[i][j] * (1 - mirrored(cosines[j]))
		}
		seen += back[last][i] * down
	}
	return seen
}

// truth is a tube as it really is: K and S with the shapes of no band model of ours.
type truth struct{ k, s colour.Spectrum }

// A lopsided band: steep towards one side, with a long tail on the other (Gumbel's
// curve), high at its centre.
func lopsided(nm, centre, width, height float64) float64 {
	x := (nm - centre) / width
	return height * math.Exp(1-x-math.Exp(-x))
}

// truthOf returns a tube whose K is a floor and lopsided bands (centre, width, height)
// and whose S runs up or down by a power of the wavelength, with a swing about the
// middle of the first band as near an absorption band's edge.
func truthOf(floor, level, power, swing float64, bands ...[3]float64) (t truth) {
	for b := range t.k {
		nm := 400 + 10*float64(b)
		t.k[b] = floor
		for _, band := range bands {
			t.k[b] += lopsided(nm, band[0], band[1], band[2])
		}
		x := (nm - bands[0][0]) / 60
		t.s[b] = level * math.Pow(nm/550, power) * (1 + swing*x/(1+x*x))
	}
	return t
}

// mixed adds tubes up by volume.
func mixed(parts []float64, of ...truth) (t truth) {
	whole := 0.0
	for _, p := range parts {
		whole += p
	}
	for i, p := range parts {
		for b := range t.k {
			t.k[b] += p / whole * of[i].k[b]
			t.s[b] += p / whole * of[i].s[b]
		}
	}
	return t
}

// measure returns the spectrum of a thick layer as the streams give it, with an
// instrument's noise of a given standard deviation, 0-1.
func (t truth) measure(noise float64, random *rand.Rand) (r colour.Spectrum) {
	for b := range r {
		back, _ := layer(t.k[b]/2, t.s[b]*4/3, 4000, 32)
		r[b] = min(max(0, seenBack(back)+noise*random.NormFloat64()), 1)
	}
	return r
}

// overGround is measure for a film over a ground that mirrors diffusely.
func (t truth) overGround(thickness, ground float64) (r colour.Spectrum) {
	for b := range r {
		if thickness == 0 {
			var bare square
			for i := range bare {
				for j := range bare {
					bare[i][j] = ground * 2 * cosines[j] * weights[j]
				}
			}
			r[b] = seenBack(bare)
			continue
		}
		back, through := layer(t.k[b]/2, t.s[b]*4/3, thickness, 24)
		var bare square // a diffuse ground, inside
		for i := range bare {
			for j := range bare {
				bare[i][j] = ground * 2 * cosines[j] * weights[j]
			}
		}
		deep := through.times(bare.times(back).overOneLess()).times(bare).times(through)
		for i := range back {
			for j := range back {
				back[i][j] += deep[i][j]
			}
		}
		r[b] = seenBack(back)
	}
	return r
}
