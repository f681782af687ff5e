package analyze

import (
	"bytes"
	"image"
	"image/jpeg"
	"math/rand/v2"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/disintegration/imaging"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

var bigOnce sync.Once
var bigData []byte

// bigJPEG is a 24-megapixel JPEG with the entropy of a photo: a real one
// enlarged to 6000 × 4000, with noise as of a sensor, at quality 90.
func bigJPEG(b *testing.B) []byte {
	from := filepath.Join("..", "..", "shared", "photos", "14_dandelions_16MP.jpg")
	if _, err := os.Stat(from); err != nil {
		from = moduleFile(b, "github.com/disintegration/imaging", "testdata/branches.jpg")
	}
	bigOnce.Do(func() {
		img, err := imaging.Open(from)
		require.NoError(b, err)
		big := imaging.Resize(img, 6000, 4000, imaging.Linear)
		random := rand.New(rand.NewPCG(1, 2))
		for i := range big.Pix {
			big.Pix[i] = uint8(min(255, max(0, float64(big.Pix[i])+6*random.NormFloat64())))
		}
		var out bytes.Buffer
		require.NoError(b, jpeg.Encode(&out, big, &jpeg.Options{Quality: 90}))
		bigData = out.Bytes()
		b.Logf("%.1f MB", float64(len(bigData))/1e6)
	})
	return bigData
}

// BenchmarkFloorDecode24MP is what nobody can do without: plain decoding.
func BenchmarkFloorDecode24MP(b *testing.B) {
	data := bigJPEG(b)
	for b.Loop() {
		_, err := jpeg.Decode(bytes.NewReader(data))
		require.NoError(b, err)
	}
}

// BenchmarkPicture24MP is opening, decoding and reducing, beside the floor
// measured in the same turns.
func BenchmarkPicture24MP(b *testing.B) {
	data := bigJPEG(b)
	file := filepath.Join(b.TempDir(), "big.jpg")
	require.NoError(b, os.WriteFile(file, data, 0o600))
	var floor, job time.Duration
	for b.Loop() {
		start := time.Now()
		_, err := jpeg.Decode(bytes.NewReader(data))
		require.NoError(b, err)
		floor += time.Since(start)
		start = time.Now()
		p, err := Open(file, Limits{})
		require.NoError(b, err)
		_, err = p.Picture(image.Rectangle{}, 0, colour.Lab{})
		require.NoError(b, err)
		job += time.Since(start)
	}
	b.ReportMetric(float64(job)/float64(floor), "x-floor")
	b.ReportMetric(float64((job-floor).Milliseconds())/float64(b.N), "ms-over-floor")
}

// BenchmarkReduce24MP is what comes after the decoder alone.
func BenchmarkReduce24MP(b *testing.B) {
	data := bigJPEG(b)
	img, err := jpeg.Decode(bytes.NewReader(data))
	require.NoError(b, err)
	file := filepath.Join(b.TempDir(), "big.jpg")
	require.NoError(b, os.WriteFile(file, data, 0o600))
	p, err := Open(file, Limits{})
	require.NoError(b, err)
	for b.Loop() {
		small := workingSize(p.stored, 0)
		r, err := p.raster(img, image.Rectangle{Max: p.stored}, small)
		require.NoError(b, err)
		p.finish(r, small, turnOf(1), colour.Lab{})
	}
}
