package report

import (
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/report/plan"
)

// makeComposed is the demo's plan with everything in it that composing adds, made up
// by hand: these tests are about how it is worded and drawn.
var makeComposed = sync.OnceValues(func() (*plan.Plan, error) {
	p, err := plan.Make(plan.Options{Photo: "../testdata/kettle.jpg", Version: "test"})
	if err == nil {
		compose(p)
	}
	return p, err
})

func composedPlan(t *testing.T) *plan.Plan {
	p, err := makeComposed()
	require.NoError(t, err)
	return p
}

// compose fills in what composing adds to a plan of two regions of two colours or more.
func compose(p *plan.Plan) {
	p.Sight, p.Panel.Ground = "deutan 1", "umber"
	composePictures(&p.Pictures)
	composeRegions(p.Regions)
	a, b := p.Regions[0], p.Regions[1]
	p.StandOut.Order = tagsIn(p.Regions)
	p.StandOut.Measure = "Mean differences in CIE 1976 L*a*b*, nearer regions counting more."
	p.StandOut.Disagreements = []plan.Disagreement{
		{Region: a.Tag, Role: "focal", Rank: len(p.Regions), Text: a.Tag + " is to be focal, but stands out last.",
			Mend: &plan.Mend{Region: b.Tag, Name: b.Name, Line: "aim = \"value\"\nvalue_shift = -1", Change: 2.1, Text: "Darkening " + b.Name + " by one value step brings it first."}},
		{Region: b.Tag, Role: "quiet", Rank: 1, Text: b.Tag + " is to be quiet, but stands out first. No single change was found that mends it."},
	}
	p.StandOut.LostEdges = []plan.LostEdge{{A: a.Tag, B: b.Tag, Cells: []string{"D4", "E4", "F4"}, Where: "D4:F4", LengthMM: 76.2, Share: 0.31, ValueApart: 0.2, DeltaE: 14, Text: "lost edge"}}
	one, two := a.Colours[0].ID, b.Colours[1].ID
	alike := plan.LookAlike{A: one, B: two, Full: 22.4, Seen: 2.1, Tells: "Add white: to others the left turns pinker; keep it on the left.", Kind: "tint"}
	p.LookAlikes = plan.LookAlikes{
		Sight: p.Sight, Piles: slices.Repeat([]plan.LookAlike{alike}, mostAlike+2),
		Tubes:   []plan.LookAlike{{A: "viridian", B: "burnt-umber", Full: 31, Seen: 3.3, Tells: "Viridian is transparent: it shows a line drawn beneath it.", Kind: "opacity"}},
		Regions: []plan.LookAlike{{A: a.Tag, B: b.Tag, Full: 14.2, Seen: 3.9, Tells: a.Name + " is 1.2 values lighter.", Kind: "value"}},
		Reverse: []plan.LookAlike{{A: two, B: one, Full: 3.1, Seen: 11, Tells: "Others see hardly a step here.", Kind: "tag"}},
	}
	p.Tubes = &plan.Tubes{Kept: []string{"titanium-white", "yellow-ochre", "ivory-black"}, MeanError: 3.84, FullError: 1.2, Proven: true,
		Dropped: []plan.Dropped{{Paint: "pyrrole-red", Name: "Pyrrole Red", Gain: 0.61, Colours: []string{one, two}, Text: "Pyrrole Red: would bring them nearer, by up to 1.2; 0.6 off the mean."}},
		Text:    "3 tubes of 12 do for this picture."}
}

func composeRegions(regions []plan.Region) {
	for i := range regions {
		r := &regions[i]
		r.Palette = plan.Palette{Paints: []string{"yellow-ochre", "burnt-umber"}, White: "titanium-white", Aim: "value", From: "painter", ValueMin: 2.1, ValueMax: 9.4, Family: "analogous"}
		r.Standing = &plan.Standing{Rank: i + 1, Score: 1 - float64(i)/20, Around: 30, Overall: 20, Value: 0.6, Chroma: 0.3, Hue: 0.1}
	}
	first, second := &regions[0], &regions[1]
	first.Role, second.Role, second.Shift = "focal", "quiet", -1
	first.Palette.Note = "It wants values below 2.1, which this palette lacks; a dark such as ivory black would reach them."
	first.Scheme = "complement of " + second.Name
	first.Suggestions = []plan.Suggestion{
		{Paints: []string{"ultramarine-blue", "burnt-sienna"}, Names: []string{"Ultramarine Blue", "Burnt Sienna"}, White: "titanium-white", ValueMin: 1.9, ValueMax: 9.4, Covered: 0.98, Chroma: 7.4, Dulls: 3.2, TieIns: []string{second.Tag}, Why: "Opposite the other's hue; both tubes are in use already.", Line: `palette = ["ultramarine-blue", "burnt-sienna", "titanium-white"]`},
		{Paints: []string{"viridian"}, Names: []string{"Viridian"}, ValueMin: 2.8, ValueMax: 4.4, Covered: 0.31, Chroma: 5, Why: "One tube.", Line: `palette = ["viridian"]`},
	}
}

// composePictures makes a study of the mixes with the photo's lightness, and stands in
// for what a sight makes of it.
func composePictures(pics *plan.Pictures) {
	photo := pics.Photo
	study := &analyze.Picture{Width: photo.Width, Height: photo.Height, Lab: make([]float32, len(photo.Lab)), RGB: make([]uint8, len(photo.RGB))}
	pics.PhotoSeen, pics.StudySeen, pics.Missed = make([]uint8, len(photo.RGB)), make([]uint8, len(photo.RGB)), make([]uint8, len(photo.RGB)/3)
	pics.LostBorders = make([]bool, len(pics.Missed))
	merge := func(to, from []uint8) {
		to[0], to[1], to[2] = from[0]/2+from[1]/2, from[0]/2+from[1]/2, from[2]
	}
	for i := range pics.ColourOf {
		mix := pics.Colours[pics.ColourOf[i]].Mix
		c := colour.Lab{L: (mix.L + photo.At(i).L) / 2, A: mix.A, B: mix.B}
		study.Lab[3*i], study.Lab[3*i+1], study.Lab[3*i+2] = float32(c.L), float32(c.A), float32(c.B)
		s := swatchColour(c)
		study.RGB[3*i], study.RGB[3*i+1], study.RGB[3*i+2] = s.R, s.G, s.B
		merge(pics.PhotoSeen[3*i:], photo.RGB[3*i:])
		merge(pics.StudySeen[3*i:], study.RGB[3*i:])
		pics.Missed[i] = uint8(min(2, max(0, c.A/8)))
	}
	pics.Study, pics.OneCoat = study, study
}

func tagsIn(regions []plan.Region) (tags []string) {
	for _, r := range regions {
		tags = append(tags, r.Tag)
	}
	return tags
}
