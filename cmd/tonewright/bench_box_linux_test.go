package main

import (
	"os"
	"path/filepath"
	"testing"
)

// BenchmarkBox24 times box --gaps with 24 paints as a process of its own.
func BenchmarkBox24(b *testing.B) {
	box := filepath.Join(b.TempDir(), "box.toml")
	if err := os.WriteFile(box, []byte(boxOf24(b)), 0o644); err != nil {
		b.Fatal(err)
	}
	var whole []float64
	for b.Loop() {
		ms, _ := child(b, "tonewright", "box", "--gaps", "--sight", "deutan", "--box", box)
		whole = append(whole, ms)
	}
	b.ReportMetric(median(whole), "box-ms")
}
