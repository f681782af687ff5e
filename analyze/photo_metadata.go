package analyze

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"errors"
	"io"
)

// Bounds on what a file may carry beside its pixels.
const (
	maxICC  = 16 << 20 // the largest printing profiles have a few megabytes
	maxEXIF = 1 << 20  // JPEG holds 64 KiB; other containers name no limit
)

// maxChunks is how many chunks of a container are walked. Ours: a photo has some tens,
// a PNG of 200 megapixels some ten thousand.
const maxChunks = 50_000

// maxProfiles is how many profiles of a PNG are tried, where the first is broken.
const maxProfiles = 4

var (
	errCutShort = errors.New("it is cut short")
	errTooLarge = errors.New("it is too large")
)

// metadata is what a container carries beside the pixels.
type metadata struct {
	exif, icc []byte
	iccErr    error // there is a profile and it cannot be got out
}

// readMetadata walks a container's chunks. It never fails: what is broken stays
// out, and whether the pixels are sound is the decoder's to say.
func readMetadata(f format, src *io.SectionReader) metadata {
	switch f {
	case formatJPEG:
		return jpegMetadata(src)
	case formatPNG:
		return pngMetadata(src)
	case formatWebP:
		return webpMetadata(src)
	case formatTIFF:
		return tiffMetadata(src)
	}
	return heicMetadata(src)
}

// piece reads length bytes at an offset, if they are few enough and all there.
func piece(src *io.SectionReader, at, length, most int64) ([]byte, error) {
	switch {
	case length > most:
		return nil, errTooLarge
	case at < 0 || length < 0 || at > src.Size()-length:
		return nil, errCutShort
	}
	b := make([]byte, length)
	_, err := src.ReadAt(b, at)
	if err == io.EOF {
		err = nil
	}
	return b, err
}

// jpegMetadata reads the application segments before the first scan.
// Source: [T81] B.1.1; EXIF in APP1, [EXIF] 4.5.4; ICC in APP2, [ICC4] B.4.
func jpegMetadata(src *io.SectionReader) (m metadata) {
	var parts [256][]byte // ICC chunks, counted from 1
	var total int
	at := int64(2)
	for range maxChunks {
		head, err := piece(src, at, 4, 4)
		if err != nil || head[0] != 0xff || head[1] == 0xda || head[1] == 0xd9 {
			break
		}
		if head[1] == 0xff { // a fill byte before the marker
			at++
			continue
		}
		length := int64(binary.BigEndian.Uint16(head[2:]))
		body, err := piece(src, at+4, length-2, 1<<16)
		if err != nil {
			break
		}
		at += 2 + length
		switch {
		case head[1] == 0xe1 && m.exif == nil && bytes.HasPrefix(body, []byte("Exif\x00\x00")):
			m.exif = body
		case head[1] == 0xe2 && len(body) >= 14 && bytes.HasPrefix(body, []byte("ICC_PROFILE\x00")):
			parts[body[12]], total = body[14:], int(body[13])
		}
	}
	m.icc, m.iccErr = joinParts(parts[:], total)
	return m
}

// joinParts puts the chunks of a profile together, 1 to total.
func joinParts(parts [][]byte, total int) ([]byte, error) {
	var whole []byte
	for i := 1; i <= total; i++ {
		if parts[i] == nil {
			return nil, errors.New("a part of it is missing")
		}
		whole = append(whole, parts[i]...)
	}
	return whole, nil
}

// pngMetadata walks all chunks, since eXIf may stand after the pixels.
// Source: [PNG] 5.3 and 11.3.
func pngMetadata(src *io.SectionReader) (m metadata) {
	at, profiles := int64(8), 0
	for range maxChunks {
		head, err := piece(src, at, 8, 8)
		if err != nil || head[4] < 'A' { // the types are letters
			return m
		}
		length := int64(binary.BigEndian.Uint32(head))
		switch string(head[4:]) {
		case "iCCP":
			if profiles++; m.icc == nil && profiles <= maxProfiles {
				m.icc, m.iccErr = unpackICC(piece(src, at+8, length, maxICC))
			}
		case "eXIf":
			m.exif, _ = piece(src, at+8, length, maxEXIF)
		case "IEND":
			return m
		}
		at += 12 + length
	}
	return m
}

// unpackICC takes the profile out of an iCCP chunk: a name, a zero, the method, zlib.
func unpackICC(chunk []byte, err error) ([]byte, error) {
	if err != nil {
		return nil, err
	}
	_, rest, found := bytes.Cut(chunk, []byte{0})
	if !found || len(rest) == 0 {
		return nil, errCutShort
	}
	z, err := zlib.NewReader(bytes.NewReader(rest[1:]))
	if err != nil {
		return nil, errors.New("it cannot be unpacked")
	}
	icc, err := io.ReadAll(io.LimitReader(z, maxICC+1))
	switch {
	case err != nil:
		return nil, errors.New("it cannot be unpacked")
	case len(icc) > maxICC:
		return nil, errTooLarge
	}
	return icc, nil
}

// pngIsGray reads the colour type: gray with alpha decodes to RGB, yet its
// profile is a gray one.
func pngIsGray(src *io.SectionReader) bool {
	kind, err := piece(src, 25, 1, 1)
	return err == nil && (kind[0] == 0 || kind[0] == 4)
}

// webpMetadata walks the chunks of the RIFF container. Source: [RFC9649] 2.3 to 2.7.
func webpMetadata(src *io.SectionReader) (m metadata) {
	at := int64(12)
	for range maxChunks {
		head, err := piece(src, at, 8, 8)
		if err != nil || head[0] < 'A' { // the names are letters
			return m
		}
		length := int64(binary.LittleEndian.Uint32(head[4:]))
		switch string(head[:4]) {
		case "ICCP":
			m.icc, m.iccErr = piece(src, at+8, length, maxICC)
		case "EXIF":
			m.exif, _ = piece(src, at+8, length, maxEXIF)
		}
		at += 8 + length + length%2
	}
	return m
}

// tiffMetadata reads the first directory, which is EXIF's own form: the block
// handed on is the file's head with that directory, and the profile is a tag.
func tiffMetadata(src *io.SectionReader) (m metadata) {
	d, err := readIFD(src, -1)
	if err != nil {
		return m
	}
	if t, found := d.tag(tagICC); found {
		m.icc, m.iccErr = piece(src, int64(d.number(tag{kind: 4, value: t.value})), int64(t.count), maxICC)
	}
	if t, found := d.tag(tagOrientation); found {
		m.exif = orientationBlock(d, t)
	}
	return m
}

// orientationBlock writes a smallest EXIF block with one tag.
func orientationBlock(d directory, t tag) []byte {
	b := []byte("II*\x00\x08\x00\x00\x00\x01\x00")
	b = binary.LittleEndian.AppendUint16(b, t.id)
	b = binary.LittleEndian.AppendUint16(b, 4)
	b = binary.LittleEndian.AppendUint32(b, 1)
	return binary.LittleEndian.AppendUint32(b, d.number(t))
}
