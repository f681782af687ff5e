package analyze
import ("testing";"fmt";"tonewright/analyze/colour")
func exact(s *settled) float64 { return meanError(s.sets()) }
func polishX(s *settled, ratio float64, rounds int) {
 for range rounds {
  sets:=s.sets()
  n:=0
  for i:=range s.cells { c:=&s.cells[i]
   least:=1e18
   for k:=range s.centres { if d:=c.even.squared(&s.centres[k]); d<least {least=d} }
   bd:=1e18; b:=0
   for k:=range s.centres { if c.even.squared(&s.centres[k])<=least*ratio { n++; if d:=c.Distance(sets[k].Center); d<bd {bd,b=d,k} } }
   s.of[i]=uint8(b)
  }
  s.recentre()
  _ = n
 }
}
func TestZZ2(t *testing.T) {
 _ = colour.Lab{}
 for _,f:=range []string{"01_tulips_pink.png","02_dahlia_orange.jpg","03_daisies_violet.jpg","05_fig_red_bowl.jpg","16_brushes_multicolour.jpg","17_coffee_still_life.png","23_harvesters.tiff","14_dandelions_16MP.jpg"} {
 p:=photo(t,f,600)
 pixels:=make([]int32,p.Width*p.Height); for i:=range pixels {pixels[i]=int32(i)}
 cells,_:=cellsOf(p,pixels)
 for _,k:=range []int{8,12} {
  s:=start(cells); for len(s.centres)<k && s.split() { s.lloyd() }
  a:=exact(s)
  s.mend(); b:=exact(s)
  polishX(s,2,1); c:=exact(s); polishX(s,2,1); d:=exact(s); polishX(s,2,5); e:=exact(s)
  // farthest first
  g:=start(cells); g.centres[0]=g.mean(0)
  for len(g.centres)<k { x:=g.farthest(); g.centres=append(g.centres,g.cells[x].even); g.accent=append(g.accent,false); for i:=range g.cells { g.of[i]=g.nearest(&g.cells[i].even)} }
  g.lloyd(); ff:=exact(g); g.mend(); fm:=exact(g); 
  of,ce:=plainKMeans(p,k); sum:=0.0; for i,k:=range of {sum+=colour.DeltaE00(p.At(i),ce[k])}
  fmt.Printf("%-20s %2d cells %d split %.3f mend %.3f polish %.3f %.3f %.3f | ff %.3f mend %.3f | sq %.0f %.0f plain %.3f\n",f[:10],k,len(cells),a,b,c,d,e,ff,fm,s.squaredError()/1000,g.squaredError()/1000,sum/float64(len(of)))
 }}
}
