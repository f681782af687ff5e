// Palettes proposed for a region.

package match

// Scheme is how the paints of a palette stand to one another, or to another region.
type Scheme string

// The schemes a painter can wish for.
const (
	Monochrome Scheme = "monochrome" // one paint, and white
	Analogous  Scheme = "analogous"  // neighbours on the hue circle
	Complement Scheme = "complement" // opposite to another region
	Quiet      Scheme = "quiet"      // of low chroma and near its surroundings in value
)
