package match

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// whitesOwn is the kind of a set whose first paint is white, and plain allows whole parts only.
var (
	whitesOwn = kind{[3]bool{true, true, true}, 0, false}
	plain     = kind{white: -1}
	fine      = kind{[3]bool{true, true, true}, -1, true}
)

// shares returns the shares of a measure to nine places.
func (l levels) shares(m measure) string {
	sum := l.parts(m[0]) + l.parts(m[1]) + l.parts(m[2])
	return fmt.Sprintf("%.9f %.9f %.9f", l.parts(m[0])/sum, l.parts(m[1])/sum, l.parts(m[2])/sum)
}

func (l levels) small(v level) bool {
	measure, _ := l.measure(v)
	return measure != Knife
}

func TestMeasuresAreMeasurableAndDiffer(t *testing.T) {
	l := levels{mostParts}
	seen := map[string]bool{}
	for _, m := range append(l.triples(whitesOwn), l.pairs(whitesOwn)...) {
		wholes, sum := 0.0, 0.0
		for _, v := range m {
			sum += l.parts(v)
			if measure, _ := l.measure(v); measure == Knife {
				wholes += l.parts(v)
			}
		}
		assert.True(t, wholes >= 1 && wholes <= mostParts, "%v has %v whole parts", m, wholes)
		for _, v := range m {
			measure, count := l.measure(v)
			switch n := float64(count); measure {
			case Touch:
				assert.InDelta(t, n/32, l.parts(v)/sum, 1e-12, "%v: a touch is 1 in 32 of the pile", m)
			case Speck:
				assert.InDelta(t, n/128, l.parts(v)/sum, 1e-12, "%v: a speck is 1 in 128 of the pile", m)
				assert.Equal(t, level(1), m[0], "%v: white alone takes specks", m)
			}
		}
		assert.False(t, seen[l.shares(m)], "%v has the shares of another", m)
		seen[l.shares(m)] = true
	}
}

// Counted by hand on 4 parts: of three, 1:1:1, 1:1:2, 1:2:1, 2:1:1; of two, 1:1,
// 1:2, 1:3, 2:1, 3:1. With 12, whole parts of three come in
// 220 ways less those of a common factor, 20 of 2 and 4 of 3.
func TestMeasuresAreComplete(t *testing.T) {
	small := levels{4}
	assert.ElementsMatch(t, []measure{{1, 1, 1}, {1, 1, 2}, {1, 2, 1}, {2, 1, 1}}, small.triples(plain))
	assert.ElementsMatch(t, []measure{{1, 1}, {1, 2}, {1, 3}, {2, 1}, {3, 1}}, small.pairs(plain))
	assert.Len(t, levels{mostParts}.triples(plain), 220-20-4)
}

func TestTouchesOnlyOfStrongPaints(t *testing.T) {
	l := levels{mostParts}
	for _, m := range l.triples(kind{[3]bool{false, true, false}, -1, false}) {
		assert.False(t, l.small(m[0]) || l.small(m[2]), "%v", m)
	}
	for _, m := range l.pairs(kind{[3]bool{true, false, false}, -1, false}) {
		assert.False(t, l.small(m[1]), "%v", m)
	}
}

// In a small box either of two paints comes as touches and specks: each is what its name
// says, and none has the shares of another.
func TestFineMeasures(t *testing.T) {
	l := levels{mostParts}
	seen := map[string]bool{}
	small := map[[2]Measure]int{}
	for _, m := range l.pairs(fine) {
		sum := l.parts(m[0]) + l.parts(m[1])
		var of [2]Measure
		for i, v := range m[:2] {
			measure, count := l.measure(v)
			of[i] = measure
			if each := map[Measure]float64{Touch: 1.0 / 32, Speck: 1.0 / 128}[measure]; each > 0 {
				assert.InDelta(t, float64(count)*each, l.parts(v)/sum, 1e-12, "%v", m)
			}
		}
		small[of]++
		assert.False(t, seen[l.shares(m)], "%v has the shares of another", m)
		seen[l.shares(m)] = true
	}
	assert.Equal(t, map[[2]Measure]int{{Knife, Knife}: len(l.pairs(plain)), {Knife, Touch}: 2, {Touch, Knife}: 2, {Knife, Speck}: 2, {Speck, Knife}: 2}, small)
	assert.Equal(t, len(l.pairs(fine)), len(l.pairs(kind{[3]bool{true, true, true}, 1, true})))
}

// The values of a dark and its tints with white, up from its darkest, are met in a small
// box, as the comment at fewPaints says. In a larger one they are not, and its mixes stay
// as few as they were.
func TestDarksAreLightenedByLittle(t *testing.T) {
	white, worst, misses, far, count := box(t, "titanium-white")[0], 0.0, 0.0, 0, 0
	for _, p := range paint.Library() {
		if p.White() || p.Masstone().L > 45 {
			continue
		}
		l := LadderOf([]paint.Paint{p}, &white, paint.Gloss)
		lo, _ := l.Reach()
		var aims []colour.Lab
		for i := range 41 {
			c, _ := l.At(colour.LOf(colour.ValueOf(lo) + float64(i)/20))
			aims = append(aims, c)
		}
		for _, r := range Recipes([]paint.Paint{white, p}, aims, Options{}) {
			miss := math.Abs(r[0].ValueShift)
			worst, misses, count = max(worst, miss), misses+miss, count+1
			if miss > reached {
				far++
			}
		}
	}
	t.Logf("values are missed by %.2f on average, %.2f at worst, %d of %d by over a quarter", misses/float64(count), worst, far, count)
	assert.Less(t, worst, 0.35)
	assert.Less(t, float64(far)/float64(count), 0.01)

	few, more := own(fewPaints), own(fewPaints+1)
	assert.True(t, newSearch(few, nil, Options{}.defaulted()).fine)
	assert.False(t, newSearch(more, nil, Options{}.defaulted()).fine)
}

// A program makes the same measures as the list it comes from.
func TestProgramsMakeEveryMeasure(t *testing.T) {
	l := levels{mostParts}
	for _, k := range []kind{plain, whitesOwn, {[3]bool{true, true, true}, 2, false}, {[3]bool{false, true, false}, -1, false}, fine} {
		p := newProgram(l, k)
		var made []measure
		for _, s := range p.steps {
			base := p.bases[s.base]
			made = append(made, measure{base[0], base[1], s.more})
		}
		assert.Equal(t, l.triples(k), made)
		assert.Equal(t, p.all, made)
	}
}

// The figures in the comment at mostParts: means over the aims and paints of the
// benchmarks. The bounds here only hold what the choice stands on.
func TestWhatPartsBuy(t *testing.T) {
	twelve := wholeParts([]float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}, 12)
	ladder := wholeParts([]float64{1, 2, 3, 5, 8, 12, 20, 30}, math.Inf(1))
	plain, touched, long := meanMiss(twelve, false), meanMiss(nil, true), meanMiss(ladder, false)
	t.Logf("12 in all %.2f, with touches %.2f, ladder %.2f", plain, touched, long)
	assert.Greater(t, plain-touched, 0.15, "touches buy something")
	assert.Less(t, touched-long, 0.35, "long parts buy no more than is hardly seen")
}

// wholeParts returns the parts of three paints from a list, up to so many in all.
func wholeParts(from []float64, most float64) (all [][3]float64) {
	for _, a := range from {
		for _, b := range from {
			for _, c := range from {
				if a+b+c <= most {
					all = append(all, [3]float64{a, b, c})
				}
			}
		}
	}
	return all
}

// meanMiss returns the mean CIEDE2000 of the nearest mix of three paints of the
// parts given or, where asked for, of the measures of Recipes.
func meanMiss(parts [][3]float64, measures bool) float64 {
	paints, aims := own(24), testAims(100, 1)
	s := newSearch(paints, aims, Options{}.defaulted())
	looks := s.firstLooks(3)
	bounds, patches := make([]float32, len(aims)), make([]patch, len(aims))
	for a := range aims {
		l := newLens(aims[a], looks)
		bounds[a] = l.bound()
		patches[a] = l.patch(int32(a), bounds[a])
	}
	c := newScan(s, newField(patches), bounds)
	for i := range paints {
		for j := range i {
			for k := range j {
				of := set{int32(k), int32(j), int32(i)}
				for _, p := range parts {
					x, y, z := opticsOf(&paints[k], p[0]), opticsOf(&paints[j], p[1]), opticsOf(&paints[i], p[2])
					x = x.add(&y)
					c.hold(glossGlow.screen(&x, &z))
				}
				if measures {
					for _, m := range s.menu(of) {
						c.hold(s.screen(of, m))
					}
				}
				c.close(of)
			}
		}
	}
	sum := 0.0
	for _, finds := range c.best {
		sum += float64(finds[0].deltaE)
	}
	return sum / float64(len(aims))
}
