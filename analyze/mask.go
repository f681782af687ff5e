package analyze

import (
	"image"

	"tonewright/analyze/colour"
)

// maskLight is the lightness from which a mask counts as light: the middle of L*.
const maskLight = 50

// OpenMask opens an image that shows where a region of the photo is, and reads its
// header only: it has the proportion of the whole upright photo, to within a pixel of
// its own.
func OpenMask(file string, photo *Photo, lim Limits) (*Photo, error) {
	mask, err := Open(file, lim)
	if err != nil {
		return nil, err
	}
	switch size, whole := image.Pt(mask.Width, mask.Height), image.Pt(photo.Width, photo.Height); {
	case sameShape(size, whole):
		return mask, nil
	case sameShape(image.Pt(size.Y, size.X), whole):
		return nil, mask.errorf("this mask has %d × %d pixels and the photo %d × %d: it lies on its side; turn it as the photo is seen upright",
			size.X, size.Y, whole.X, whole.Y)
	default:
		return nil, mask.errorf("this mask has %d × %d pixels, which is another proportion than the photo's %d × %d; paint it over the whole photo, before any part is cut off",
			size.X, size.Y, whole.X, whole.Y)
	}
}

// sameShape tells whether two sizes have one proportion, to within a pixel of the first.
func sameShape(size, whole image.Point) bool {
	off := int64(size.X)*int64(whole.Y) - int64(size.Y)*int64(whole.X)
	return max(off, -off) <= int64(max(whole.X, whole.Y))
}

// ReadMask returns which pixels of the photo's picture, cut to crop and width × height
// in size, a mask says are of its region: those in whose middle it is light, L* 50 or
// more. What is transparent in it is not. crop is in pixels of the upright photo; an
// empty one means all. len(result) == width × height.
//
// The mask is looked at in the middle of each pixel, not averaged: an average of light
// would make every region a little larger, and two masks that are each other's
// opposites would overlap. One that is dark everywhere is an error, and so is one that
// is light everywhere: far oftener than a region that is the whole panel, it is a mask
// saved without what was cut out of it.
func ReadMask(file string, photo *Photo, crop image.Rectangle, width, height int, lim Limits) ([]bool, error) {
	mask, err := OpenMask(file, photo, lim)
	if err != nil {
		return nil, err
	}
	if crop.Empty() {
		crop = image.Rect(0, 0, photo.Width, photo.Height)
	}
	columns := middles(crop.Min.X, crop.Dx(), photo.Width, mask.Width, width)
	lines := middles(crop.Min.Y, crop.Dy(), photo.Height, mask.Height, height)
	p, err := mask.sampled(columns, lines)
	if err != nil {
		return nil, err
	}
	in, pixels := make([]bool, width*height), 0
	for i := range in {
		if in[i] = p.Lab[3*i] >= maskLight; in[i] {
			pixels++
		}
	}
	switch pixels {
	case 0:
		return nil, mask.errorf("this mask is dark everywhere on the part of the photo that is painted; paint its region white on black")
	case len(in):
		return nil, mask.errorf("this mask is light everywhere on the part of the photo that is painted; paint black what is not its region, or name all cells of the grid if you mean the whole panel")
	}
	return in, nil
}

// middles returns the pixels of a mask, masked along this side, that lie under the
// middles of n pixels of a picture, which shows size pixels from from on of a photo that
// has whole of them.
func middles(from, size, whole, masked, n int) []int {
	at := make([]int, n)
	for i := range at {
		twice := int64(2*i+1)*int64(size) + 2*int64(n)*int64(from) // of n parts of a photo's pixel
		at[i] = int(twice * int64(masked) / (2 * int64(n) * int64(whole)))
	}
	return at
}

// sampled returns the upright photo's pixels where the columns and lines cross, over black.
func (p *Photo) sampled(columns, lines []int) (*Picture, error) {
	go levelTable() // as in Picture
	img, err := p.decode()
	if err != nil {
		return nil, err
	}
	r, err := p.raster(img, image.Rectangle{Max: p.stored}, p.stored)
	if err != nil {
		return nil, p.sentence(err)
	}
	across, down, onto := crossings(turnOf(p.Orientation), p.stored, columns, lines)
	pixels := len(columns) * len(lines)
	pic := &Picture{Width: len(columns), Height: len(lines), Lab: make([]float32, 3*pixels), RGB: make([]uint8, 3*pixels)}
	f := finisher{picture: pic, channels: r.channels, toSRGB: p.light.affine, ground: linearOf(colour.Lab{}), turn: onto, levels: levelTable()}
	read, row := r.across(across), make([]float32, r.channels*len(across))
	for y, line := range down {
		read(line, row)
		f.row(y, row)
	}
	return pic, nil
}

// crossings returns the stored columns and lines on which upright ones lie, and the turn
// that puts what is read there into place.
func crossings(t turn, size image.Point, columns, lines []int) (across []span, down []int, onto turn) {
	stored := func(x, y int) image.Point { return t.storedCrop(image.Rect(x, y, x+1, y+1), size).Min }
	var acrossAt, downAt []image.Point
	for _, x := range columns {
		acrossAt = append(acrossAt, stored(x, 0))
	}
	for _, y := range lines {
		downAt = append(downAt, stored(0, y))
	}
	onto = turnOf(1)
	if t.ax == 0 { // stored columns are upright lines
		acrossAt, downAt, onto = downAt, acrossAt, turnOf(5)
	}
	for _, at := range acrossAt {
		across = append(across, point(at.X))
	}
	for _, at := range downAt {
		down = append(down, at.Y)
	}
	return across, down, onto.over(image.Pt(len(across), len(down)))
}

// point is the span of one whole pixel.
func point(at int) span { return span{first: at, last: at, firstWeight: 1, lastWeight: 1} }
