package analyze

// crowdReach is how near a line may be to a stronger one and still count, in pixels of
// the sketch. Ours: 1.5 mm on a 12-inch panel, under which a pencil draws one line.
const crowdReach = 2

// crowd is where lines have been drawn.
type crowd struct {
	width, height int
	taken         []int32 // 1 + the line
}

// weight returns the sum of the weights of a stroke where no line drawn so far is near,
// and adds the stroke.
func (c *crowd) weigh(s *stroke, weights []float64, number int32) (sum float64) {
	for i, p := range s.places {
		if c.taken[pixelAt(p, c.width, c.height)] == 0 {
			sum += weights[i]
		}
	}
	for _, p := range s.places {
		x, y := int(p.X), int(p.Y)
		for v := max(0, y-crowdReach); v <= min(c.height-1, y+crowdReach); v++ {
			for u := max(0, x-crowdReach); u <= min(c.width-1, x+crowdReach); u++ {
				c.taken[v*c.width+u] = number
			}
		}
	}
	return sum
}
