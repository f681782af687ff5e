// One worker's view of the search: the nearest sets so far for each aim.

package match

import "tonewright/analyze/colour"

// scan holds mixes against aims and keeps, for each aim, the sets that come nearest.
type scan struct {
	aims    []colour.Lab
	field   *field
	bound   []float32 // gauge's square that a set must come under to be kept, by aim
	now     []float32 // the same for a mix of the set at hand, which falls with each that does
	touched []int32   // aims that a mix of the set at hand came near to
	at      []point   // that mix, by aim
	best    [][]find  // nearest first, by aim
}

// newScan starts with the distances that a set must come within.
func newScan(s *search, f *field, distances []float32) *scan {
	n := len(s.aims)
	c := &scan{aims: s.aims, field: f, at: make([]point, n), best: make([][]find, n)}
	for _, d := range distances {
		c.bound = append(c.bound, d*d)
	}
	c.now = append(c.now, c.bound...)
	return c
}

// hold takes note of a mix for the aims it is near. It is where the time goes: the
// gauge's square is written out, and weighed by L* first.
func (c *scan) hold(p point) {
	for _, n := range c.field.near(p) {
		w := &c.field.watches[n]
		now := c.now[w.aim]
		l := p.l - w.at.l
		square := w.ll * l * l
		if square >= now {
			continue
		}
		if w.grain != nil {
			square += w.grain.at(p.a, p.b, &w.at)
		} else {
			a, b := p.a-w.at.a, p.b-w.at.b
			square += w.whole + a*(w.a+w.aa*a+w.ab*b) + b*(w.b+w.bb*b)
		}
		if square < now {
			c.note(w.aim, square, p)
		}
	}
}

func (c *scan) note(aim int32, square float32, p point) {
	if c.now[aim] == c.bound[aim] {
		c.touched = append(c.touched, aim)
	}
	c.now[aim] = square
	c.at[aim] = p
}

// close ends a set of paints: its nearest mix is weighed exactly for each aim it
// came near to, and the bounds are drawn in.
func (c *scan) close(of set) {
	for _, a := range c.touched {
		p := c.at[a]
		c.keep(a, find{of, p, float32(colour.DeltaE00(c.aims[a], p.lab()))})
		c.now[a] = c.bound[a]
	}
	c.touched = c.touched[:0]
}

// keep puts a find in its place, drops the last of too many, and lowers the bound.
func (c *scan) keep(a int32, f find) {
	list := c.best[a]
	if len(list) == kept {
		if compareFinds(f, list[len(list)-1]) >= 0 {
			return
		}
		list = list[:len(list)-1]
	}
	i := len(list)
	list = append(list, f)
	for ; i > 0 && compareFinds(f, list[i-1]) < 0; i-- {
		list[i] = list[i-1]
	}
	list[i] = f
	c.best[a] = list
	if len(list) == kept {
		far := slack * list[len(list)-1].deltaE
		c.bound[a] = min(c.bound[a], far*far)
	}
}
