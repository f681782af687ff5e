package plan

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
)

// madeRegions are regions of so many colours each, mixed from a box for random aims.
func madeRegions(random *rand.Rand, opt Options, colours ...int) []Region {
	var aims []colour.Lab
	for range colours {
		for range 24 {
			aims = append(aims, colour.Lab{L: 15 + 75*random.Float64(), A: 50*random.Float64() - 20, B: 60*random.Float64() - 20})
		}
	}
	n := 0
	for _, c := range colours {
		n += c
	}
	recipes := match.Recipes(opt.Box.Paints, aims[:n], opt.Mixing)
	regions := make([]Region, len(colours))
	for r := range regions {
		regions[r] = Region{Tag: tagOf(r), Name: fmt.Sprint("region ", r), Palette: Palette{From: WholeBox}}
		for j := range colours[r] {
			best := RecipeOf(recipes[0][0], opt.Box.Paints, opt.Ground.Name)
			share := 1 / float64(colours[r])
			regions[r].Colours = append(regions[r].Colours, Colour{
				ID: colourTag(r, j), Share: share, PanelShare: share / float64(len(colours)),
				AimLab: TripleOf(aims[0]), Recipe: &best,
			})
			recipes, aims = recipes[1:], aims[1:]
		}
	}
	return regions
}

// aBox is a random box: a white, mostly, and some of the library's paints.
func aBox(random *rand.Rand) paint.Box {
	all := paint.Library()
	whites := []string{"titanium-white", "titanium-white", "lead-white", "zinc-white"}
	box := paint.Box{Name: "box", Paints: []paint.Paint{owned(whites[random.IntN(len(whites))])}}
	for _, i := range random.Perm(len(all))[:4+random.IntN(8)] {
		if all[i].ID != box.Paints[0].ID {
			box.Paints = append(box.Paints, all[i])
		}
	}
	return box
}

// anywhere is what layers are worked out from when the regions lie in their order and
// every one touches the next.
func anywhere(regions []Region, opt Options) layersFrom {
	in := layersFrom{regions: regions, box: opt.Box.Paints, opt: opt, touch: func(a, b int) bool { return a-b == 1 || b-a == 1 }}
	for r := range regions {
		in.behind = append(in.behind, r)
	}
	return in
}

// onGround are options with a ground of that name.
func onGround(t testing.TB, name string, box paint.Box, work Work) Options {
	ground, err := ParseGround(name)
	require.NoError(t, err)
	return Options{Ground: ground, Box: box, Work: work}.withDefaults()
}

// medium reads a medium.
func medium(t testing.TB, text string) layer.Medium {
	m, err := layer.ParseMedium(text)
	require.NoError(t, err)
	return m
}

// laidBy builds, from what a plan says alone, the stack of coats in a colour's place on the
// days of the schedule.
func laidBy(t testing.TB, l Layers, d Days, region, tag string) (stack []layer.Laid) {
	day := dayOf(d)
	for _, c := range l.Coats {
		for _, m := range c.Mixes {
			if c.Region != region || indexOfWord(m.On, tag) < 0 {
				continue
			}
			laid := layer.Laid{Name: c.ID, Day: float64(day[c.ID]), Wet: c.Into != ""}
			laid.Film, laid.Medium = c.FilmUM, medium(t, c.Medium)
			for _, part := range m.Parts {
				laid.Paints, laid.Parts = append(laid.Paints, owned(part.Paint)), append(laid.Parts, part.Parts)
			}
			stack = append(stack, laid)
		}
	}
	return stack
}

func indexOfWord(words []string, word string) int {
	for i, w := range words {
		if w == word {
			return i
		}
	}
	return -1
}

// dayOf returns the day of each coat.
func dayOf(d Days) map[string]int {
	day := map[string]int{}
	for _, s := range d.Sessions {
		for _, id := range s.Coats {
			day[id] = s.Day
		}
	}
	return day
}

// changedBy is a coat of the painting file with lines of it changed.
func changedBy(t testing.TB, wish CoatWish, lines string, box []paint.Paint) CoatWish {
	for line := range strings.SplitSeq(lines, "\n") {
		wish = changedLine(t, wish, line, box)
	}
	return wish
}

func changedLine(t testing.TB, wish CoatWish, line string, box []paint.Paint) CoatWish {
	key, value, found := strings.Cut(line, " = ")
	require.True(t, found, line)
	if text, err := strconv.Unquote(value); err == nil {
		value = text
	}
	switch key {
	case "after":
		n, err := strconv.Atoi(value)
		require.NoError(t, err)
		wish.After = n
	case "wet":
		require.Equal(t, "false", value)
		wish.Wet = false
	case "film":
		n, err := strconv.ParseFloat(value, 64)
		require.NoError(t, err)
		wish.Film = n
	case "medium":
		m := medium(t, value)
		wish.Medium = &m
	case "mix":
		pile, err := match.ParsePile(box, value)
		require.NoError(t, err)
		wish.Pile = &pile
	default:
		t.Fatalf("no key of a coat: %s", line)
	}
	return wish
}
