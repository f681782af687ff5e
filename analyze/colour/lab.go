// Package colour is numbers only: spectra, XYZ, Lab, colour difference, Munsell
// notation and colour names. It knows no pictures and no paints.
package colour

// Lab is a CIE 1976 L*a*b* colour under D65 for the 2° observer; L in 0-100.
type Lab struct{ L, A, B float64 }
