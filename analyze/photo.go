package analyze

import (
	"fmt"
	"image"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
)

// DefaultLongSide is the working size: the longer side of a Picture, in pixels.
// Ours: about what a tablet shows across, and 83 dots an inch on a panel of 12 in;
// areas and values are judged on it, never fine detail. 1200 took a third more of the
// time that is not decoding and showed no more.
const DefaultLongSide = 1000

// defaultMegapixels is the largest photo that is opened unless Limits says more.
// Ours: twice the largest camera in common use, and in 8-bit colour still
// under a gigabyte.
const defaultMegapixels = 200

// Photo is an image file whose header and metadata have been read, not its pixels.
type Photo struct {
	File          string
	Width, Height int    // pixels, upright
	Orientation   int    // EXIF, 1 to 8: how the stored pixels lie; 1 is upright
	Profile       string // the colour space its numbers are in: "Display P3", "sRGB (assumed)"
	Format        string // JPEG, PNG, WebP, TIFF or HEIC
	Warnings      []string

	format format
	light  light // how its numbers become light
	ycc    ycc   // how its Y, Cb and Cr become R, G and B, where it has them
	stored image.Point
}

// Limits bounds what Open accepts; the zero value is the good default.
type Limits struct {
	Megapixels float64 // the largest photo opened, in millions of pixels; 0 means 200
}

// Open returns the photo in a file after reading its header, EXIF and colour
// profile, so that its upright size is known and its pixels are not yet decoded.
// The format is told by content, never by the file's name. A broken EXIF or
// profile is a warning; an unreadable or too large photo is an error.
func Open(file string, lim Limits) (*Photo, error) {
	f, size, err := openRegular(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	src := io.NewSectionReader(f, 0, size)
	p := &Photo{File: file, Orientation: 1}
	if p.format, err = sniff(src); err != nil {
		return nil, p.errorf("%w", err)
	}
	p.Format = p.format.String()
	h, err := readHeader(p.format, src)
	if err != nil {
		return nil, p.sentence(err)
	}
	if err := checkSize(h.size, lim); err != nil {
		return nil, p.errorf("%w", err)
	}
	p.stored, p.ycc = h.size, h.ycc
	p.warnExtension()
	p.readMetadata(src, h)
	p.Width, p.Height = h.size.X, h.size.Y
	if p.Orientation >= 5 {
		p.Width, p.Height = p.Height, p.Width
	}
	return p, nil
}

// openRegular opens an ordinary, non-empty file; anything else gets a sentence.
// The kind is looked at before opening: opening a pipe would wait for its writer.
func openRegular(file string) (*os.File, int64, error) {
	info, err := os.Stat(file)
	switch {
	case os.IsNotExist(err):
		return nil, 0, fmt.Errorf("%s: there is no such file; check the name and the folder", file)
	case err != nil:
		return nil, 0, fmt.Errorf("%s: cannot be looked at (%w); check that you may read it", file, plainCause(err))
	case info.IsDir():
		return nil, 0, fmt.Errorf("%s: this is a folder; name a photo in it", file)
	case !info.Mode().IsRegular():
		return nil, 0, fmt.Errorf("%s: this is a device or a pipe, not a file; save the photo to a file first", file)
	case info.Size() == 0:
		return nil, 0, fmt.Errorf("%s: the file is empty; copy it again from the camera", file)
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, 0, fmt.Errorf("%s: cannot be opened (%w); check that you may read it", file, plainCause(err))
	}
	return f, info.Size(), nil
}

// checkSize refuses a picture without pixels and one over the limit, by its
// header alone: a file of 100 KB can claim 900 megapixels.
func checkSize(size image.Point, lim Limits) error {
	most := lim.Megapixels
	if most == 0 {
		most = defaultMegapixels
	}
	if size.X <= 0 || size.Y <= 0 {
		return fmt.Errorf("its header says %d × %d pixels, so there is no picture in it; copy it again from the camera", size.X, size.Y)
	}
	if got := float64(size.X) * float64(size.Y) / 1e6; got > most {
		return fmt.Errorf("%d × %d pixels are %g megapixels and the limit is %g; make it smaller first, or raise the limit of plan with --megapixels",
			size.X, size.Y, math.Round(10*got)/10, most)
	}
	return nil
}

// warnExtension tells of a file whose name promises another format.
func (p *Photo) warnExtension() {
	promised, known := map[string]format{
		".jpg": formatJPEG, ".jpeg": formatJPEG, ".png": formatPNG, ".webp": formatWebP,
		".tif": formatTIFF, ".tiff": formatTIFF, ".heic": formatHEIC, ".heif": formatHEIC,
	}[strings.ToLower(filepath.Ext(p.File))]
	if known && promised != p.format {
		p.warn("The name says %s but the file is a %s; it was read as a %s.", promised, p.format, p.format)
	}
}

// readMetadata fills in the orientation and the colour space, with a warning
// for whatever cannot be used.
func (p *Photo) readMetadata(src *io.SectionReader, h header) {
	m := readMetadata(p.format, src)
	if m.iccErr != nil {
		p.warn("The photo's colour profile cannot be used (%v); its colours are taken as sRGB.", m.iccErr)
	}
	e, err := readEXIF(m.exif)
	if err != nil {
		p.warn("The photo's EXIF data cannot be used (%v); it is taken as upright.", err)
	}
	if p.format != formatHEIC { // its turns are boxes of their own, which the decoder obeys
		p.Orientation = e.orientation
	}
	p.setLight(m, e, h)
}

// setLight chooses how the photo's numbers become light.
func (p *Photo) setLight(m metadata, e exifData, h header) {
	if len(m.icc) > 0 {
		l, err := profileLight(m.icc, h.inks)
		if err == nil {
			p.light, p.Profile = l, l.name
			return
		}
		p.warn("The photo's colour profile cannot be used (%v); its colours are taken as sRGB.", err)
	}
	p.light, p.Profile = srgbLight(), "sRGB (assumed)"
	switch {
	case h.inks == 4:
		p.Profile = "CMYK without a profile, guessed"
		p.warn("The photo is in printing inks (CMYK) without a usable profile; they were turned into sRGB by the simple rule " +
			"(1 − ink) × (1 − black), so its colours are a guess: export it as sRGB for true ones.")
	case e.adobeRGB && len(m.icc) == 0 && m.iccErr == nil && h.inks == 3:
		p.light, p.Profile = adobeLight(), "Adobe RGB (by its EXIF)"
	}
}

func (p *Photo) warn(text string, args ...any) {
	p.Warnings = append(p.Warnings, fmt.Sprintf(text, args...))
}
