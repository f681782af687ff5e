package match

import (
	"bytes"
	"fmt"
	"image/jpeg"
	"syscall"
	"testing"
)

func cpu() float64 {
	var r syscall.Rusage
	syscall.Getrusage(0, &r)
	return float64(r.Utime.Nano()+r.Stime.Nano()) / 1e6
}
func TestTmpCPU(t *testing.T) {
	d := bigJPEG()
	fl := 1e9
	for range 3 {
		c := cpu()
		jpeg.Decode(bytes.NewReader(d))
		fl = min(fl, cpu()-c)
	}
	for _, n := range []int{12, 24, 40} {
		p, a := own(n), testAims(100, 1)
		best := 1e9
		for range 8 {
			c := cpu()
			Recipes(p, a, Options{})
			best = min(best, cpu()-c)
		}
		for range 2 {
			c := cpu()
			jpeg.Decode(bytes.NewReader(d))
			fl = min(fl, cpu()-c)
		}
		s := newSearch(p, a, Options{}.defaulted())
		bf := 1e9
		for range 5 {
			c := cpu()
			s.finds(3)
			bf = min(bf, cpu()-c)
		}
		f := s.finds(3)
		bc := 1e9
		for range 3 {
			c := cpu()
			for i := range a {
				s.choose(a[i], f[i], 2)
			}
			bc = min(bc, cpu()-c)
		}
		lo := s.firstLooks(3)
		bb := 1e9
		list := 0
		bsum := float32(0)
		for range 3 {
			c := cpu()
			bounds, patches := make([]float32, len(s.aims)), make([]patch, len(s.aims))
			bsum = 0
			for a := range s.aims {
				l := newLens(s.aims[a], lo)
				bounds[a] = l.bound()
				bsum += bounds[a]
				patches[a] = l.patch(int32(a), bounds[a])
			}
			fl := newField(patches)
			list = len(fl.list)
			bb = min(bb, cpu()-c)
		}
		fmt.Printf("%d cpu ms %.1f ratio/2 %.3f floor %.1f finds %.1f (bounds %.1f list %d meanbound %.2f) choose %.1f\n", n, best, best/2/fl, fl, bf, bb, list, bsum/100, bc)
	}
}
