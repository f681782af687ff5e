package analyze

import (
	"encoding/binary"
	"errors"
	"image"
	"io"
)

// maxHEICMeta bounds the box that says what is in a HEIC file; a phone's is 4 KiB.
const maxHEICMeta = 4 << 20

// heicBoxes is what the meta box of a HEIC file says of its primary picture.
type heicBoxes struct {
	properties []heicBox // of the primary picture, in the order they apply
	mediaEnd   int64     // where the last byte of any picture lies
}

// heicBox is one box of the ISO base media file format.
type heicBox struct {
	kind string
	body []byte
}

var errBoxes = errors.New("its boxes are broken")

// readHEIC finds the meta box and in it the primary picture's properties.
// It reads no pixels and starts no decoder. Source: [HEIF] 6 and 9; [ISOBMFF] 4.2, 8.11.
func readHEIC(src *io.SectionReader) (heicBoxes, error) {
	meta, err := findMeta(src)
	if err != nil {
		return heicBoxes{}, err
	}
	if len(meta) < 4 {
		return heicBoxes{}, errBoxes
	}
	inner := boxes(meta[4:])
	primary, err := primaryItem(innerBox(inner, "pitm"))
	if err != nil {
		return heicBoxes{}, err
	}
	iprp := boxes(innerBox(inner, "iprp"))
	shared := boxes(innerBox(iprp, "ipco"))
	var h heicBoxes
	for _, i := range associations(innerBox(iprp, "ipma"), primary) {
		if i >= 1 && i <= len(shared) {
			h.properties = append(h.properties, shared[i-1])
		}
	}
	h.mediaEnd = mediaEnd(innerBox(inner, "iloc"))
	return h, nil
}

// findMeta walks the outermost boxes to the one called meta.
func findMeta(src *io.SectionReader) ([]byte, error) {
	for at := int64(0); ; {
		head, err := piece(src, at, 8, 8)
		if err != nil {
			return nil, io.ErrUnexpectedEOF
		}
		length, lead := int64(binary.BigEndian.Uint32(head)), int64(8)
		if length == 1 {
			wide, err := piece(src, at+8, 8, 8)
			if err != nil {
				return nil, io.ErrUnexpectedEOF
			}
			length, lead = int64(binary.BigEndian.Uint64(wide)), 16
		}
		if length < lead {
			return nil, errBoxes
		}
		if string(head[4:]) == "meta" {
			body, err := piece(src, at+lead, length-lead, maxHEICMeta)
			if err == errCutShort {
				err = io.ErrUnexpectedEOF
			}
			return body, err
		}
		at += length
	}
}

// boxes splits a body into the boxes in it; a broken one ends the list.
func boxes(body []byte) (all []heicBox) {
	for len(body) >= 8 {
		length := int64(binary.BigEndian.Uint32(body))
		if length == 0 {
			length = int64(len(body))
		}
		if length < 8 || length > int64(len(body)) {
			return all
		}
		all = append(all, heicBox{string(body[4:8]), body[8:length]})
		body = body[length:]
	}
	return all
}

func innerBox(all []heicBox, kind string) []byte {
	for _, b := range all {
		if b.kind == kind {
			return b.body
		}
	}
	return nil
}

// fields reads numbers from a box one after another; past its end all are 0.
type fields struct{ rest []byte }

func (f *fields) next(size int) (n uint64) {
	if size > len(f.rest) {
		f.rest = nil
		return 0
	}
	for _, b := range f.rest[:size] {
		n = n<<8 | uint64(b)
	}
	f.rest = f.rest[size:]
	return n
}

func primaryItem(pitm []byte) (uint64, error) {
	if len(pitm) < 6 {
		return 0, errBoxes
	}
	f := fields{pitm}
	if f.next(4)>>24 == 0 {
		return f.next(2), nil
	}
	return f.next(4), nil
}

// associations lists which of the shared properties an item has, counted from 1.
func associations(ipma []byte, item uint64) (list []int) {
	f := fields{ipma}
	version := f.next(4)
	wide := version&1 == 1
	for n := f.next(4); n > 0 && len(f.rest) > 0; n-- {
		id := f.next(2)
		if version>>24 > 0 {
			id = id<<16 | f.next(2)
		}
		for k := f.next(1); k > 0; k-- {
			index := f.next(1) & 0x7f
			if wide {
				index = index<<8 | f.next(1)
			}
			if id == item {
				list = append(list, int(index))
			}
		}
	}
	return list
}

// mediaEnd is the furthest byte of the file that any item in iloc needs.
func mediaEnd(iloc []byte) (end int64) {
	f := fields{iloc}
	version := f.next(4) >> 24
	sizes := f.next(2)
	offsetSize, lengthSize, baseSize, indexSize := int(sizes>>12), int(sizes>>8&15), int(sizes>>4&15), int(sizes&15)
	idSize := 2
	if version == 2 {
		idSize = 4
	}
	for n := f.next(idSize); n > 0 && len(f.rest) > 0; n-- {
		f.next(idSize)
		inFile := true
		if version > 0 {
			inFile = f.next(2)&15 == 0
		}
		f.next(2)
		base := f.next(baseSize)
		for k := f.next(2); k > 0 && len(f.rest) > 0; k-- {
			if version > 0 {
				f.next(indexSize)
			}
			at, length := f.next(offsetSize), f.next(lengthSize)
			if sum := int64(base + at + length); inFile && sum > end {
				end = sum
			}
		}
	}
	return end
}

// heicHeader gives the upright size and how the picture's colours are coded.
func heicHeader(src *io.SectionReader) (header, error) {
	h := header{inks: 3, ycc: yccJPEG}
	b, err := readHEIC(src)
	if err != nil {
		return h, err
	}
	if b.mediaEnd > src.Size() {
		return h, io.ErrUnexpectedEOF
	}
	for _, p := range b.properties {
		f := fields{p.body}
		switch p.kind {
		case "ispe":
			f.next(4)
			h.size = image.Pt(int(f.next(4)), int(f.next(4)))
		case "clap":
			h.size = cleanAperture(&f, h.size)
		case "irot":
			if f.next(1)&1 == 1 {
				h.size = image.Pt(h.size.Y, h.size.X)
			}
		case "colr":
			if f.next(4) == 0x6e636c78 { // "nclx"
				f.next(4) // primaries and transfer
				h.ycc = yccOf(int(f.next(2)), f.next(1)>>7 == 1)
			}
		}
	}
	return h, nil
}

// cleanAperture is the size that a clap box cuts a picture to.
func cleanAperture(f *fields, whole image.Point) image.Point {
	side := func(most int) int {
		n, d := f.next(4), f.next(4)
		if d == 0 || n/d == 0 || n/d > uint64(most) {
			return most
		}
		return int(n / d)
	}
	return image.Pt(side(whole.X), side(whole.Y))
}

// heicMetadata takes the ICC profile of the primary picture. Its EXIF is not
// needed: a HEIC picture is turned by its irot and imir boxes.
func heicMetadata(src *io.SectionReader) (m metadata) {
	b, err := readHEIC(src)
	if err != nil {
		return m
	}
	for _, p := range b.properties {
		if p.kind == "colr" && len(p.body) > 4 && (string(p.body[:4]) == "prof" || string(p.body[:4]) == "rICC") {
			m.icc = p.body[4:]
		}
	}
	return m
}
