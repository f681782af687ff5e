// What stands out in the study, where that is not as meant, and the edges that are lost.

package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"tonewright/grid"
	"tonewright/report/plan"
)

// standOut is the section; it is left out where nothing was ranked.
type standOut struct {
	Measure, NoRoles, Agree string
	Start                   string // the command that writes a painting file; "" with roles
	Rows                    []standRow
	Disagreements           []disagreement
	Several                 bool       // of them
	LostEdges, MoreEdges    []lostEdge // those past mostLost are folded away
	MoreLabel               string
}

// standRow is a region in the order in which it catches the eye. Bar and the parts
// of it are in pixels.
type standRow struct {
	Rank, Tag, Name, Role, Score string
	Bar                          int
	Value, Chroma, Hue           share
}

// share is a part of a bar, and its figure.
type share struct {
	X, Width int
	Percent  string
}

type disagreement struct {
	Text, Mend  string
	Under, Line string // the region to change and the line for it; "" with no mend
}

type lostEdge struct {
	ATag, AName, BTag, BName            string
	Where, Length, Value, DeltaE, Share string
}

// mostLost is how many lost edges are listed at once.
const mostLost = 6

// barWidth is the width of a bar, CSS pixels.
const barWidth = 150

func standOutOf(p *plan.Plan) standOut {
	s := standOut{Measure: strings.TrimSuffix(p.StandOut.Measure, "."), Rows: []standRow{}, Disagreements: []disagreement{}, LostEdges: []lostEdge{}}
	names := namesOf(p)
	for _, tag := range p.StandOut.Order {
		if r := regionOf(p, tag); r != nil && r.Standing != nil {
			s.Rows = append(s.Rows, standRowOf(r))
		}
	}
	for _, d := range p.StandOut.Disagreements {
		s.Disagreements = append(s.Disagreements, disagreementOf(d))
	}
	s.Several = len(s.Disagreements) > 1
	for i, e := range p.StandOut.LostEdges {
		if i < mostLost {
			s.LostEdges = append(s.LostEdges, lostEdgeOf(p, e, names))
		} else {
			s.MoreEdges = append(s.MoreEdges, lostEdgeOf(p, e, names))
		}
	}
	if n := len(s.MoreEdges); n > 0 {
		s.MoreLabel = count(n, "more lost edge")
	}
	switch {
	case !anyRole(p):
		s.Start = "tonewright start " + photoWord(p.Photo.File)
	case len(s.Disagreements) == 0:
		s.Agree = "Every region stands where its role wants it."
	}
	return s
}

// anyRole tells whether the painter gave a region a role other than the usual one.
func anyRole(p *plan.Plan) bool {
	return slices.ContainsFunc(p.Regions, func(r plan.Region) bool { return r.Role != "" && r.Role != plan.RoleSupport })
}

func standRowOf(r *plan.Region) standRow {
	st := r.Standing
	row := standRow{
		Rank: fmt.Sprint(st.Rank), Tag: r.Tag, Name: r.Name, Role: r.Role,
		Score: fmt.Sprintf("%.0f", 100*st.Score), Bar: pixelsOf(st.Score),
	}
	row.Value = share{0, pixelsOf(st.Value), percentOf(st.Value)}
	row.Chroma = share{row.Value.Width, pixelsOf(st.Chroma), percentOf(st.Chroma)}
	row.Hue = share{row.Chroma.X + row.Chroma.Width, pixelsOf(st.Hue), percentOf(st.Hue)}
	return row
}

func pixelsOf(share float64) int { return int(math.Round(barWidth * share)) }

func percentOf(share float64) string { return fmt.Sprintf("%.0f %%", 100*share) }

func disagreementOf(d plan.Disagreement) disagreement {
	out := disagreement{Text: d.Text}
	if d.Mend != nil {
		out.Mend, out.Under, out.Line = d.Mend.Text, d.Mend.Name, d.Mend.Line
	}
	return out
}

func lostEdgeOf(p *plan.Plan, e plan.LostEdge, names map[string]string) lostEdge {
	return lostEdge{
		e.A, names[e.A], e.B, names[e.B], e.Where,
		lengthOf(p, e), fmt.Sprintf("%.1f", e.ValueApart), fmt.Sprintf("%.0f", e.DeltaE), percent(e.Share),
	}
}

// lengthOf returns how long a lost edge is, in the painter's unit.
func lengthOf(p *plan.Plan, e plan.LostEdge) string {
	return p.Grid.Layout().Unit.Format(grid.Millimetres(e.LengthMM))
}

// namesOf returns the regions' names by tag.
func namesOf(p *plan.Plan) map[string]string {
	names := map[string]string{}
	for _, r := range p.Regions {
		names[r.Tag] = r.Name
	}
	return names
}

// regionOf returns the region with that tag, nil if there is none.
func regionOf(p *plan.Plan, tag string) *plan.Region {
	for i := range p.Regions {
		if p.Regions[i].Tag == tag {
			return &p.Regions[i]
		}
	}
	return nil
}
