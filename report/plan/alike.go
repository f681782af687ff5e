// What the painter's own sight makes of the plan.

package plan

// LookAlikes is what the painter's sight takes for one another and others do not, and
// the reverse. All lists are empty for full sight.
type LookAlikes struct {
	Sight   string      `json:"sight"`   // "deutan 0.8"
	Piles   []LookAlike `json:"piles"`   // mixes of the plan; A and B are tags of colours
	Tubes   []LookAlike `json:"tubes"`   // paints the plan uses; A and B are ids
	Regions []LookAlike `json:"regions"` // neighbours on the panel; A and B are tags of regions
	Reverse []LookAlike `json:"reverse"` // what the painter sees apart and others hardly do
}

// LookAlike is two things that look alike to one sight and not to the other.
type LookAlike struct {
	A     string  `json:"a"`
	B     string  `json:"b"`
	Full  float64 `json:"full"`  // CIEDE2000 to full sight
	Seen  float64 `json:"seen"`  // CIEDE2000 to the painter's
	Tells string  `json:"tells"` // how to tell them apart without hue
	Kind  string  `json:"kind"`  // what tells: "value", "tint", "opacity", "tag"
}
