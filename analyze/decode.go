package analyze

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"io"

	"github.com/gen2brain/heic"
	"golang.org/x/image/tiff"
	"golang.org/x/image/webp"
)

// format is one of the file formats a photo may be in.
type format int

const (
	formatJPEG format = iota
	formatPNG
	formatWebP
	formatTIFF
	formatHEIC
)

func (f format) String() string { return [...]string{"JPEG", "PNG", "WebP", "TIFF", "HEIC"}[f] }

// maxHEIC bounds a HEIC file, which its decoder needs whole in memory.
// Ours: some fifty times the file of a 24-megapixel phone photo.
const maxHEIC = 128 << 20

// known tells other formats by how they begin, so that the error can name them.
var known = []struct {
	at    int
	magic string
	name  string
}{
	{0, "GIF8", "a GIF"},
	{0, "BM", "a BMP"},
	{0, "8BPS", "a layered Photoshop file"},
	{0, "%PDF", "a PDF"},
	{4, "ftypavif", "an AVIF"},
	{4, "ftypcrx", "a camera raw file"},
	{0, "FUJIFILMCCD-RAW", "a camera raw file"},
	{0, "\xff\x0a", "a JPEG XL"},
	{0, "\x00\x00\x00\x0cJXL ", "a JPEG XL"},
}

// sniff tells the format by the file's first bytes.
func sniff(src io.ReaderAt) (format, error) {
	head := make([]byte, 64)
	n, _ := src.ReadAt(head, 0)
	head = head[:n]
	begins := func(at int, magic string) bool { return n >= at && bytes.HasPrefix(head[at:], []byte(magic)) }
	switch {
	case begins(0, "\xff\xd8"):
		return formatJPEG, nil
	case begins(0, "\x89PNG\r\n\x1a\n"):
		return formatPNG, nil
	case begins(0, "RIFF") && begins(8, "WEBP"):
		return formatWebP, nil
	case begins(0, "II*\x00"), begins(0, "MM\x00*"):
		return formatTIFF, nil
	case isHEIC(head):
		return formatHEIC, nil
	}
	for _, k := range known {
		if begins(k.at, k.magic) {
			return 0, errPlain("this is " + k.name + ", which is not read; save it as JPEG, PNG, WebP, TIFF or HEIC")
		}
	}
	return 0, errPlain("this is not a photo in a format that is read (JPEG, PNG, WebP, TIFF, HEIC); save it as one of these")
}

// isHEIC looks for the brand of HEVC still pictures among those the file lists.
func isHEIC(head []byte) bool {
	if len(head) < 12 || string(head[4:8]) != "ftyp" {
		return false
	}
	for at := 8; at+4 <= len(head); at += 4 {
		if b := string(head[at : at+4]); b == "heic" || b == "heix" {
			return true
		}
	}
	return false
}

// header is what a photo's first bytes promise.
type header struct {
	size image.Point // as stored, before EXIF; for HEIC upright
	inks int         // 1 gray, 3 RGB, 4 CMYK
	ycc  ycc
}

// readHeader reads size and kind without decoding; a panic in a decoder is an error.
func readHeader(f format, src *io.SectionReader) (h header, err error) {
	defer contain(&err)
	if f == formatHEIC {
		return heicHeader(src)
	}
	var c image.Config
	switch r := io.NewSectionReader(src, 0, src.Size()); f {
	case formatJPEG:
		c, err = jpeg.DecodeConfig(r)
	case formatPNG:
		c, err = png.DecodeConfig(r)
	case formatWebP:
		c, err = webp.DecodeConfig(r)
	case formatTIFF:
		if err = refuseRaw(src); err == nil {
			c, err = tiff.DecodeConfig(r)
		}
	}
	h = header{size: image.Pt(c.Width, c.Height), inks: inksOf(c.ColorModel), ycc: yccJPEG}
	if f == formatWebP {
		h.ycc = yccVideo
	}
	if f == formatPNG && err == nil && pngIsGray(src) {
		h.inks = 1
	}
	return h, err
}

// inksOf is how many numbers a pixel of a model has, alpha aside.
func inksOf(m color.Model) int {
	switch m {
	case color.GrayModel, color.Gray16Model:
		return 1
	case color.CMYKModel:
		return 4
	}
	return 3
}

// decodePixels decodes the whole picture as stored. A panic in a decoder, which
// only a hostile file can cause, is an error.
func decodePixels(f format, src *io.SectionReader) (img image.Image, err error) {
	defer contain(&err)
	switch f {
	case formatJPEG:
		return jpeg.Decode(src)
	case formatPNG:
		return png.Decode(src)
	case formatWebP:
		return webp.Decode(src)
	case formatTIFF:
		return tiff.Decode(src)
	}
	if src.Size() > maxHEIC {
		return nil, errPlain(fmt.Sprintf("the HEIC file has %d MiB and at most %d are read; save it as a JPEG", src.Size()>>20, maxHEIC>>20))
	}
	return heic.Decode(src)
}

// contain turns a panic into an error. It stands at the border to other
// people's decoders and nowhere else.
func contain(err *error) {
	if r := recover(); r != nil {
		*err = fmt.Errorf("its decoder failed: %v", r)
	}
}
