package main

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime/debug"
	"sort"
	"strings"
	"testing"
	"time"

	"golang.org/x/image/draw"

	"tonewright/match/paint"
)

// BenchmarkPlan24MP times the whole job on a 24-megapixel JPEG, with 10 regions
// of 8 colours and 24 paints, as a process of its own, each time beside a process
// that only decodes the same file. It reports the ratio of the medians and the
// peak memory. Run it with -benchtime 9x or more for medians.
func BenchmarkPlan24MP(b *testing.B) {
	folder := b.TempDir()
	photo := filepath.Join(folder, "photo.jpg")
	if err := os.WriteFile(photo, largePhoto(b), 0o644); err != nil {
		b.Fatal(err)
	}
	box := filepath.Join(folder, "box.toml")
	if err := os.WriteFile(box, []byte(boxOf24(b)), 0o644); err != nil {
		b.Fatal(err)
	}
	args := []string{"plan", photo, "--quiet", "--box", box, "--colours", "8", "--out", filepath.Join(folder, "report.html")}
	for i := range 9 {
		args = append(args, "--region", fmt.Sprintf("r%d=%c1:%c8", i, 'A'+i, 'A'+i))
	}
	debug.FreeOSMemory() // or this process would tidy up on the core that the plan needs
	var floor, whole []float64
	var peak float64
	for b.Loop() {
		ms, _ := child(b, "decode-only", photo)
		floor = append(floor, ms)
		ms, printed := child(b, "tonewright-and-peak", args...)
		whole = append(whole, ms)
		peak = max(peak, peakMiB(b, printed))
	}
	b.ReportMetric(median(floor), "floor-ms")
	b.ReportMetric(median(whole), "plan-ms")
	b.ReportMetric(median(whole)/median(floor), "ratio")
	b.ReportMetric(peak, "peak-MiB")
}

// child runs this test binary under another name and returns its milliseconds and
// what it printed.
func child(b *testing.B, name string, args ...string) (milliseconds float64, printed string) {
	self, err := os.Executable()
	if err != nil {
		b.Fatal(err)
	}
	c := exec.Command(self, args...)
	c.Args[0] = name
	start := time.Now()
	text, err := c.CombinedOutput()
	took := time.Since(start)
	if err != nil {
		b.Fatalf("%s: %v\n%s", name, err, text)
	}
	return float64(took.Microseconds()) / 1000, string(text)
}

// peakMiB reads the memory that tonewrightAndPeak printed.
func peakMiB(b *testing.B, printed string) float64 {
	var kB float64
	if _, err := fmt.Sscanf(printed, "VmHWM: %f kB", &kB); err != nil {
		b.Fatalf("no peak memory in %q", printed)
	}
	return kB / 1024
}

func median(v []float64) float64 {
	s := append([]float64(nil), v...)
	sort.Float64s(s)
	return s[len(s)/2]
}

// largePhoto enlarges the demo to 6000 × 4000 pixels and adds a sensor's grain, so
// that its entropy is that of a photo from a camera and not of an enlargement.
func largePhoto(b *testing.B) []byte {
	f, err := os.Open("../../testdata/kettle.jpg")
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	src, err := jpeg.Decode(f)
	if err != nil {
		b.Fatal(err)
	}
	dst := image.NewRGBA(image.Rect(0, 0, 6000, 4000))
	draw.BiLinear.Scale(dst, dst.Rect, src, src.Bounds(), draw.Src, nil)
	random := rand.New(rand.NewPCG(1, 2))
	for i := 0; i < len(dst.Pix); i += 4 {
		grain := int(random.Int32N(13)) - 6
		for c := range 3 {
			dst.Pix[i+c] = clamp(int(dst.Pix[i+c]) + grain)
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, dst, &jpeg.Options{Quality: 90}); err != nil {
		b.Fatal(err)
	}
	return out.Bytes()
}

func clamp(v int) uint8 { return uint8(min(255, max(0, v))) }

// boxOf24 is a box of 24 paints that are no blends, spread over the whole library:
// its first 24 are whites and yellows, and nobody's box.
func boxOf24(b *testing.B) string {
	var all []string
	for _, p := range paint.Library() {
		if p.Basis != paint.Blend {
			all = append(all, p.ID)
		}
	}
	var names []string
	for i := range 24 {
		names = append(names, fmt.Sprintf("%q", all[i*len(all)/24]))
	}
	if len(all) < 24 {
		b.Fatal("the library has fewer than 24 paints")
	}
	return "name = \"24 paints\"\npaints = [" + strings.Join(names, ", ") + "]\n"
}
