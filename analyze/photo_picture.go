package analyze

import (
	"image"
	"io"

	"tonewright/analyze/colour"
)

// Picture decodes the photo and returns it upright, cut to crop, at working size.
// crop is in upright pixels; an empty one means all. longSide is the longer side
// of the result, 0 meaning DefaultLongSide; a smaller photo keeps its size.
// Where the photo is transparent the ground shows through, which is added to Warnings.
//
// Pixels are averaged by area in linear light, the sum that an eye far away would
// make. A photo that ends early is an error: half a gray picture would be planned
// and painted as if it were whole.
func (p *Photo) Picture(crop image.Rectangle, longSide int, ground colour.Lab) (*Picture, error) {
	whole := image.Rect(0, 0, p.Width, p.Height)
	if crop.Empty() {
		crop = whole
	}
	if !crop.In(whole) {
		return nil, p.errorf("the crop %v reaches past the photo, which has %d × %d pixels; keep it inside", crop, p.Width, p.Height)
	}
	go levelTable() // made while the photo is decoded, which takes one core
	img, err := p.decode()
	if err != nil {
		return nil, err
	}
	t := turnOf(p.Orientation)
	stored := t.storedCrop(crop, p.stored)
	small := workingSize(stored.Size(), longSide)
	r, err := p.raster(img, stored, small)
	if err != nil {
		return nil, p.sentence(err)
	}
	pic, through := p.finish(r, small, t, ground)
	if through {
		p.warn("The photo is transparent in part; there it shows the panel's ground.")
	}
	return pic, nil
}

// WorkingSize returns the size of the Picture of a crop, before anything is decoded.
// crop and longSide are Picture's.
func (p *Photo) WorkingSize(crop image.Rectangle, longSide int) image.Point {
	if crop.Empty() {
		return workingSize(image.Pt(p.Width, p.Height), longSide)
	}
	return workingSize(crop.Size(), longSide)
}

// decode gives the stored pixels and makes sure that they are those of the header.
func (p *Photo) decode() (image.Image, error) {
	f, size, err := openRegular(p.File)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	img, err := decodePixels(p.format, io.NewSectionReader(f, 0, size))
	if err != nil {
		return nil, p.sentence(err)
	}
	if img.Bounds() != (image.Rectangle{Max: p.stored}) {
		return nil, p.errorf("its header says %d × %d pixels and its picture has %d × %d; save it again in another program",
			p.stored.X, p.stored.Y, img.Bounds().Dx(), img.Bounds().Dy())
	}
	return img, nil
}

// raster makes a decoded picture readable as light, to be reduced to small.
func (p *Photo) raster(img image.Image, crop image.Rectangle, small image.Point) (raster, error) {
	if m, ok := img.(*image.YCbCr); ok && p.light.table == nil && p.light.inks == 3 {
		return p.light.yccRaster(m, p.ycc, crop, crop.Dx() < 2*small.X)
	}
	return p.light.raster(deviceOf(img, p.ycc), crop)
}

// finish reduces the raster and writes it upright; through tells whether the ground
// shows anywhere.
func (p *Photo) finish(r raster, small image.Point, t turn, ground colour.Lab) (pic *Picture, through bool) {
	size := t.upright(small)
	pic = &Picture{Width: size.X, Height: size.Y, Lab: make([]float32, 3*size.X*size.Y), RGB: make([]uint8, 3*size.X*size.Y)}
	f := finisher{picture: pic, channels: r.channels, toSRGB: p.light.affine, ground: linearOf(ground), turn: t.over(small), levels: levelTable()}
	r.reduce(small.X, small.Y, f.row)
	return pic, f.through.Load()
}

// workingSize scales a size so that its longer side is longSide, each side to
// the nearest pixel and at least 1; it never enlarges.
func workingSize(size image.Point, longSide int) image.Point {
	if longSide <= 0 {
		longSide = DefaultLongSide
	}
	long := max(size.X, size.Y)
	if long <= longSide {
		return size
	}
	side := func(n int) int { return max(1, (2*n*longSide+long)/(2*long)) }
	return image.Pt(side(size.X), side(size.Y))
}
