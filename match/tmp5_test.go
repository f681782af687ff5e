package match
import ("testing";"tonewright/analyze/colour")
var sinkM colour.Munsell
func BenchmarkTmpMunsell(b *testing.B) { a:=testAims(100,1); i:=0; for b.Loop() { sinkM=a[i%100].Munsell(); i++ } }
func BenchmarkTmpFull(b *testing.B) { p:=own(24); s:=newSearch(p,nil,Options{}.defaulted()); for b.Loop() { s.lab(set{1,4,8},measure{1,2,3}) } }
func BenchmarkTmpDE(b *testing.B) { a:=testAims(100,1); i:=0; for b.Loop() { colour.DeltaE00(a[i%100],a[(i*7+3)%100]); i++ } }
