package analyze

// Marks returns where the labels of a picture's parts can be printed: in every
// part with room for it, at the point farthest from its border; Mark.Step is the label.
// len(of) == Width × Height, labels are 0-254; every label has a mark at least, though
// its radius may be small. Nil or empty pictures have no marks.
func Marks(p *Picture, of []uint8) []Mark {
	if len(of) == 0 {
		return []Mark{}
	}
	return marks(p.Width, p.Height, of)
}
