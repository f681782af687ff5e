package report

import (
	"fmt"
	"html/template"
	"math"
	"strings"

	"tonewright/analyze"
	"tonewright/grid"
	"tonewright/report/plan"
)

// sheet is the picture with its grid, in SVG units of one working pixel.
type sheet struct {
	Width, Height int
	ViewBox, Alt  string
	LabelSize     string
	Lines         string // the grid, as a path
	Labels        []label
	Outline       template.HTMLAttr
	RegionMarks   []label
}

// label is a text at a place.
type label struct {
	X, Y string
	Size string // of the letters
	Text string
}

// view is one way to see the picture.
type view struct {
	ID, Label, Caption string
	First              bool
	Href               template.HTMLAttr
	Marks              []label
}

func views(p *plan.Plan, a *art) []view {
	href := func(n int) template.HTMLAttr { return a.image("href", n) }
	pics := &p.Pictures
	return []view{
		{"photo", "Photo", "The photo as it goes onto the panel.", true, href(a.photo), []label{}},
		{"five", "5 values", valueCaption(pics.Values5), false, href(a.five), valueMarks(pics.Values5, pics.Photo)},
		{"nine", "9 values", valueCaption(pics.Values9), false, href(a.nine), valueMarks(pics.Values9, pics.Photo)},
		{"gray", "Gray", "Lightness alone: every place as the gray of its own value.", false, href(a.gray), []label{}},
		{"mixes", "Mixes", "Every place in the colour of its mix, as predicted, with its tag where there is room.", false, href(a.mixes),
			marks(pics.Mixes, pics.Photo, func(i int) string { return pics.Colours[i].ID })},
	}
}

// valueCaption says how much of the panel each step takes.
func valueCaption(v analyze.ValueMap) string {
	n := make([]int, len(v.Steps))
	for _, s := range v.Of {
		n[s]++
	}
	words := make([]string, len(v.Steps))
	for i, step := range v.Steps {
		words[i] = fmt.Sprintf("value %.0f: %s", step, percent(float64(n[i])/float64(len(v.Of))))
	}
	return "Munsell values of the photo, each place at its nearest step. Share of the panel: " + strings.Join(words, "; ") + "."
}

// Sizes of letters in the picture, as parts of its longer side. Ours: the largest
// is read across an easel, below the smallest a number is left out.
const (
	largestMark  = 1.0 / 40
	smallestMark = 1.0 / 110
)

func valueMarks(v analyze.ValueMap, p *analyze.Picture) []label {
	return marks(v.Marks, p, func(i int) string { return fmt.Sprintf("%.0f", v.Steps[i]) })
}

// marks words every mark that has room for its text.
func marks(at []analyze.Mark, p *analyze.Picture, text func(step int) string) []label {
	labels := []label{}
	for _, m := range at {
		if l, ok := markLabel(m, p, text(m.Step)); ok {
			labels = append(labels, l)
		}
	}
	return labels
}

// markLabel fits a text into the free disc around a mark; ok is false if it would
// be too small to read.
func markLabel(m analyze.Mark, p *analyze.Picture, text string) (l label, ok bool) {
	long := float64(max(p.Width, p.Height))
	// A text is about 0.55 of its size wide a letter and has to fit across the disc.
	size := math.Min(2*m.Radius/math.Max(1, 0.55*float64(len(text))), largestMark*long)
	if size < smallestMark*long {
		return label{}, false
	}
	return label{number(float64(m.X)), number(float64(m.Y)), number(size), text}, true
}

func newSheet(p *plan.Plan, a *art) sheet {
	w, h := p.Pictures.Photo.Width, p.Pictures.Photo.Height
	g := p.Grid.Layout()
	margin := float64(max(w, h)) / 26
	xs, ys := axes(g, w, h)
	size := math.Min(margin*0.5, 0.8*math.Min(xs[1]-xs[0], ys[1]-ys[0]))
	s := sheet{
		Width: w, Height: h, Outline: a.image("href", a.outline), Lines: lines(xs, ys), LabelSize: number(size),
		ViewBox: fmt.Sprintf("%s %s %s %s", number(-margin), number(-margin), number(float64(w)+margin), number(float64(h)+margin)),
		Alt:     fmt.Sprintf("%s with a grid of %d columns and %d rows", p.Name, p.Grid.Columns, p.Grid.Rows),
	}
	for i := range g.Columns {
		s.Labels = append(s.Labels, label{X: number((xs[i] + xs[i+1]) / 2), Y: number(-margin / 2), Text: grid.ColumnName(i)})
	}
	for i := range g.Rows {
		s.Labels = append(s.Labels, label{X: number(-margin / 2), Y: number((ys[i] + ys[i+1]) / 2), Text: fmt.Sprint(i + 1)})
	}
	s.RegionMarks = marks(p.Pictures.Regions, p.Pictures.Photo, func(i int) string { return p.Regions[i].Tag })
	return s
}

// axes returns the picture positions of the grid's lines, edges included.
func axes(g grid.Grid, w, h int) (xs, ys []float64) {
	xs, ys = []float64{0}, []float64{0}
	for i := range g.Columns {
		b := g.Box(grid.Cell{Column: i})
		xs = append(xs, float64((b.X+b.Width)/g.Width)*float64(w))
	}
	for i := range g.Rows {
		b := g.Box(grid.Cell{Row: i})
		ys = append(ys, float64((b.Y+b.Height)/g.Height)*float64(h))
	}
	return xs, ys
}

func lines(xs, ys []float64) string {
	var b strings.Builder
	for _, x := range xs {
		fmt.Fprintf(&b, "M%s 0V%s", number(x), number(ys[len(ys)-1]))
	}
	for _, y := range ys {
		fmt.Fprintf(&b, "M0 %sH%s", number(y), number(xs[len(xs)-1]))
	}
	return b.String()
}

// number prints an SVG length to a hundredth of a unit.
func number(v float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", v), "0"), ".")
}
