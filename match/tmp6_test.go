package match
import ("testing";"fmt")
func TestTmpLadder(t *testing.T) {
 p,a:=own(24),testAims(100,1)
 run:=func(name string, comps [][3]float64, comps2 [][2]float64, touch bool) {
	s:=newSearch(p,a,Options{}.defaulted())
	lo:=s.firstLooks(3)
	bounds, patches := make([]float32, len(s.aims)), make([]patch, len(s.aims))
	for a:=range s.aims { l := newLens(s.aims[a],lo); bounds[a] = l.bound(); patches[a] = l.patch(int32(a), bounds[a]) }
	c:=newScan(s,newField(patches),bounds)
	for i:=range p { for j:=i+1;j<len(p);j++ {
	  for _,m:=range comps2 { x:=opticsOf(&p[i],m[0]); y:=opticsOf(&p[j],m[1]); c.hold(screen(&x,&y)) }
	  if touch { for _,m:=range s.menu(set{int32(i),int32(j),-1}) { c.hold(s.screen(set{int32(i),int32(j),-1},m)) } }
	  c.close(set{int32(i),int32(j),-1})
	  for k:=j+1;k<len(p);k++ { of:=set{int32(i),int32(j),int32(k)}
	   for _,m:=range comps { x:=opticsOf(&p[i],m[0]); y:=opticsOf(&p[j],m[1]); z:=opticsOf(&p[k],m[2]); x=x.add(&y); c.hold(screen(&x,&z)) }
	   if touch { for _,m:=range s.menu(of) { c.hold(s.screen(of,m)) } }
	   c.close(of) } } }
	sum,sum5:=0.0,0.0; n5:=0
	for a:=range c.best { d:=float64(c.best[a][0].deltaE); for i:=range p { q:=s.screen(set{int32(i),-1,-1},measure{1}); g:=newLens(s.aims[a],lo); _=g; _=q }; sum+=d; if d<5 { sum5+=d; n5++ } }
	fmt.Println(name,len(comps),"mean",sum/float64(len(a)),"of those under 5:",sum5/float64(n5),n5)
 }
 mk:=func(ws []int, most int) (c3 [][3]float64, c2 [][2]float64) {
  g:=func(a,b int) int { for b>0 {a,b=b,a%b}; return a }
  for _,x:=range ws { for _,y:=range ws { if g(x,y)==1 && x+y<=most { c2=append(c2,[2]float64{float64(x),float64(y)}) }
   for _,z:=range ws { if g(g(x,y),z)==1 && x+y+z<=most { c3=append(c3,[3]float64{float64(x),float64(y),float64(z)}) } } } }
  return }
 r:=func(n int) (w []int) { for i:=1;i<=n;i++ {w=append(w,i)}; return }
 c3,c2:=mk(r(12),12); run("12 no touch",c3,c2,false)
 run("12 + touch",c3,c2,true)
 c3,c2=mk([]int{1,2,3,5,8,12,20,30},999); run("ladder",c3,c2,false)
 run("ladder+12+touch",c3,c2,true)
 c3,c2=mk(r(16),16); run("16 no touch",c3,c2,false)
 c3,c2=mk(r(32),32); run("32 in all",c3,c2,false)
}
