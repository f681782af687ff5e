package analyze

import "image"

// turn is how a stored picture is made upright: stored pixel (x, y) goes to
// upright pixel origin + x·(ax, ay) + y·(bx, by).
type turn struct {
	ax, ay, bx, by int
	origin, stride int // place of stored (0, 0), and of one step down, in upright pixels; see over
}

// turnOf is the turn of an EXIF orientation. Source: [EXIF] 4.6.4, Orientation: the number
// says where the stored first row and first column belong on the upright picture.
func turnOf(orientation int) turn {
	return map[int]turn{
		1: {ax: 1, by: 1},   // top, left
		2: {ax: -1, by: 1},  // top, right
		3: {ax: -1, by: -1}, // bottom, right
		4: {ax: 1, by: -1},  // bottom, left
		5: {ay: 1, bx: 1},   // left, top
		6: {ay: 1, bx: -1},  // right, top
		7: {ay: -1, bx: -1}, // right, bottom
		8: {ay: -1, bx: 1},  // left, bottom
	}[orientation]
}

// upright is a stored size turned upright.
func (t turn) upright(size image.Point) image.Point {
	if t.ax == 0 {
		return image.Pt(size.Y, size.X)
	}
	return size
}

// over fits the turn to a stored size, so that place can be asked.
func (t turn) over(size image.Point) turn {
	t.stride = t.upright(size).X
	at := t.corner(size)
	t.origin = at.Y*t.stride + at.X
	return t
}

// corner is the upright place of stored (0, 0).
func (t turn) corner(size image.Point) (at image.Point) {
	if t.ax+t.bx < 0 {
		at.X = t.upright(size).X - 1
	}
	if t.ay+t.by < 0 {
		at.Y = t.upright(size).Y - 1
	}
	return at
}

// place is the upright index of a stored pixel.
func (t *turn) place(x, y int) int {
	return t.origin + x*(t.ay*t.stride+t.ax) + y*(t.by*t.stride+t.bx)
}

// storedCrop takes a crop in upright pixels back to the stored picture.
func (t turn) storedCrop(crop image.Rectangle, stored image.Point) image.Rectangle {
	origin := t.corner(stored)
	back := func(p image.Point) image.Point { // the turn's inverse is its transpose
		p = p.Sub(origin)
		return image.Pt(p.X*t.ax+p.Y*t.ay, p.X*t.bx+p.Y*t.by)
	}
	a, b := back(crop.Min), back(crop.Max.Sub(image.Pt(1, 1)))
	return image.Rect(min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X)+1, max(a.Y, b.Y)+1)
}
