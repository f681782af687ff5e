package analyze

import (
	"testing"

	"tonewright/analyze/colour"
)

// What composing costs beside what clustering the same picture does: BenchmarkClusters
// works on the same photo, as one region, and so does not find regions.

// composedPicture returns the photo of BenchmarkClusters parted and clustered, at about
// 2 megapixels: the most that a picture is worked on at.
func composedPicture(b *testing.B) (*Picture, Parting, Clustering, [][]Tone) {
	p := workingPicture(b, benchPhoto, 1600)
	parting := Regions(p, nil)
	c := Clusters(p, parting, ClusterOptions{})
	tones := make([][]Tone, len(c.Clusters))
	for r, clusters := range c.Clusters {
		for _, k := range clusters {
			tones[r] = append(tones[r], Tone{k.Lab, float64(k.Pixels)})
		}
	}
	return p, parting, c, tones
}

func BenchmarkClustersOfRegions(b *testing.B) {
	p, parting, _, _ := composedPicture(b)
	for b.Loop() {
		Clusters(p, parting, ClusterOptions{})
	}
}

func BenchmarkComposed(b *testing.B) {
	p, parting, _, _ := composedPicture(b)
	for b.Loop() {
		Composed(parting, p.Width, p.Height)
	}
}

func BenchmarkLostEdges(b *testing.B) {
	p, parting, c, _ := composedPicture(b)
	for i, r := range parting.Of { // flat, as a study is
		k := c.Clusters[r][c.Of[i]].Lab
		p.Lab[3*i], p.Lab[3*i+1], p.Lab[3*i+2] = float32(k.L), float32(k.A), float32(k.B)
	}
	for b.Loop() {
		LostEdges(p, parting)
	}
}

// 25 regions of 8 tones each, which a painter can ask for.
func BenchmarkStandings(b *testing.B) {
	parting, w, h := blown(40, "01234", "56789", ":;<=>", "?@ABC", "DEFGH")
	c := Composed(parting, w, h)
	tones := make([][]Tone, len(parting.Regions))
	g := grain{state: 1}
	for r := range tones {
		for range 8 {
			tones[r] = append(tones[r], Tone{g.on(colour.Lab{L: 50}, 40), 1})
		}
	}
	b.ResetTimer()
	for b.Loop() {
		c.Standings(tones)
	}
}
