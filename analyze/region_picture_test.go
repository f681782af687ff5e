package analyze

import (
	"image"
	"testing"

	"tonewright/analyze/colour"
)

func pixelError(p *Picture, parting Parting, c Clustering) float64 {
	sum := 0.0
	for i, r := range parting.Of {
		sum += colour.DeltaE00(p.At(i), c.Clusters[r][c.Of[i]].Lab)
	}
	return sum / float64(len(parting.Of))
}

func photo(t testing.TB, name string, long int) *Picture {
	f, err := Open("/work/shared/photos/"+name, Limits{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := f.Picture(image.Rectangle{}, long, colour.Lab{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}
