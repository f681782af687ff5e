package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"tonewright/match"
	"tonewright/match/paint"
)

// tubeBox is four paints by name alone, since words are all that is asked of them.
var tubeBox = []paint.Paint{
	{ID: "titanium-white", Name: "Titanium White"}, {ID: "viridian", Name: "Viridian"},
	{ID: "yellow-ochre", Name: "Yellow Ochre"}, {ID: "ivory-black", Name: "Ivory Black"},
}

func TestTubesOf(t *testing.T) {
	few := match.Fewest{
		Kept: []int{0, 3}, MeanError: 1.9449, FullError: 1.3781, Proven: true,
		Dropped: []match.DroppedPaint{{Paint: 1, Gain: 0.2249, Nearer: []int{2, 1}, UpTo: 3.14}, {Paint: 2, Gain: 0.012, UpTo: 0.4}},
	}
	got := tubesOf(few, TubeWish{Most: 2}, tubeBox, []string{"A1", "B2", "B3"})
	assert.Equal(t, &Tubes{
		Kept: []string{"titanium-white", "ivory-black"}, MeanError: 1.94, FullError: 1.38, Proven: true,
		Text: "2 of 4 tubes: mean error 1.9 CIEDE2000, 1.4 with all 4.",
		Dropped: []Dropped{
			{"viridian", "Viridian", 0.22, []string{"B3", "B2"}, "Viridian: would bring B3 and B2 nearer, by up to 3.1; 0.2 off the mean."},
			{"yellow-ochre", "Yellow Ochre", 0.01, []string{}, "Yellow Ochre: nothing this picture asks for."},
		},
	}, got)
}

func TestTubesText(t *testing.T) {
	for _, c := range []struct {
		name string
		few  match.Fewest
		wish TubeWish
		want string
	}{
		{"as good as all", match.Fewest{Kept: []int{0}, MeanError: 1.42, FullError: 1.38, Proven: true}, TubeWish{Most: 1},
			"1 of 4 tubes: mean error 1.4 CIEDE2000, as near as with all 4."},
		{"fewer than asked for", match.Fewest{Kept: []int{0}, MeanError: 1.6, FullError: 1.4, Proven: true}, TubeWish{Most: 3},
			"1 of 4 tubes: mean error 1.6 CIEDE2000, 1.4 with all 4. No recipe needs one more."},
		{"all", match.Fewest{Kept: []int{0, 1, 2, 3}, MeanError: 1.4, FullError: 1.4, Proven: true}, TubeWish{Most: 9},
			"Every tube of the box is kept, 4: mean error 1.4 CIEDE2000."},
		{"too few for the limit", match.Fewest{Kept: []int{0, 1}, MeanError: 2.6, FullError: 1.4, Proven: true, Over: []match.RegionError{{Region: 1, Error: 3.14}, {Region: 3, Error: 2.5}}},
			TubeWish{Most: 2, Within: 2},
			"2 of 4 tubes: mean error 2.6 CIEDE2000, 1.4 with all 4. Not within 2: B (3.1) and D (2.5); more tubes or a wider limit may do."},
		{"beyond the box", match.Fewest{Kept: []int{0, 1}, MeanError: 2.6, FullError: 2.4, Over: []match.RegionError{{Region: 0, Error: 3.1}}}, TubeWish{Within: 1.5},
			"2 of 4 tubes: mean error 2.6 CIEDE2000, 2.4 with all 4. Not within 1.5: A (3.1); the whole box does hardly better there. " +
				"The search was cut short or had to guess: a slightly better choice may exist."},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, tubesOf(c.few, c.wish, tubeBox, nil).Text) })
	}
}

func TestBoughtText(t *testing.T) {
	nine := []string{"A1", "A2", "A3", "B1", "B2", "B3", "C1", "C2", "C3"}
	for _, c := range []struct {
		dropped match.DroppedPaint
		tags    []string
		want    string
	}{
		{match.DroppedPaint{Gain: 0.31, UpTo: 0.9}, nil, "would bring no colour nearer by 1 or more; 0.3 off the mean"},
		{match.DroppedPaint{Gain: 0.02, UpTo: 2.26}, nine[:1], "would bring A1 nearer, by up to 2.3; less than 0.1 off the mean"},
		{match.DroppedPaint{Gain: 1, UpTo: 5}, nine[:7], "would bring A1, A2, A3, B1, B2, B3 and C1 nearer, by up to 5.0; 1.0 off the mean"},
		{match.DroppedPaint{Gain: 1, UpTo: 5}, nine, "would bring A1, A2, A3, B1, B2, B3 and 3 more nearer, by up to 5.0; 1.0 off the mean"},
	} {
		assert.Equal(t, c.want, bought(c.dropped, c.tags))
	}
	assert.Equal(t, "C3", nine[8], "the list itself is kept")
}
