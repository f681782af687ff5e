package analyze

import (
	"errors"
	"image"
	"image/color"
)

// device reads a picture's numbers as they are stored: inks of them a pixel, and
// alpha after them if it has alpha, all 0 to 65535 and not multiplied by alpha.
type device struct {
	inks  int
	alpha bool
	deep  bool                         // more than 8 bits
	span  func(from, to int) rowReader // a reader of pixels from to to, one for each worker
}

// rowReader reads row y.
type rowReader func(y int, row []uint16)

// per is how many numbers a pixel has in a row.
func (d device) per() int {
	if d.alpha {
		return d.inks + 1
	}
	return d.inks
}

// deviceOf picks the reader for the picture that a decoder gave.
func deviceOf(img image.Image, y ycc) device {
	switch m := img.(type) {
	case *image.Gray:
		return device{inks: 1, span: bytesOf(m.Pix, m.Stride, 1)}
	case *image.Gray16:
		return device{inks: 1, deep: true, span: wordsOf(m.Pix, m.Stride, 1)}
	case *image.CMYK:
		return device{inks: 4, span: bytesOf(m.Pix, m.Stride, 4)}
	case *image.NRGBA:
		return device{inks: 3, alpha: true, span: bytesOf(m.Pix, m.Stride, 4)}
	case *image.NRGBA64:
		return device{inks: 3, alpha: true, deep: true, span: wordsOf(m.Pix, m.Stride, 4)}
	case *image.RGBA:
		return device{inks: 3, alpha: true, deep: !m.Opaque(), span: unmultiplied(bytesOf(m.Pix, m.Stride, 4))}
	case *image.RGBA64:
		return device{inks: 3, alpha: true, deep: true, span: unmultiplied(wordsOf(m.Pix, m.Stride, 4))}
	case *image.Paletted:
		return paletteDevice(m)
	case *image.YCbCr:
		return device{inks: 3, span: y.reader(m)}
	case *image.NYCbCrA:
		return alphaDevice(m, y)
	}
	return anyDevice(img)
}

// bytesOf reads 8 bits a number: 255 becomes 65535.
func bytesOf(pix []uint8, stride, per int) func(from, to int) rowReader {
	return func(from, to int) rowReader {
		return func(y int, row []uint16) {
			for i, v := range pix[y*stride+from*per : y*stride+to*per] {
				row[i] = uint16(v) * 257
			}
		}
	}
}

// wordsOf reads 16 bits a number, high byte first.
func wordsOf(pix []uint8, stride, per int) func(from, to int) rowReader {
	return func(from, to int) rowReader {
		return func(y int, row []uint16) {
			p := pix[y*stride+2*from*per : y*stride+2*to*per]
			for i := range row {
				row[i] = uint16(p[2*i])<<8 | uint16(p[2*i+1])
			}
		}
	}
}

// unmultiplied divides red, green and blue by alpha, four numbers a pixel.
func unmultiplied(span func(from, to int) rowReader) func(from, to int) rowReader {
	return func(from, to int) rowReader {
		read := span(from, to)
		return func(y int, row []uint16) {
			read(y, row)
			for p := row; len(p) >= 4; p = p[4:] {
				a := uint32(p[3])
				if a == 0 || a == 0xffff {
					continue
				}
				for c := range 3 {
					p[c] = uint16(min(0xffff, (uint32(p[c])*0xffff+a/2)/a))
				}
			}
		}
	}
}

func paletteDevice(m *image.Paletted) device {
	var colours [256][4]uint16 // an index past the palette is transparent black
	for i, c := range m.Palette {
		n := color.NRGBA64Model.Convert(c).(color.NRGBA64)
		colours[i] = [4]uint16{n.R, n.G, n.B, n.A}
	}
	return device{inks: 3, alpha: true, deep: true, span: func(from, to int) rowReader {
		return func(y int, row []uint16) {
			for i, index := range m.Pix[y*m.Stride+from : y*m.Stride+to] {
				copy(row[4*i:4*i+4], colours[index][:])
			}
		}
	}}
}

func alphaDevice(m *image.NYCbCrA, y ycc) device {
	plain := y.reader(&m.YCbCr)
	return device{inks: 3, alpha: true, span: func(from, to int) rowReader {
		read := plain(from, to)
		return func(y int, row []uint16) {
			read(y, row)
			alpha := m.A[m.AOffset(from, y):]
			for i := to - from - 1; i >= 0; i-- { // backwards, for the row is spread out in place
				row[4*i], row[4*i+1], row[4*i+2], row[4*i+3] = row[3*i], row[3*i+1], row[3*i+2], uint16(alpha[i])*257
			}
		}
	}}
}

// anyDevice reads whatever picture there may be, slowly.
func anyDevice(img image.Image) device {
	return device{inks: 3, alpha: true, deep: true, span: func(from, to int) rowReader {
		return func(y int, row []uint16) {
			for x := from; x < to; x++ {
				n := color.NRGBA64Model.Convert(img.At(x, y)).(color.NRGBA64)
				copy(row[4*(x-from):], []uint16{n.R, n.G, n.B, n.A})
			}
		}
	}}
}

// inkless turns printing inks into red, green and blue by the simple rule
// (1 − ink)·(1 − black), for a photo whose inks no profile explains.
func (d device) inkless() device {
	span := d.span
	return device{inks: 3, deep: true, span: func(from, to int) rowReader {
		read, inks := span(from, to), make([]uint16, 4*(to-from))
		return func(y int, row []uint16) {
			read(y, inks)
			for i := range to - from {
				paper := 0xffff - uint32(inks[4*i+3])
				for c := range 3 {
					row[3*i+c] = uint16((0xffff - uint32(inks[4*i+c])) * paper / 0xffff)
				}
			}
		}
	}}
}

// raster reads the crop of a device as light, multiplied by alpha where there is any.
func (l light) raster(d device, crop image.Rectangle) (raster, error) {
	d, toLight, err := l.rows(d)
	if err != nil {
		return raster{}, err
	}
	r := raster{width: crop.Dx(), height: crop.Dy(), channels: 3}
	if d.alpha {
		r.channels = 4
	}
	r.across = func(columns []span) func(int, []float32) {
		read, numbers := d.span(crop.Min.X, crop.Max.X), make([]uint16, d.per()*r.width)
		pixels := make([]float32, r.channels*r.width)
		return func(line int, sums []float32) {
			read(crop.Min.Y+line, numbers)
			toLight(numbers, pixels)
			sumAcross(columns, r.channels, pixels, sums)
		}
	}
	return r, nil
}

// rows is the device that the light can read, and what turns its rows into light.
func (l light) rows(d device) (device, func(numbers []uint16, row []float32), error) {
	if d.inks == 4 && l.inks == 3 {
		d = d.inkless()
	}
	if d.inks != l.inks && l.inks+d.inks != 4 { // gray by an RGB profile, and gray stored as RGB, are fine
		return d, nil, errors.New("its header and its picture disagree on what its colours are made of")
	}
	toLight, err := l.rowOf(d)
	return d, toLight, err
}

// rowOf turns a row of numbers into light.
func (l light) rowOf(d device) (func(numbers []uint16, row []float32), error) {
	one, err := l.pixelOf(d)
	if err != nil {
		return nil, err
	}
	per := d.per()
	if !d.alpha {
		return func(numbers []uint16, row []float32) {
			for ; len(numbers) >= per; numbers, row = numbers[per:], row[3:] {
				row[0], row[1], row[2] = one(numbers)
			}
		}, nil
	}
	return func(numbers []uint16, row []float32) {
		for ; len(numbers) >= per; numbers, row = numbers[per:], row[4:] {
			a := float32(numbers[d.inks]) / 0xffff
			r, g, b := one(numbers)
			row[0], row[1], row[2], row[3] = r*a, g*a, b*a, a
		}
	}, nil
}

// pixelOf turns one pixel's numbers into light.
func (l light) pixelOf(d device) (func(n []uint16) (r, g, b float32), error) {
	second, third := 1, 2
	if d.inks == 1 || l.inks == 1 { // gray has one number for all three
		second, third = 0, 0
	}
	if l.table != nil {
		return func(n []uint16) (r, g, b float32) {
			v := [4]float32{float32(n[0]) / 0xffff, float32(n[second]) / 0xffff, float32(n[third]) / 0xffff}
			if d.inks == 4 {
				v[3] = float32(n[3]) / 0xffff
			}
			x := l.table.at(v).light()
			return float32(x[0]), float32(x[1]), float32(x[2])
		}, nil
	}
	steps, shift := 256, 8
	if d.deep {
		steps, shift = 65536, 0
	}
	c, err := l.curves(steps)
	return func(n []uint16) (r, g, b float32) {
		return c[0][n[0]>>shift], c[1][n[second]>>shift], c[2][n[third]>>shift]
	}, err
}
