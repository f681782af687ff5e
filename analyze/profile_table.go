package analyze

// table is a profile sampled on a lattice, for profiles that are more than
// curves and a matrix. It holds CIELAB's f(X/Xn), f(Y/Yn), f(Z/Zn) under D50, in
// which profiles run nearly straight between their own nodes.
type table struct {
	inks, nodes int
	f           []float32 // 3 a node; the last ink runs fastest
}

// tableAffine takes X/Xn, Y/Yn, Z/Zn under D50 to XYZ.
var tableAffine = affine{m: matrix{{d50[0], 0, 0}, {0, d50[1], 0}, {0, 0, d50[2]}}}

// Nodes along each ink. Ours: see TestTableIsFineEnough for what they cost.
const (
	nodesRGB  = 33
	nodesCMYK = 17
)

// newTable samples a profile.
func newTable(xyz func([4]float64) [3]float64, inks int) *table {
	t := &table{inks: inks, nodes: nodesRGB}
	if inks == 4 {
		t.nodes = nodesCMYK
	}
	total := 1
	for range inks {
		total *= t.nodes
	}
	t.f = make([]float32, 0, 3*total)
	for i := range total {
		var in [4]float64
		for c, rest := inks-1, i; c >= 0; c, rest = c-1, rest/t.nodes {
			in[c] = float64(rest%t.nodes) / float64(t.nodes-1)
		}
		for k, v := range xyz(in) {
			t.f = append(t.f, float32(labF(v/d50[k])))
		}
	}
	return t
}

// roots are f(X/Xn), f(Y/Yn), f(Z/Zn).
type roots [3]float32

// light is X/Xn, Y/Yn, Z/Zn.
func (r roots) light() [3]float64 {
	return [3]float64{labInverse(float64(r[0])), labInverse(float64(r[1])), labInverse(float64(r[2]))}
}

// at interpolates between the 2ⁿ nodes around v, each number in 0 to 1.
func (t *table) at(v [4]float32) (r roots) {
	var low [4]int
	var part [4]float32
	for c := range t.inks {
		x := v[c] * float32(t.nodes-1)
		low[c] = min(int(x), t.nodes-2)
		part[c] = x - float32(low[c])
	}
	for corner := range 1 << t.inks {
		weight, at := float32(1), 0
		for c := range t.inks {
			high := corner >> c & 1
			at = at*t.nodes + low[c] + high
			if high == 1 {
				weight *= part[c]
			} else {
				weight *= 1 - part[c]
			}
		}
		if weight == 0 {
			continue
		}
		node := t.f[3*at : 3*at+3]
		r[0] += weight * node[0]
		r[1] += weight * node[1]
		r[2] += weight * node[2]
	}
	return r
}
