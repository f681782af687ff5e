package match

import (
	"bytes"
	"image"
	"image/jpeg"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"
	"time"
)

// The benchmarks' boxes are own(24) and own(40), the aims testAims(100, 1): half
// mixes of the library's paints, half anywhere in sRGB.

func BenchmarkRecipes24(b *testing.B) { benchmarkRecipes(b, 24) }
func BenchmarkRecipes40(b *testing.B) { benchmarkRecipes(b, 40) }

// benchmarkRecipes reports beside the time the ratio to the floor: the median of
// recipes to that of decodes, taken by turns since a busy machine slows both.
func benchmarkRecipes(b *testing.B, count int) {
	paints, aims := own(count), testAims(100, 1)
	file := largeJPEG()
	var recipes, floor []time.Duration
	for b.Loop() {
		b.StopTimer()
		start := time.Now()
		if _, err := jpeg.Decode(bytes.NewReader(file)); err != nil {
			b.Fatal(err)
		}
		floor = append(floor, time.Since(start))
		b.StartTimer()
		start = time.Now()
		Recipes(paints, aims, Options{})
		recipes = append(recipes, time.Since(start))
	}
	b.ReportMetric(float64(median(recipes))/float64(median(floor)), "x-floor")
}

func median(d []time.Duration) time.Duration {
	slices.Sort(d)
	return d[len(d)/2]
}

// BenchmarkFloorDecode is the floor: image/jpeg on a 24-megapixel photo.
func BenchmarkFloorDecode(b *testing.B) {
	file := largeJPEG()
	b.ReportMetric(float64(len(file))/1e6, "MB")
	for b.Loop() {
		if _, err := jpeg.Decode(bytes.NewReader(file)); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkDense is what the search saves: the oracle on a twentieth of the aims.
func BenchmarkDense(b *testing.B) {
	paints, aims := own(24), testAims(5, 1)
	for b.Loop() {
		dense(paints, aims, mostParts)
	}
}

// largeJPEG returns 6000 × 4000 pixels of soft shapes with a camera's grain, at
// quality 90: as many bytes as a photo of that size has.
var largeJPEG = sync.OnceValue(func() []byte {
	const width, height = 6000, 4000
	photo := image.NewYCbCr(image.Rect(0, 0, width, height), image.YCbCrSubsampleRatio420)
	random := rand.New(rand.NewPCG(1, 2))
	for y := range height {
		for x := range width {
			shape := (x*x/90000 + y*y/70000) % 90
			photo.Y[y*photo.YStride+x] = uint8(90 + shape + random.IntN(22))
		}
	}
	for i := range photo.Cb {
		photo.Cb[i] = uint8(110 + i%photo.CStride/100 + random.IntN(7))
		photo.Cr[i] = uint8(120 + i/photo.CStride/60 + random.IntN(7))
	}
	var file bytes.Buffer
	if err := jpeg.Encode(&file, photo, &jpeg.Options{Quality: 90}); err != nil {
		panic(err)
	}
	return file.Bytes()
})
