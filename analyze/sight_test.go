package analyze

import (
	"bytes"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// dichromats are the sights that have no use of one kind of cone.
var dichromats = []colour.Sight{{Kind: "protan", Severity: 1}, {Kind: "deutan", Severity: 1}, {Kind: "tritan", Severity: 1}}

// manyColours is a picture of every 1,007th colour of sRGB, an odd step, so that all levels come.
func manyColours() *Picture {
	p := &Picture{Width: 129, Height: 129, RGB: make([]uint8, 0, 3*129*129)}
	for i := range 129 * 129 {
		n := i * 1007
		p.RGB = append(p.RGB, uint8(n>>16), uint8(n>>8), uint8(n))
	}
	return p
}

func srgb(r, g, b uint8) colour.Lab {
	return colour.FromSRGB(float64(r)/255, float64(g)/255, float64(b)/255)
}

// Pixel by pixel Seen is what colour.Sight.See makes of it, to the level.
func TestSeenIsSee(t *testing.T) {
	p := manyColours()
	for _, s := range append(dichromats, colour.Sight{Kind: "deutan", Severity: 0.6}, colour.Sight{Kind: "protan", Severity: 0.95}) {
		seen := p.Seen(s)
		require.Len(t, seen, len(p.RGB))
		for i := 0; i < len(seen); i += 3 {
			r, g, b := s.See(srgb(p.RGB[i], p.RGB[i+1], p.RGB[i+2])).SRGB()
			for k, v := range []float64{r, g, b} {
				if math.Abs(255*min(1, max(0, v))-float64(seen[i+k])) > 0.6 {
					t.Fatalf("%v: %v is seen as %v, want %v", s, p.RGB[i:i+3], seen[i:i+3], 255*v)
				}
			}
		}
	}
	assert.Equal(t, p.RGB, p.Seen(colour.Sight{}))
	assert.NotSame(t, &p.RGB[0], &p.Seen(colour.Sight{})[0])
}

// The table puts nearly every colour into the class that reckoning it does, and none
// into another that is more than 1.5 CIEDE2000 from the limit between.
func TestMissedIsByWhatIsSeen(t *testing.T) {
	p := manyColours()
	for _, s := range dichromats {
		others := 0
		for i, class := range p.Missed(s) {
			c := srgb(p.RGB[3*i], p.RGB[3*i+1], p.RGB[3*i+2])
			e := colour.DeltaE00(c, s.See(c))
			want := uint8(MissedLittle)
			if e >= someMissed {
				want = MissedSome
			}
			if e >= muchMissed {
				want = MissedMuch
			}
			if class != want {
				others++
				require.Less(t, min(math.Abs(e-someMissed), math.Abs(e-muchMissed)), 1.5, "%v of %v", s, p.RGB[3*i:3*i+3])
			}
		}
		share := 100 * float64(others) / float64(p.Width*p.Height)
		t.Logf("%v: %.2f %% in another class", s, share)
		assert.Less(t, share, 0.4, "%v", s)
	}
	assert.Nil(t, p.Missed(colour.Sight{}))
	assert.Nil(t, p.Missed(colour.Sight{Kind: "deutan"}))
}

// What a red-green deficiency loses and what it keeps, in a picture of four: a red, a
// green, a yellow and a gray. Textbook matter: yellows and grays look to a red-green
// dichromat as they do to others ([Brettel1997]: 575 nm, and white).
func TestMissedOfFour(t *testing.T) {
	p := &Picture{Width: 2, Height: 2, RGB: []uint8{200, 50, 50, 50, 150, 50, 216, 192, 32, 128, 128, 128}}
	for _, s := range dichromats[:2] {
		assert.Equal(t, []uint8{MissedMuch, MissedMuch, MissedLittle, MissedLittle}, p.Missed(s), "%v", s)
	}
}

func TestSightOnAnyCores(t *testing.T) {
	p := manyColours()
	cores := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(cores)
	seen, missed := p.Seen(dichromats[1]), p.Missed(dichromats[1])
	for _, n := range []int{2, 5} {
		runtime.GOMAXPROCS(n)
		assert.True(t, slices.Equal(seen, p.Seen(dichromats[1])))
		assert.True(t, slices.Equal(missed, p.Missed(dichromats[1])))
	}
}

// TestMissedOfPhotos prints the figures in the comment of the limits.
func TestMissedOfPhotos(t *testing.T) {
	slow(t)
	files := map[string]string{"kettle": "../testdata/kettle.jpg"}
	for _, name := range []string{"01_tulips_pink.png", "05_fig_red_bowl.jpg", "03_daisies_violet.jpg"} {
		files[name] = sharedPhoto(t, name)
	}
	for name, file := range files {
		_, p := mustPicture(t, file)
		for _, s := range dichromats {
			var n [3]int
			for _, class := range p.Missed(s) {
				n[class]++
			}
			all := float64(len(p.RGB)) / 300
			t.Logf("%-22s %v: little %2.0f %%, some %2.0f %%, much %2.0f %%", name, s, float64(n[0])/all, float64(n[1])/all, float64(n[2])/all)
			assert.Positive(t, n[0], "%s %v", name, s)
		}
	}
}

// noisy is a picture of 1.9 megapixels, the largest a plan works at.
func noisy() *Picture {
	p := &Picture{Width: 1600, Height: 1200, RGB: make([]uint8, 3*1600*1200)}
	random := rand.New(rand.NewPCG(3, 4))
	for i := range p.RGB {
		p.RGB[i] = uint8(random.UintN(256))
	}
	return p
}

func BenchmarkSeen(b *testing.B) {
	p := noisy()
	for b.Loop() {
		p.Seen(dichromats[1])
	}
}

func BenchmarkMissed(b *testing.B) {
	p := noisy()
	for b.Loop() {
		p.Missed(dichromats[1])
	}
}

// BenchmarkFloorEncode is what a view costs whatever is in it: coding it as JPEG.
func BenchmarkFloorEncode(b *testing.B) {
	p := noisy()
	m := image.NewRGBA(image.Rect(0, 0, p.Width, p.Height))
	for i, j := 0, 0; i < len(p.RGB); i, j = i+3, j+4 {
		m.Pix[j], m.Pix[j+1], m.Pix[j+2], m.Pix[j+3] = p.RGB[i], p.RGB[i+1], p.RGB[i+2], 255
	}
	for b.Loop() {
		var out bytes.Buffer
		require.NoError(b, jpeg.Encode(&out, m, &jpeg.Options{Quality: 82}))
	}
}
