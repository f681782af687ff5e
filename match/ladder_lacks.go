// What a ladder does not reach, and what of the box would reach it.

package match

import (
	"fmt"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Lacks says which values from lo to hi, in L*, the ladder does not reach, and which
// of the owned paints would reach them: for the lights the white, else the lightest;
// for the darks the one that keeps the palette's character best, see strays. It is ""
// where the ladder reaches all.
func (l *Ladder) Lacks(owned []paint.Paint, lo, hi float64) string {
	if len(l.rungs) == 0 {
		return ""
	}
	var sentences []string
	dark, light := l.Reach()
	if lo < dark && !near(lo, dark) {
		sentences = append(sentences, fmt.Sprintf("%s too dark for it; %s.", values(lo, min(hi, dark)), l.darker(owned, lo)))
	}
	if hi > light && !near(hi, light) {
		sentences = append(sentences, fmt.Sprintf("%s too light for it; %s.", values(max(lo, light), hi), l.lighter(owned, hi)))
	}
	return strings.Join(sentences, " ")
}

// values words a range of L* in Munsell values: "Values 1.2 to 2.4 are".
func values(lo, hi float64) string {
	from, to := fmt.Sprintf("%.1f", colour.ValueOf(lo)), fmt.Sprintf("%.1f", colour.ValueOf(hi))
	if from == to {
		return fmt.Sprintf("Value %s is", from)
	}
	return fmt.Sprintf("Values %s to %s are", from, to)
}

// lighter says what would reach up to a lightness.
func (l *Ladder) lighter(owned []paint.Paint, hi float64) string {
	_, light := l.Reach()
	var best *paint.Paint
	for i, p := range owned {
		if m := l.masstone(&p).L; m > light && !near(m, light) && indexOf(l.paints, p.ID) < 0 && l.lightens(&p, best) {
			best = &owned[i]
		}
	}
	switch {
	case best == nil:
		return "nothing in the box is lighter"
	case l.masstone(best).L < hi && !near(l.masstone(best).L, hi):
		return fmt.Sprintf("%s, the lightest in the box, goes up to %.1f", best.Name, colour.ValueOf(l.masstone(best).L))
	}
	return fmt.Sprintf("%s would reach them", best.Name)
}

// lightens tells whether a paint serves better for the lights than the best so far: a
// white before others, then the lighter.
func (l *Ladder) lightens(p, best *paint.Paint) bool {
	if best == nil || p.White() != best.White() {
		return best == nil || p.White()
	}
	return tenth(l.masstone(p).L) > tenth(l.masstone(best).L)
}

func (l *Ladder) masstone(p *paint.Paint) colour.Lab {
	return labOf([]paint.Paint{*p}, []float64{1}, l.finish)
}

// darker says what would reach down to a lightness.
func (l *Ladder) darker(owned []paint.Paint, lo float64) string {
	dark, _ := l.Reach()
	var best, darkest *Ladder
	var strays float64
	for _, p := range owned {
		if p.White() || indexOf(l.paints, p.ID) >= 0 {
			continue
		}
		with := l.deepened(p)
		low, _ := with.Reach()
		if low >= dark || near(low, dark) {
			continue
		}
		if darkest == nil || tenth(low) < tenth(darkest.rungs[0].lab.L) {
			darkest = with
		}
		if s := l.strays(with, lo); (low <= lo || near(low, lo)) && (best == nil || tenth(s) < tenth(strays)) {
			best, strays = with, s
		}
	}
	switch {
	case best != nil:
		return fmt.Sprintf("%s would reach them, and of the darks in the box keeps its colour best", best.added().Name)
	case darkest != nil:
		low, _ := darkest.Reach()
		return fmt.Sprintf("%s goes darkest with it, down to %.1f", darkest.added().Name, colour.ValueOf(low))
	}
	return "nothing in the box goes darker with it"
}

// deepened returns the ladder of the paint at this one's dark end and another.
func (l *Ladder) deepened(p paint.Paint) *Ladder {
	return LadderOf([]paint.Paint{l.endPaint(), p}, nil, l.finish)
}

// endPaint returns what stands at the dark end of the ladder, as one paint: its
// darkest mix, which may be of several.
func (l *Ladder) endPaint() (end paint.Paint) {
	end.K, end.S = paint.Mix(l.paints, l.rungs[0].shares)
	return end
}

// added returns the paint that a deepened ladder has more.
func (l *Ladder) added() paint.Paint {
	if l.paints[0].ID != "" {
		return l.paints[0]
	}
	return l.paints[1]
}

// straysAt is at how many values strays looks.
const straysAt = 8

// strays returns how far the colours that another dark gives below the ladder lie from
// what the ladder's dark end would be in less light, in CIEDE2000 of their hue and
// chroma on average. In less light a surface keeps its chromaticity, so that a* and b*
// shrink with L* + 16 [CIE15]. Hue alone will not do: black has none to change.
func (l *Ladder) strays(with *Ladder, lo float64) (mean float64) {
	end := l.rungs[0].lab
	low, _ := with.Reach()
	lo = max(lo, low)
	for i := range straysAt {
		at := end.L + (lo-end.L)*float64(i+1)/straysAt
		got, _ := with.At(at)
		dim := (at + 16) / (end.L + 16)
		mean += colour.DeltaE00(got, colour.Lab{L: got.L, A: dim * end.A, B: dim * end.B}) / straysAt
	}
	return mean
}
