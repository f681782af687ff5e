package colour

// matrix is a linear map of tristimulus values, row by row.
type matrix [3][3]float64

// bradford maps tristimulus values to sharpened cone responses.
// Source: [Lam1985]; the figures as [ICC] annex E prints them.
var bradford = matrix{
	{0.8951, 0.2664, -0.1614},
	{-0.7502, 1.7135, 0.0367},
	{0.0389, -0.0685, 1.0296},
}

// toC carries tristimulus values seen under D65 to those that look alike under
// illuminant C. Bradford, since the colour management of photographs uses it too.
var toC = adaptation(white, illuminantC)

// illuminantC is the white of the Munsell renotation, Y = 1: x = 0.31006, y = 0.31616.
// Source: [CIE15] table T.3.
var illuminantC = [3]float64{0.31006 / 0.31616, 1, (1 - 0.31006 - 0.31616) / 0.31616}

// adaptation returns the map that takes the white from to the white to and
// scales the cone responses of all else alike.
func adaptation(from, to [3]float64) matrix {
	var scale matrix
	a, b := bradford.times(from), bradford.times(to)
	for i := range scale {
		scale[i][i] = b[i] / a[i]
	}
	return bradford.inverse().after(scale).after(bradford)
}

// times returns m·v.
func (m matrix) times(v [3]float64) (r [3]float64) {
	for i := range r {
		r[i] = m[i][0]*v[0] + m[i][1]*v[1] + m[i][2]*v[2]
	}
	return r
}

// after returns m·n, the map that does n first.
func (m matrix) after(n matrix) (r matrix) {
	for i := range r {
		for j := range r[i] {
			r[i][j] = m[i][0]*n[0][j] + m[i][1]*n[1][j] + m[i][2]*n[2][j]
		}
	}
	return r
}

// inverse returns the map that undoes m, by cofactors; m must have one.
func (m matrix) inverse() (r matrix) {
	cofactor := func(i, j int) float64 {
		a, b, c, d := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
		return m[a][c]*m[b][d] - m[a][d]*m[b][c]
	}
	det := m[0][0]*cofactor(0, 0) + m[0][1]*cofactor(0, 1) + m[0][2]*cofactor(0, 2)
	for i := range r {
		for j := range r[i] {
			r[j][i] = cofactor(i, j) / det
		}
	}
	return r
}

// toward returns the map that lies part of the way, 0-1, from m to n.
func (m matrix) toward(n matrix, part float64) (r matrix) {
	for i := range r {
		for j := range r[i] {
			r[i][j] = m[i][j] + part*(n[i][j]-m[i][j])
		}
	}
	return r
}
