package plan

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
)

// jugAndLid are options whose coats may be for two regions.
func jugAndLid(coats ...CoatWish) Options {
	return Options{Box: paint.StarterBox(), Regions: []RegionWish{{Name: "Jug"}, {Name: "lid"}}, Work: Work{Coats: coats}}
}

// What is usual, what is not set, and both ends of each range are good.
func TestCheckWorkGood(t *testing.T) {
	box := paint.StarterBox().Paints
	for name, opt := range map[string]Options{
		"nothing": {},
		"least": {Detail: 1, Work: Work{
			Air: layer.Air{Celsius: LeastCelsius, Humidity: LeastHumidity}, Film: LeastFilm, Waste: new(0.0), Start: "1900-01-01", Sessions: 1, Piles: 1,
		}},
		"most": {Detail: MostDetail, Work: Work{
			Air: layer.Air{Celsius: MostCelsius, Humidity: MostHumidity}, Medium: layer.Medium{Kind: layer.Linseed, Parts: 1}, Film: MostFilm,
			Waste: new(float64(MostWaste)), Start: "2199-12-31", Sessions: MostSessions, Piles: MostPiles,
		}},
		"coats": jugAndLid(
			CoatWish{Region: "jug ", Pass: PassBlockIn, Pile: &match.Pile{Paints: box[3:5], Parts: []float64{1, 2}}, Medium: &layer.Medium{Kind: layer.Solvent, Parts: 0.25}, Film: LeastCoat},
			CoatWish{Region: "LID", Pass: PassGlaze, Medium: &layer.Medium{}, Film: MostCoat},
			CoatWish{Region: "Jug", Pass: PassNext, Wet: true, After: MostAfter},
		),
	} {
		assert.NoError(t, checkWork(opt), name)
	}
}

// Each mistake is told with the key that it stands under.
func TestCheckWorkKeys(t *testing.T) {
	for _, c := range []struct {
		key, want string
		opt       Options
	}{
		{"detail", "detail of 11 is out of range: 0 to 10", Options{Detail: 11}},
		{"detail", "detail of -1 is out of range", Options{Detail: -1}},
		{"medium", "unknown medium", Options{Work: Work{Medium: layer.Medium{Kind: "water", Parts: 1}}}},
		{"medium", "parts of medium and of paint", Options{Work: Work{Medium: layer.Medium{Kind: layer.Linseed, Parts: 1e6}}}},
		{"film", "a film of 9.9 is out of range: 10 to 1000", Options{Work: Work{Film: 9.9}}},
		{"film", "a film of NaN is out of range", Options{Work: Work{Film: math.NaN()}}},
		{"waste", "a waste of 2.1 is out of range: 0 to 2", Options{Work: Work{Waste: new(2.1)}}},
		{"temperature", "a temperature of -1 is out of range: 0 to 45", Options{Work: Work{Air: layer.Air{Celsius: -1, Humidity: 50}}}},
		{"humidity", "a humidity of 0 is out of range: 5 to 95", Options{Work: Work{Air: layer.Air{Celsius: 20}}}},
		{"start", "is not a date", Options{Work: Work{Start: "soon"}}},
		{"sessions", "sessions a week of 8 is out of range", Options{Work: Work{Sessions: 8}}},
		{"piles", "piles in a session of 41 is out of range", Options{Work: Work{Piles: 41}}},
		{"layer", `a coat is set for region "jug", but the regions are found in the picture`, Options{Work: Work{Coats: []CoatWish{{Region: "jug", Pass: PassGlaze}}}}},
		{"layer", `a coat is set for region "jar", which is none; there are Jug, lid`, jugAndLid(CoatWish{Region: "jar", Pass: PassGlaze})},
		{"layer", "201 coats are too many: set at most 200", jugAndLid(make([]CoatWish, 201)...)},
	} {
		err := checkWork(c.opt)
		wrong, ok := errors.AsType[KeyError](err)
		require.True(t, ok, "%s: %v", c.want, err)
		assert.Equal(t, c.key, wrong.Key)
		assert.ErrorContains(t, err, c.want)
	}
}

// A mistake in a coat is its region's.
func TestCheckWorkCoats(t *testing.T) {
	notOwned, err := paint.Find(nil, "cobalt-blue")
	require.NoError(t, err)
	good := CoatWish{Region: "jug", Pass: PassBlockIn}
	for want, c := range map[string]CoatWish{
		`pass "scumble" is not known: block-in, next pass, glaze`: {Pass: "scumble"},
		"a coat of 0.01 times an ordinary one is out of range":    {Pass: PassGlaze, Film: 0.01},
		"367 days after the coat before is out of range":          {Pass: PassGlaze, After: 367},
		"-1 days after the coat before is out of range":           {Pass: PassGlaze, After: -1},
		"unknown medium":                                       {Pass: PassGlaze, Medium: &layer.Medium{Kind: "water", Parts: 1}},
		"a coat's mix has 0 paints and 0 parts":                {Pass: PassGlaze, Pile: &match.Pile{}},
		"cobalt-blue is not in the box":                        {Pass: PassGlaze, Pile: &match.Pile{Paints: []paint.Paint{notOwned}, Parts: []float64{1}}},
		"its first coat cannot be painted wet into one before": {Region: "lid", Pass: PassGlaze, Wet: true},
		"its first coat cannot wait for one before":            {Region: "lid", Pass: PassGlaze, After: 1},
	} {
		if c.Region == "" {
			c.Region = "JUG"
		}
		err := checkWork(jugAndLid(good, c))
		wrong, ok := errors.AsType[RegionError](err)
		require.True(t, ok, "%s: %v", want, err)
		assert.Equal(t, map[string]string{"JUG": "Jug", "lid": "lid"}[c.Region], wrong.Name)
		assert.ErrorContains(t, err, want)
	}
}
