package analyze
import ("testing";"fmt";"time";"tonewright/analyze/colour")
func TestZZ(t *testing.T) {
 for _,f:=range []string{"01_tulips_pink.png","02_dahlia_orange.jpg","03_daisies_violet.jpg","05_fig_red_bowl.jpg","17_coffee_still_life.png","23_harvesters.tiff","14_dandelions_16MP.jpg"} {
 p:=photo(t,f,600)
 q := Parting{Regions: []Region{{Name: "all", Pixels: p.Width * p.Height}}, Of: make([]uint8, p.Width*p.Height)}
 for _,k:=range []int{4,8,12} {
 s:=time.Now(); c:=Clusters(p,q,ClusterOptions{Colours:k}); d:=time.Since(s)
 e:=pixelError(p,q,c)
 of,ce:=plainKMeans(p,k); sum:=0.0; for i,k:=range of {sum+=colour.DeltaE00(p.At(i),ce[k])}
 fmt.Printf("%-24s %2d ours %.3f plain %.3f %.3f  %v\n",f,k,e,sum/float64(len(of)),e*float64(len(of))/sum,d)
 }}
}
