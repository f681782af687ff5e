// The fonts of the sheets, and what of a text they can print.

package sheet

import (
	"encoding/binary"
	"sort"
	"strings"
	"sync"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"tonewright/grid"
)

// The letters of the sheets: the Go fonts hold Latin, Greek and Cyrillic, and may be
// given away with anything.
const fontName = "Go"

// face is what is known of each letter that a font has a shape for.
type face map[rune]shape

// shape is how far a letter moves on, as a part of the letters' size, and the first letter
// that looks the same: a space that does not break is a space. Only that one is written,
// since the PDF library leaves it to chance which of two letters with one shape it keeps.
type shape struct {
	wide float64
	as   rune
}

// faces returns the regular and the bold face.
var faces = sync.OnceValue(func() [2]face { return [2]face{readFace(goregular.TTF), readFace(gobold.TTF)} })

func faceOf(bold bool) face {
	if bold {
		return faces()[1]
	}
	return faces()[0]
}

// readFace reads the letters and their widths out of a font with 16-bit codes. It panics
// on a font without: those used are built in.
// Source: [OpenType19], tables head, hhea, hmtx and cmap, format 4.
func readFace(ttf []byte) face {
	u16 := func(b []byte, at int) int { return int(binary.BigEndian.Uint16(b[at:])) }
	u32 := func(b []byte, at int) int { return int(binary.BigEndian.Uint32(b[at:])) }
	table := map[string][]byte{}
	for i := range u16(ttf, 4) {
		entry := ttf[12+16*i:]
		table[string(entry[:4])] = ttf[u32(entry, 8):][:u32(entry, 12)]
	}
	em, long := float64(u16(table["head"], 18)), u16(table["hhea"], 34)
	var codes []byte
	for i := range u16(table["cmap"], 2) {
		if at := u32(table["cmap"], 4+8*i+4); u16(table["cmap"], at) == 4 {
			codes = table["cmap"][at:]
		}
	}
	f, first := face{}, map[int]rune{}
	segments := u16(codes, 6) / 2
	for s := range segments {
		end, begin := u16(codes, 14+2*s), u16(codes, 16+2*(segments+s))
		delta, offsetAt := u16(codes, 16+2*(2*segments+s)), 16+2*(3*segments+s)
		for code := begin; code <= end && code < 0xffff; code++ {
			glyph := (code + delta) & 0xffff
			if offset := u16(codes, offsetAt); offset != 0 {
				if glyph = u16(codes, offsetAt+offset+2*(code-begin)); glyph != 0 {
					glyph = (glyph + delta) & 0xffff
				}
			}
			if glyph == 0 {
				continue
			}
			if _, known := first[glyph]; !known {
				first[glyph] = rune(code)
			}
			f[rune(code)] = shape{float64(u16(table["hmtx"], 4*min(glyph, long-1))) / em, first[glyph]}
		}
	}
	return f
}

// printable returns words with a question mark for every letter that the font has no
// shape for.
func printable(words string, bold bool) string {
	f := faceOf(bold)
	return strings.Map(func(r rune) rune {
		if s, has := f[r]; has && r >= ' ' {
			return s.as
		}
		return '?'
	}, strings.ToValidUTF8(words, "?"))
}

// widthOf returns how long words are in letters of the given size.
func widthOf(words string, size grid.Millimetres, bold bool) grid.Millimetres {
	f := faceOf(bold)
	sum := 0.0
	for _, r := range printable(words, bold) {
		sum += f[r].wide
	}
	return size * grid.Millimetres(sum)
}

// wrap breaks words into lines of at most a width, at plain spaces only; a word longer than
// that has a line of its own.
func wrap(words string, width, size grid.Millimetres, bold bool) []string {
	var lines []string
	now := ""
	for _, w := range strings.FieldsFunc(words, func(r rune) bool { return r == ' ' }) {
		longer := strings.TrimSpace(now + " " + w)
		if now != "" && widthOf(longer, size, bold) > width {
			lines = append(lines, now)
			longer = w
		}
		now = longer
	}
	if now != "" {
		lines = append(lines, now)
	}
	return lines
}

// shorten cuts words to a width, with an ellipsis where something was cut.
func shorten(words string, width, size grid.Millimetres, bold bool) string {
	if widthOf(words, size, bold) <= width {
		return words
	}
	letters := []rune(words)
	cut := sort.Search(len(letters), func(n int) bool { // a name may be as long as a book
		return widthOf(string(letters[:n+1])+"…", size, bold) > width
	})
	return strings.TrimSpace(string(letters[:cut])) + "…"
}
