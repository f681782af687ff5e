package match

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"math/rand/v2"
	"testing"
	"time"
)

func bigJPEG() []byte {
	img := image.NewYCbCr(image.Rect(0, 0, 6000, 4000), image.YCbCrSubsampleRatio420)
	r := rand.New(rand.NewPCG(1, 2))
	for y := range 4000 {
		for x := range 6000 {
			img.Y[y*img.YStride+x] = uint8(100 + (x*x/90000+y*y/70000)%90 + r.IntN(13))
		}
	}
	for i := range img.Cb {
		img.Cb[i] = uint8(110 + i%3000/100 + r.IntN(5))
		img.Cr[i] = uint8(120 + i/30000%30 + r.IntN(5))
	}
	var b bytes.Buffer
	jpeg.Encode(&b, img, &jpeg.Options{Quality: 90})
	return b.Bytes()
}
func TestTmpFloor(t *testing.T) {
	d := bigJPEG()
	fmt.Println(len(d))
	best := 1e9
	bw := 1e9
	for range 5 {
		c := cpu()
		w := time.Now()
		jpeg.Decode(bytes.NewReader(d))
		best = min(best, cpu()-c)
		bw = min(bw, float64(time.Since(w).Microseconds())/1e3)
	}
	fmt.Println("floor cpu", best, "wall", bw)
}
