package analyze

import (
	"cmp"
	"math"
	"slices"

	"tonewright/analyze/colour"
)

// Tone is a colour of a region and its share of it.
type Tone struct {
	Lab   colour.Lab
	Share float64 // 0-1
}

// Standing is how strongly a region stands out. Differences are in CIE 1976 L*a*b*
// units, 0 or more; Value, Chroma and Hue are the shares of the difference that are one
// of lightness, chroma and hue, and add up to 1, but are all 0 where there is no
// difference at all.
type Standing struct {
	Around  float64 // of its mean colour from those of the regions around it, by their share of its ring
	Overall float64 // of its tones from those of the whole picture, its own counted as none, by size and nearness
	Score   float64 // 0-1, the strongest region's is 1: the geometric mean of both, less where the frame cuts the region
	Value   float64
	Chroma  float64
	Hue     float64
	Rank    int // 1 stands out most; 0 for a region without pixels
}

// Standings returns how strongly each region stands out if it is painted in those tones.
// len(tones) is the number of regions; the shares of a region's tones are taken in
// proportion; a region without tones, or pixels, has no standing and is no surroundings.
// It panics if tones are of another number of regions.
//
// Around is centre-surround contrast at the region's own scale: what a painter sees of
// masses with half-closed eyes. Source: [Achanta2008], the distance between the mean
// L*a*b* of a region and what is around it. Ours: it is taken for each neighbour before
// the mean, since a red and a green about a gray thing make no gray.
//
// Overall is region contrast: the difference between all tones of two regions, weighted
// by the size of the other and its nearness, summed over the others. Source: [Cheng2015].
// Ours: the sum is divided by that of the weights with the region's own among them, so
// that it is a mean difference, and a place near the corner, where less is near, costs
// nothing; and their prior for the middle of the picture is left out: it tells where
// people put what they photograph, and a painter puts the focal point off the middle.
//
// Score: a thing must differ from what is around it and from the picture. A large field
// differs as much from a small thing on it as that from the field, but hardly from the
// picture, since it is most of it; a thing in a colour that is everywhere, or that
// passes into what is around it, is not looked for either. Their geometric mean is small
// where one of them is. What is surrounded is seen as a thing, what runs out of the
// frame rather as what lies behind: for the score, the part of its ring that is off the
// picture counts as no difference. Source: [Zhang2016], that what is surrounded stands
// out. Ours, the measure: without it a strip of wall beside a red bowl came before the
// fruit in it, and a dark corner of a table top second in the picture.
func (c *Composition) Standings(tones [][]Tone) []Standing {
	if len(tones) != len(c.shares) {
		panic("analyze: there are not as many lists of tones as regions")
	}
	painted := make([]mass, len(tones))
	for r := range painted {
		if c.shares[r] > 0 {
			painted[r] = massOf(tones[r])
		}
	}
	standings := make([]Standing, len(tones))
	for a := range standings {
		if painted[a].any() {
			standings[a] = standing(c.around(a, painted), c.overall(a, painted), c.inside[a])
		}
	}
	rank(standings, painted)
	return standings
}

// shade is a colour with its chroma, and its share of a region.
type shade struct{ l, a, b, chroma, share float64 }

// mass is a region as painted: its shades, whose shares add up to 1, and their mean.
type mass struct {
	shades []shade
	mean   shade
}

// any tells whether there is something painted.
func (m *mass) any() bool { return len(m.shades) > 0 }

// massOf returns the tones that have a share.
func massOf(tones []Tone) (m mass) {
	sum := 0.0
	for _, t := range tones {
		sum += max(0, t.Share)
	}
	for _, t := range tones {
		if t.Share > 0 {
			s := shade{t.Lab.L, t.Lab.A, t.Lab.B, t.Lab.Chroma(), t.Share / sum}
			m.shades = append(m.shades, s)
			m.mean.l, m.mean.a, m.mean.b = m.mean.l+s.share*s.l, m.mean.a+s.share*s.a, m.mean.b+s.share*s.b
		}
	}
	m.mean.chroma = math.Hypot(m.mean.a, m.mean.b)
	return m
}

// apart is a difference and its parts by lightness, chroma and hue, which add up to it.
type apart struct{ all, value, chroma, hue float64 }

// add adds weight times the difference of two shades. Each part is its share of the
// square: ΔE*ab² = ΔL*² + ΔC*² + ΔH*². Source: [CIE15] clause 8.2.1.
func (d *apart) add(s, t *shade, weight float64) {
	dl, da, db, dc := s.l-t.l, s.a-t.a, s.b-t.b, s.chroma-t.chroma
	square := dl*dl + da*da + db*db
	if square == 0 {
		return
	}
	all := math.Sqrt(square)
	value, chroma := dl*dl/all, dc*dc/all
	d.all += weight * all
	d.value += weight * value
	d.chroma += weight * chroma
	d.hue += weight * max(0, all-value-chroma)
}

// around returns how far region a is from those around it, mean from mean.
func (c *Composition) around(a int, painted []mass) (d apart) {
	ring := 0.0
	for b, part := range c.ring[a] {
		if part > 0 && painted[b].any() {
			ring += part
			d.add(&painted[a].mean, &painted[b].mean, part)
		}
	}
	return d.over(ring)
}

// overall returns how far region a is from the whole picture, shade from shade.
func (c *Composition) overall(a int, painted []mass) (d apart) {
	weights := 0.0
	for b := range painted {
		if !painted[b].any() {
			continue
		}
		weight := c.near[a][b] * c.shares[b]
		weights += weight
		if a != b {
			d.addAll(painted[a].shades, painted[b].shades, weight)
		}
	}
	return d.over(weights)
}

// addAll adds weight times the difference between the shades of two regions.
// Source: [Cheng2015], the colour distance of two regions.
func (d *apart) addAll(all, others []shade, weight float64) {
	for i := range all {
		for j := range others {
			d.add(&all[i], &others[j], weight*all[i].share*others[j].share)
		}
	}
}

// over divides by the weights that were added, if any were.
func (d apart) over(weights float64) apart {
	if weights == 0 {
		return apart{}
	}
	return apart{d.all / weights, d.value / weights, d.chroma / weights, d.hue / weights}
}

// standing returns both differences and the shares of them: each counts alike, as in
// their geometric mean. The score is not scaled yet.
func standing(around, overall apart, inside float64) Standing {
	s := Standing{Around: around.all, Overall: overall.all, Score: math.Sqrt(inside * around.all * overall.all)}
	for _, d := range [2]apart{around, overall} {
		if d.all > 0 {
			s.Value, s.Chroma, s.Hue = s.Value+d.value/d.all, s.Chroma+d.chroma/d.all, s.Hue+d.hue/d.all
		}
	}
	if sum := s.Value + s.Chroma + s.Hue; sum > 0 {
		s.Value, s.Chroma, s.Hue = s.Value/sum, s.Chroma/sum, s.Hue/sum
	}
	return s
}

// rank scales the scores and numbers the painted regions by them, of like ones the one
// that is listed first.
func rank(standings []Standing, painted []mass) {
	strongest := 0.0
	var order []int
	for r, s := range standings {
		strongest = max(strongest, s.Score)
		if painted[r].any() {
			order = append(order, r)
		}
	}
	if strongest > 0 {
		for r := range standings {
			standings[r].Score /= strongest
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(coarse(standings[b].Score), coarse(standings[a].Score))
	})
	for n, r := range order {
		standings[r].Rank = n + 1
	}
}

// coarse returns x in millionths, rounded: what a machine's last bit changes decides
// nothing that is compared so.
func coarse(x float64) float64 { return math.Round(1e6 * x) }
