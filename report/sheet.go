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

// sheet is what all views of the picture share, in SVG units of one working pixel.
type sheet struct {
	Width, Height int
	ViewBox, Alt  string
	LabelSize     string
	Lines         string // the grid, as a path
	Labels        []label
	Outline       template.HTMLAttr
	RegionMarks   []tag
	GrayMatrix    string // of the filter that leaves lightness alone
}

// grayMatrix turns linear-light sRGB into the gray of the same luminance, and so of
// the same L* and Munsell value. Source: [IEC61966-2-1], the row of Y.
const grayMatrix = ".2126 .7152 .0722 0 0 .2126 .7152 .0722 0 0 .2126 .7152 .0722 0 0 0 0 0 1 0"

// label is a text at a place.
type label struct {
	X, Y string
	Size string // of the letters
	Text string
}

// tag is a label in its box.
type tag struct {
	label
	Left, Top, Width, Height, Round string
}

// valueCaption says whose values they are and how much of the panel each step takes.
func valueCaption(p *plan.Plan, v analyze.ValueMap) string {
	n := make([]int, len(v.Steps))
	for _, s := range v.Of {
		n[s]++
	}
	var words []string
	for i, step := range v.Steps {
		if n[i] > 0 {
			words = append(words, fmt.Sprintf("value %.0f: %s", step, percent(float64(n[i])/float64(len(v.Of)))))
		}
	}
	whose := "fitted to this box"
	if p.ValueKey.Mode == "literal" {
		whose = "as photographed"
	}
	return "Munsell values to paint, " + whose + ", each place at its nearest step. Share of the panel: " + strings.Join(words, "; ") + "."
}

// Sizes of letters in the picture, as parts of its longer side. Ours: the largest
// is read across an easel, below the smallest a value is left out.
const (
	largestMark  = 1.0 / 40
	smallestMark = 1.0 / 110
)

// letterWidth is the width of a letter or digit as a part of its size, about.
const letterWidth = 0.55

// markSize fits a text across the free disc around a mark.
func markSize(m analyze.Mark, long float64, text string) float64 {
	return math.Min(2*m.Radius/math.Max(1, letterWidth*float64(len(text))), largestMark*long)
}

func valueMarks(v analyze.ValueMap, p *analyze.Picture) []label {
	long := float64(max(p.Width, p.Height))
	labels := []label{}
	for _, m := range v.Marks {
		text := fmt.Sprintf("%.0f", v.Steps[m.Step])
		if size := markSize(m, long, text); size >= smallestMark*long {
			labels = append(labels, label{number(float64(m.X)), number(float64(m.Y)), number(size), text})
		}
	}
	return labels
}

// tags boxes the text of every mark; a box is kept inside the picture.
func tags(at []analyze.Mark, p *analyze.Picture, text func(step int) string) []tag {
	w, h := float64(p.Width), float64(p.Height)
	list := []tag{}
	for _, m := range at {
		t := text(m.Step)
		size := math.Max(smallestMark*math.Max(w, h), 0.8*markSize(m, math.Max(w, h), t))
		wide, high := size*(letterWidth*float64(len(t))+0.5), size*1.2
		x := math.Max(wide/2, math.Min(w-wide/2, float64(m.X)))
		y := math.Max(high/2, math.Min(h-high/2, float64(m.Y)))
		list = append(list, tag{label{number(x), number(y), number(size), t},
			number(x - wide/2), number(y - high/2), number(wide), number(high), number(size * 0.15)})
	}
	return list
}

func newSheet(p *plan.Plan, a *art) sheet {
	w, h := p.Pictures.Photo.Width, p.Pictures.Photo.Height
	g := p.Grid.Layout()
	margin := float64(max(w, h)) / 26
	xs, ys := axes(g, w, h)
	size := margin * 0.5
	s := sheet{
		Width: w, Height: h, Outline: a.image("href", a.outline), Lines: lines(xs, ys), GrayMatrix: grayMatrix, LabelSize: number(size),
		ViewBox: fmt.Sprintf("%s %s %s %s", number(-margin), number(-margin), number(float64(w)+1.5*margin), number(float64(h)+1.5*margin)),
		Alt:     fmt.Sprintf("%s with a grid of %d columns and %d rows", p.Name, p.Grid.Columns, p.Grid.Rows),
	}
	for _, x := range axisLabels(xs, size*(letterWidth*float64(len(grid.ColumnName(g.Columns-1)))+0.9)) {
		s.Labels = append(s.Labels, label{X: number(x.at), Y: number(-margin / 2), Text: grid.ColumnName(x.index)})
	}
	for _, y := range axisLabels(ys, size*1.3) {
		s.Labels = append(s.Labels, label{X: number(-margin / 2), Y: number(y.at), Text: fmt.Sprint(y.index + 1)})
	}
	s.RegionMarks = tags(p.Pictures.Regions, p.Pictures.Photo, func(i int) string { return p.Regions[i].Tag })
	return s
}

// axisLabel is a column or row to be labelled and where its middle is.
type axisLabel struct {
	index int
	at    float64
}

// axisLabels returns the columns or rows that have room for a label: all, or every
// second, fifth and so on if they are narrow, and no part cell too small for one.
func axisLabels(edges []float64, room float64) []axisLabel {
	cell := edges[1] - edges[0]
	every := 1
	for _, n := range []int{2, 5, 10, 20, 50, 100} {
		if cell*float64(every) >= room {
			break
		}
		every = n
	}
	var list []axisLabel
	for i := 0; i+1 < len(edges); i += every {
		if edges[i+1]-edges[i] >= math.Min(cell, 0.6*room) {
			list = append(list, axisLabel{i, (edges[i] + edges[i+1]) / 2})
		}
	}
	return list
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
