// The search: every mix of the box is made once, in fast optics, and held
// against the aims that it may be near to.

package match

import (
	"cmp"
	"runtime"
	"slices"
	"sync"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// A set is the paints of a mix, by index in the box, rising; unused places are -1.
type set [3]int32

func (s set) size() int {
	n := 0
	for n < len(s) && s[n] >= 0 {
		n++
	}
	return n
}

// A find is the nearest that the mixes of one set come to an aim.
type find struct {
	set    set
	at     point
	deltaE float32
}

// compareFinds puts the nearer first, then the fewer paints, then the lower indices.
func compareFinds(a, b find) int {
	if a.deltaE != b.deltaE {
		return cmp.Compare(a.deltaE, b.deltaE)
	}
	return cmp.Or(cmp.Compare(a.set.size(), b.set.size()), slices.Compare(a.set[:], b.set[:]))
}

// Ours: see TestNeverFarFromDense for what these are worth.
const (
	kept   = 16  // sets of two and sets of three kept for each aim in each part of the search
	slack  = 1.2 // a gauge may err by this factor
	shards = 16  // parts of the search, fixed so that its result is the same on any number of cores
)

// search is what all workers share; none changes it.
type search struct {
	paints  []paint.Paint
	levels  levels
	amounts [][]optics // by paint and level
	strong  []bool     // by paint
	white   []bool
	fine    bool // see fewPaints
	aims    []colour.Lab
	finish  paint.Finish
	ground  *colour.Spectrum // nil where nobody asks what shows through
	coat    float64
	glow    *glow
	with    []int32 // paints that every mix must have
	twos    map[kind][]measure
	threes  map[kind]*program

	lowest, highest float64 // Munsell values that the box reaches
}

func newSearch(paints []paint.Paint, aims []colour.Lab, opt Options) *search {
	s := &search{paints: paints, levels: levels{level(opt.MaxParts)}, aims: aims, finish: opt.Finish, ground: opt.Ground, coat: opt.Coat, glow: glowOf(opt.Finish), fine: len(paints) <= fewPaints}
	for _, p := range opt.With {
		s.with = append(s.with, int32(p))
	}
	for i := range paints {
		amounts := make([]optics, s.levels.count())
		for v := 1; v < len(amounts); v++ {
			amounts[v] = opticsOf(&paints[i], s.levels.parts(level(v)))
		}
		s.amounts = append(s.amounts, amounts)
		s.strong = append(s.strong, paints[i].Facts.Strong())
		s.white = append(s.white, paints[i].White())
	}
	s.makeMenus()
	return s
}

// makeMenus lists the measures of every kind of set.
func (s *search) makeMenus() {
	s.twos, s.threes = map[kind][]measure{}, map[kind]*program{}
	add := func(k kind) {
		if _, known := s.threes[k]; !known {
			s.twos[k], s.threes[k] = s.levels.pairs(k), newProgram(s.levels, k)
		}
	}
	for white := range 3 {
		add(kind{[3]bool{true, true, true}, white, s.fine})
	}
	for n := range 8 {
		add(kind{[3]bool{n&1 > 0, n&2 > 0, n&4 > 0}, -1, s.fine})
	}
}

// finds returns, for each aim, the sets that come near to it, nearest first.
func (s *search) finds(most int) [][]find {
	found := s.singles()
	if most == 1 || len(s.paints) == 1 {
		return found
	}
	looks := s.firstLooks(most)
	bounds, patches := make([]float32, len(s.aims)), make([]patch, len(s.aims))
	inParallel(len(s.aims), func(a int) {
		l := newLens(s.aims[a], looks)
		bounds[a] = l.bound()
		patches[a] = l.patch(int32(a), bounds[a])
	})
	field := newField(patches)
	scans := make([]shard, shards)
	inParallel(shards, func(i int) { scans[i] = s.scan(i, field, bounds, most) })
	inParallel(len(s.aims), func(a int) { found[a] = join(found[a], scans, a) })
	return found
}

// singles returns every paint alone for every aim.
func (s *search) singles() [][]find {
	found := make([][]find, len(s.aims))
	inParallel(len(s.aims), func(a int) {
		for i := range s.paints {
			if !s.allows(set{int32(i), -1, -1}) {
				continue
			}
			p := s.glow.screen(&s.amounts[i][1], &s.amounts[i][0])
			found[a] = append(found[a], find{set{int32(i), -1, -1}, p, float32(colour.DeltaE00(s.aims[a], p.lab()))})
		}
	})
	return found
}

// shard is what one part of the search found, of two paints and of three.
type shard struct{ pairs, triples *scan }

// scan makes every mix of each shards-th pair of paints, and of those two with a
// later third.
func (s *search) scan(part int, field *field, bounds []float32, most int) shard {
	found := shard{newScan(s, field, bounds), newScan(s, field, bounds)}
	var bases []optics
	for n, of := range s.pairsOfPaints() {
		if n%shards != part {
			continue
		}
		if s.allows(of) {
			for _, m := range s.menu(of) {
				found.pairs.hold(s.screen(of, m))
			}
			found.pairs.close(of)
		}
		if most < 3 {
			continue
		}
		var program *program
		for k := int(of[1]) + 1; k < len(s.paints); k++ {
			three := set{of[0], of[1], int32(k)}
			if !s.allows(three) {
				continue
			}
			if p := s.threes[s.kindOf(three)]; p != program {
				program, bases = p, bases[:0]
				for _, b := range p.bases {
					bases = append(bases, s.amounts[of[0]][b[0]].add(&s.amounts[of[1]][b[1]]))
				}
			}
			amounts := s.amounts[k]
			for _, step := range program.steps {
				found.triples.hold(s.glow.screen(&bases[step.base], &amounts[step.more]))
			}
			found.triples.close(three)
		}
	}
	return found
}

// allows tells whether a set has every paint that a mix must have.
func (s *search) allows(of set) bool {
	for _, p := range s.with {
		if !slices.Contains(of[:], p) {
			return false
		}
	}
	return true
}

// join returns what was found for an aim, nearest first.
func join(found []find, shards []shard, aim int) []find {
	for _, s := range shards {
		found = append(append(found, s.pairs.best[aim]...), s.triples.best[aim]...)
	}
	slices.SortFunc(found, compareFinds)
	return found
}

func (s *search) pairsOfPaints() (all []set) {
	for i := range s.paints {
		for j := i + 1; j < len(s.paints); j++ {
			all = append(all, set{int32(i), int32(j), -1})
		}
	}
	return all
}

// inParallel calls work for 0 to n-1, on as many cores as there are.
func inParallel(n int, work func(i int)) {
	next := make(chan int)
	var all sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		all.Go(func() {
			for i := range next {
				work(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	all.Wait()
}
