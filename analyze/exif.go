package analyze

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
)

// Tags of TIFF and EXIF that are read. Source: [TIFF6] section 8, [EXIF] 4.6.
const (
	tagNewSubfileType = 254
	tagOrientation    = 274
	tagEXIF           = 34665
	tagICC            = 34675
	tagInterop        = 40965
	tagInteropIndex   = 1
	tagDNGVersion     = 50706
)

// exifData is what a photo's EXIF says that matters here.
type exifData struct {
	orientation int  // 1 to 8; 1 where it says nothing
	adobeRGB    bool // it follows the camera rule's optional colour space, interoperability index R03
}

// readEXIF reads an EXIF block, with or without its "Exif" prefix. An empty block
// is upright and no error; with an error the result is upright too.
func readEXIF(block []byte) (exifData, error) {
	e := exifData{orientation: 1}
	if len(block) == 0 {
		return e, nil
	}
	src := bytes.NewReader(bytes.TrimPrefix(block, []byte("Exif\x00\x00")))
	first, err := readIFD(src, -1)
	if err != nil {
		return e, err
	}
	e.adobeRGB = interopIsAdobe(src, first)
	return e, e.orient(first)
}

// orient takes the orientation from a directory, if it has a sound one.
func (e *exifData) orient(d directory) error {
	t, found := d.tag(tagOrientation)
	if !found {
		return nil
	}
	if n := d.number(t); n >= 1 && n <= 8 {
		e.orientation = int(n)
		return nil
	}
	return fmt.Errorf("its orientation is %d and must be 1 to 8", d.number(t))
}

// interopIsAdobe follows EXIF to its interoperability directory. Cameras set to
// Adobe RGB write "R03" there, and often no profile. Source: [DCF2].
func interopIsAdobe(src io.ReaderAt, d directory) bool {
	for _, next := range []uint16{tagEXIF, tagInterop} {
		t, found := d.tag(next)
		if !found {
			return false
		}
		var err error
		if d, err = readIFD(src, int64(d.number(t))); err != nil {
			return false
		}
	}
	t, found := d.tag(tagInteropIndex)
	return found && string(t.value[:3]) == "R03"
}

// directory is one image file directory of a TIFF or EXIF block.
type directory struct {
	order binary.ByteOrder
	tags  []tag
}

// tag is one entry; value is its value, or where it lies if longer than four bytes.
type tag struct {
	id, kind uint16
	count    uint32
	value    [4]byte
}

// readIFD reads the directory at an offset, or the first one where it is
// negative. A directory cut short gives the entries that are there: phones
// write wrong counts. Nothing is followed, so nothing can loop.
func readIFD(src io.ReaderAt, at int64) (directory, error) {
	var head [8]byte
	if _, err := src.ReadAt(head[:], 0); err != nil {
		return directory{}, errors.New("it is cut short")
	}
	var d directory
	switch string(head[:4]) {
	case "II*\x00":
		d.order = binary.LittleEndian
	case "MM\x00*":
		d.order = binary.BigEndian
	default:
		return d, errors.New("it does not begin as one")
	}
	if at < 0 {
		at = int64(d.order.Uint32(head[4:]))
	}
	var count [2]byte
	if _, err := src.ReadAt(count[:], at); err != nil {
		return d, errors.New("its directory lies past its end")
	}
	raw := make([]byte, 12*int(d.order.Uint16(count[:])))
	n, _ := src.ReadAt(raw, at+2)
	for e := raw[:n]; len(e) >= 12; e = e[12:] {
		t := tag{id: d.order.Uint16(e), kind: d.order.Uint16(e[2:]), count: d.order.Uint32(e[4:])}
		copy(t.value[:], e[8:])
		d.tags = append(d.tags, t)
	}
	return d, nil
}

func (d directory) tag(id uint16) (tag, bool) {
	for _, t := range d.tags {
		if t.id == id {
			return t, true
		}
	}
	return tag{}, false
}

// number is a tag's value as one whole number: a byte, a short or a long.
func (d directory) number(t tag) uint32 {
	switch t.kind {
	case 1:
		return uint32(t.value[0])
	case 3:
		return uint32(d.order.Uint16(t.value[:]))
	}
	return d.order.Uint32(t.value[:])
}

// refuseRaw refuses camera raw files, which are TIFF by their first bytes and
// would decode to their thumbnail.
func refuseRaw(src io.ReaderAt) error {
	d, err := readIFD(src, -1)
	if err != nil {
		return nil // the decoder says it better
	}
	reduced, _ := d.tag(tagNewSubfileType)
	if _, dng := d.tag(tagDNGVersion); dng || d.number(reduced)&1 != 0 {
		return errPlain("this is a camera raw file or a TIFF that begins with a thumbnail; develop it to JPEG, PNG or TIFF first")
	}
	return nil
}
