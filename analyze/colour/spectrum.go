package colour

// Bands is the number of samples of a Spectrum.
const Bands = 31

// Spectrum is one number for each band, 400 to 700 nm in steps of 10 nm.
// A reflectance is 0-1.
type Spectrum [Bands]float64

// observer is the CIE 1931 2° standard observer: x̄, ȳ, z̄.
// Source: [CIE15] table T.4, every second row of its 5 nm steps.
var observer = [3]Spectrum{
	{
		0.01431, 0.04351, 0.13438, 0.2839, 0.34828, 0.3362, 0.2908, 0.19536,
		0.09564, 0.03201, 0.0049, 0.0093, 0.06327, 0.1655, 0.2904, 0.4334499,
		0.5945, 0.7621, 0.9163, 1.0263, 1.0622, 1.0026, 0.8544499, 0.6424,
		0.4479, 0.2835, 0.1649, 0.0874, 0.04677, 0.0227, 0.01135916,
	}, {
		0.000396, 0.00121, 0.004, 0.0116, 0.023, 0.038, 0.06, 0.09098,
		0.13902, 0.20802, 0.323, 0.503, 0.71, 0.862, 0.954, 0.9949501,
		0.995, 0.952, 0.87, 0.757, 0.631, 0.503, 0.381, 0.265,
		0.175, 0.107, 0.061, 0.032, 0.017, 0.00821, 0.004102,
	}, {
		0.06785001, 0.2074, 0.6456, 1.3856, 1.74706, 1.77211, 1.6692, 1.28764,
		0.8129501, 0.46518, 0.272, 0.1582, 0.07824999, 0.04216, 0.0203, 0.008749999,
		0.0039, 0.0021, 0.001650001, 0.0011, 0.0008, 0.00034, 0.00019, 4.999999e-05,
		2e-05, 0, 0, 0, 0, 0, 0,
	},
}

// daylight is the relative power of CIE illuminant D65.
// Source: [CIE15] table T.1.
var daylight = Spectrum{
	82.7549, 91.486, 93.4318, 86.6823, 104.865, 117.008, 117.812, 114.861,
	115.923, 108.811, 109.354, 107.802, 104.79, 107.689, 104.405, 104.046,
	100, 96.3342, 95.788, 88.6856, 90.0062, 89.5991, 87.6987, 83.2886,
	83.6992, 80.0268, 80.2146, 82.2778, 78.2842, 69.7213, 71.6091,
}

// weights is filled once from the two tables above and never changed.
var weights = weigh(&observer, &daylight)

// Weights returns the weights of X, Y and Z under D65, each divided by the sum
// of its white over the same samples: X/Xn = Σ w[0][i]·R[i]. Not to be changed.
// Source: [CIE15] 7.1.
func Weights() *[3]Spectrum { return &weights }

// weigh returns observer × light, each of the three scaled to a sum of 1.
func weigh(observer *[3]Spectrum, light *Spectrum) (w [3]Spectrum) {
	for k := range w {
		sum := 0.0
		for i, v := range observer[k] {
			w[k][i] = v * light[i]
			sum += w[k][i]
		}
		for i := range w[k] {
			w[k][i] /= sum
		}
	}
	return w
}

// Lab returns the colour of reflectance s under D65; a reflectance of 1 in all
// bands is L* = 100, a* = b* = 0.
// Source: [CIE15] 7.1 and 8.2.1.
func (s *Spectrum) Lab() Lab { return s.under(&weights) }

// under returns the Lab of reflectance s by the weights of X/Xn, Y/Yn and Z/Zn.
func (s *Spectrum) under(w *[3]Spectrum) Lab {
	var x, y, z float64
	for i, r := range s {
		x += w[0][i] * r
		y += w[1][i] * r
		z += w[2][i] * r
	}
	return fromRatios(x, y, z)
}
