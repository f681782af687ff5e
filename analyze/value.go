package analyze

// ValueMap is the picture in a few steps of lightness.
type ValueMap struct {
	Steps []float64 // Munsell value of each step, dark to light
	Of    []uint8   // len == Width × Height: index in Steps of each pixel
	Marks []Mark    // in the order of their step, then row by row
}

// Mark is a place where the number of a step can be printed.
type Mark struct {
	X, Y   int // pixel
	Step   int
	Radius float64 // pixels that are free of other steps around it
}
func Values(p *Picture, steps int) ValueMap { return ValueMap{} }
