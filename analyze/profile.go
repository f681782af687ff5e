package analyze

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/kovidgoyal/imaging/prism/meta/icc"
)

// light says how a photo's numbers become light. Numbers go, one by one through
// curve or together through table, to a space in which light adds up; there the
// picture is averaged; affine then takes the averages to linear sRGB. One of
// curve and table is nil.
type light struct {
	name   string
	inks   int                                  // numbers it takes: 1 gray, 3 RGB, 4 CMYK
	curve  func(channel int, v float64) float64 // of channel 0 to 2; gray feeds all three
	table  *table
	affine affine
}

// srgbLight takes numbers as sRGB; also gray ones, as red = green = blue.
func srgbLight() light {
	return light{name: "sRGB", inks: 3, curve: func(_ int, v float64) float64 { return srgbToLinear(v) }, affine: identity}
}

// adobeLight is for cameras that say Adobe RGB and embed no profile.
// Source: [AdobeRGB] 4.3: gamma 2 + 51/256, white D65.
func adobeLight() light {
	gamma := func(_ int, v float64) float64 { return math.Pow(v, 2+51.0/256) }
	return light{name: "Adobe RGB (1998)", inks: 3, curve: gamma, affine: affine{m: xyzToSRGB.times(rgbToXYZ(adobePrimaries))}}
}

// profileLight reads an embedded ICC profile for a photo with so many inks.
// A gray photo may carry an RGB profile. The error says why it is of no use.
//
// Colours go by the perceptual intent with black-point compensation, which is
// what reference software does when a v4 sRGB profile is the destination.
func profileLight(data []byte, inks int) (l light, err error) {
	defer contain(&err)
	if err := checkICC(data); err != nil {
		return l, err
	}
	p, err := icc.DecodeProfile(bytes.NewReader(data))
	if err != nil {
		return l, errors.New("it is broken")
	}
	have := map[icc.ColorSpace]int{icc.ColorSpaceGray: 1, icc.ColorSpaceRGB: 3, icc.ColorSpaceCMYK: 4}[p.Header.DataColorSpace]
	if have != inks && (have != 3 || inks != 1) {
		return l, fmt.Errorf("it is for %s and the picture is %s", inkName(have), inkName(inks))
	}
	name := profileName(p, have)
	if have == 3 && p.IsSRGB() {
		return srgbLight(), nil
	}
	xyz, err := profileXYZ(p, have)
	if err != nil {
		return l, errors.New("it is broken")
	}
	l = lightOf(xyz, have)
	l.name = name
	l.affine = xyzToSRGB50.after(blackToZero(p.BlackPoint(icc.PerceptualRenderingIntent, nil))).after(l.affine)
	return l, l.check()
}

func inkName(inks int) string { return map[int]string{1: "gray", 3: "RGB", 4: "CMYK"}[inks] }

// profileXYZ is the profile as a function from device numbers, 0 to 1, to XYZ
// under D50 with Y of the white 1.
func profileXYZ(p *icc.Profile, inks int) (func([4]float64) [3]float64, error) {
	pipe, err := p.CreateTransformerToPCS(icc.PerceptualRenderingIntent, inks, true)
	if err != nil {
		return nil, err
	}
	isLab := p.Header.ProfileConnectionSpace == icc.ColorSpaceLab
	return func(v [4]float64) [3]float64 {
		var out [4]float64
		pipe.TransformGeneral(out[:], v[:])
		if isLab {
			return xyzOfLab50(out[0], out[1], out[2])
		}
		return [3]float64{out[0], out[1], out[2]}
	}, nil
}

// blackToZero maps a profile's black, XYZ under D50, to no light and leaves white alone.
// Source: [ISO18619]: a scaling of each of X, Y and Z along the line from white.
func blackToZero(black icc.XYZType) affine {
	var a affine
	for i, b := range [3]float64{black.X, black.Y, black.Z} {
		w := d50[i]
		a.m[i][i] = w / (w - b)
		a.offset[i] = -w * b / (w - b)
	}
	return a
}

// lightOf finds the cheapest exact form of a profile. Gray: three curves. RGB in
// which each channel adds its own share of light, as matrix profiles do: three
// curves and a matrix. Anything else: a table.
func lightOf(xyz func([4]float64) [3]float64, inks int) light {
	if inks == 1 {
		return light{inks: 1, affine: identity, curve: func(c int, v float64) float64 { return xyz([4]float64{v})[c] }}
	}
	if inks == 3 {
		if l, adds := additive(xyz); adds {
			return l
		}
	}
	return light{inks: inks, affine: tableAffine, table: newTable(xyz, inks)}
}

// additive takes three channels apart by measuring each alone and tests whether
// they add up again.
func additive(xyz func([4]float64) [3]float64) (light, bool) {
	black := xyz([4]float64{})
	share := func(c int, v float64) (s [3]float64) {
		var in [4]float64
		in[c] = v
		out := xyz(in)
		for i := range s {
			s[i] = out[i] - black[i]
		}
		return s
	}
	l := light{inks: 3, affine: affine{offset: black}}
	var whole [3]float64
	for c := range 3 {
		full := share(c, 1)
		for i := range 3 {
			l.affine.m[i][c] = full[i]
		}
		whole[c] = full[0] + full[1] + full[2]
	}
	l.curve = func(c int, v float64) float64 {
		s := share(c, v)
		return (s[0] + s[1] + s[2]) / whole[c]
	}
	return l, l.agrees(xyz)
}

// agrees compares curves and matrix with the profile on a 5 × 5 × 5 lattice.
func (l light) agrees(xyz func([4]float64) [3]float64) bool {
	const tolerance = 1e-6 // a twentieth of the least step of a 16-bit profile
	for i := range 125 {
		v := [4]float64{float64(i%5) / 4, float64(i/5%5) / 4, float64(i/25) / 4}
		want, got := xyz(v), l.affine.apply([3]float64{l.curve(0, v[0]), l.curve(1, v[1]), l.curve(2, v[2])})
		for k := range 3 {
			if !(math.Abs(got[k]-want[k]) <= tolerance) {
				return false
			}
		}
	}
	return true
}

// check refuses a profile that gives no sensible light somewhere: in its curves or
// its table, and at the corners and middle of what the device can show, as linear sRGB.
func (l light) check() error {
	if l.table != nil {
		if err := sensible(l.table.f); err != nil {
			return err
		}
	} else if _, err := l.curves(256); err != nil {
		return err
	}
	lightest := 0.0
	for n := range 1 << l.inks {
		for _, full := range []float64{0.5, 1} {
			var v [4]float64
			for k := range l.inks {
				v[k] = full * float64(n>>k&1)
			}
			rgb := l.affine.apply(l.of(v))
			if err := sensible([]float32{float32(rgb[0]), float32(rgb[1]), float32(rgb[2])}); err != nil {
				return err
			}
			lightest = max(lightest, min(rgb[0], rgb[1], rgb[2]))
		}
	}
	if lightest < 0.2 {
		return errSenseless // white is not white
	}
	return nil
}

// of is the light of device numbers, before the affine map.
func (l light) of(v [4]float64) [3]float64 {
	if l.table != nil {
		x := l.table.at([4]float32{float32(v[0]), float32(v[1]), float32(v[2]), float32(v[3])}).light()
		return [3]float64{float64(x[0]), float64(x[1]), float64(x[2])}
	}
	if l.inks == 1 {
		v[1], v[2] = v[0], v[0]
	}
	return [3]float64{l.curve(0, v[0]), l.curve(1, v[1]), l.curve(2, v[2])}
}

// curves samples the three curves at n even steps from 0 to 1.
func (l light) curves(n int) (c [3][]float32, err error) {
	defer contain(&err)
	for k := range c {
		c[k] = make([]float32, n)
		for i := range c[k] {
			c[k][i] = float32(l.curve(k, float64(i)/float64(n-1)))
		}
		if err := sensible(c[k]); err != nil {
			return c, err
		}
	}
	return c, nil
}

var errSenseless = errors.New("it gives no sensible colours")

// sensible refuses numbers that are no light: white is 1.
func sensible(light []float32) error {
	for _, v := range light {
		if !(v > -4 && v < 4) {
			return errSenseless
		}
	}
	return nil
}

// checkICC bounds what the reader would allocate: it believes every count.
// Source of the layout: [ICC] 7.2, 7.3 and 10.6.
func checkICC(data []byte) error {
	size := uint64(len(data))
	if size < 132 || string(data[36:40]) != "acsp" {
		return errors.New("it is no ICC profile")
	}
	tags := uint64(binary.BigEndian.Uint32(data[128:]))
	if 132+12*tags > size {
		return errCutShort
	}
	for e := data[132 : 132+12*tags]; len(e) > 0; e = e[12:] {
		at, length := uint64(binary.BigEndian.Uint32(e[4:])), uint64(binary.BigEndian.Uint32(e[8:]))
		if at < 132+12*tags || at+length > size {
			return errCutShort
		}
	}
	for rest := data; ; { // curves may lie inside other tags, so all of them are looked for
		_, after, found := bytes.Cut(rest, []byte("curv\x00\x00\x00\x00"))
		if !found || len(after) < 4 {
			return nil
		}
		if 2*uint64(binary.BigEndian.Uint32(after)) > uint64(len(after)-4) {
			return errCutShort
		}
		rest = after
	}
}

// profileName is the profile's own description on one line. Compact profiles have
// a code of four letters for one: a common colour space then gets its plain name,
// any other its kind before the code.
func profileName(p *icc.Profile, inks int) string {
	text, _ := p.Description()
	text = strings.Join(strings.Fields(strings.Map(printable, text)), " ")
	if r := []rune(text); len(r) > 60 {
		text = string(r[:60]) + "…"
	}
	if len(text) >= 8 {
		return text
	}
	if plain := commonSpace(p); plain != "" {
		return plain
	}
	return strings.TrimSpace(inkName(inks) + " profile " + text)
}

// printable drops what would break a line or the terminal.
func printable(r rune) rune {
	if r < ' ' || r == 0x7f || r == '\ufffd' || (r >= 0x80 && r < 0xa0) {
		return ' '
	}
	return r
}
