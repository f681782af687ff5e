package main

import (
	"image/jpeg"
	"os"
	"path/filepath"
	"testing"

	"tonewright/analyze/colour"
)

// benchmarkAnswer times a command as a process of its own, with a box of 24 paints,
// beside a process that does nothing, and reports the medians.
func benchmarkAnswer(b *testing.B, args ...string) {
	box := filepath.Join(b.TempDir(), "box.toml")
	if err := os.WriteFile(box, []byte(boxOf24(b)), 0o644); err != nil {
		b.Fatal(err)
	}
	args = append(args, "--box", box)
	var idle, whole []float64
	for b.Loop() {
		ms, _ := child(b, "tonewright", "version")
		idle = append(idle, ms)
		ms, _ = child(b, "tonewright", args...)
		whole = append(whole, ms)
	}
	b.ReportMetric(median(idle), "idle-ms")
	b.ReportMetric(median(whole), "answer-ms")
}

func BenchmarkMix24(b *testing.B) { benchmarkAnswer(b, "mix", "5YR 6/8") }

func BenchmarkMix24OverBlack(b *testing.B) {
	benchmarkAnswer(b, "mix", "5YR 6/8", "--ground", "black", "--holds")
}

func BenchmarkString24(b *testing.B) {
	benchmarkAnswer(b, "string", "cadmium-orange", "ultramarine-blue", "--white")
}

func BenchmarkGlaze24(b *testing.B) {
	benchmarkAnswer(b, "glaze", "--over", "5Y 7/4", "--aim", "5YR 5/6")
}

// A swatch from a photo of 12 megapixels, with its pile.
func BenchmarkSwatch24(b *testing.B) {
	photo := filepath.Join(b.TempDir(), "pile.jpg")
	file, err := os.Create(photo)
	if err != nil {
		b.Fatal(err)
	}
	defer file.Close()
	if err := jpeg.Encode(file, swatchPhoto(4000, 3000, colour.Lab{L: 63, A: 17.5, B: 21}, colour.Lab{L: 63, A: 17.5, B: 21}), nil); err != nil {
		b.Fatal(err)
	}
	benchmarkAnswer(b, "swatch", photo, "--card", "10,20,15,20", "--swatch", "55,25,20,20",
		"--aim", "2.5YR 7/4", "--pile", "titanium-white 4, yellow-ochre 1")
}
