// Where rank and role disagree.

package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tonewright/analyze"
	"tonewright/match"
)

// misplaced lists the regions whose rank does not fit their role: a focal one that is
// outranked by one that is not, and a quiet one that outranks a focal one or more than
// half of those between. A quiet thing that is small or light will outrank a wall.
func (s *scene) misplaced(standings []analyze.Standing) (regions []int) {
	support := 0
	for r, st := range standings {
		if st.Rank > 0 && s.wishes[r].role() == RoleSupport {
			support++
		}
	}
	for r := range standings {
		rivals, focal := s.rivals(r, standings), 0
		for _, rival := range rivals {
			if s.wishes[rival].role() == RoleFocal {
				focal++
			}
		}
		switch s.wishes[r].role() {
		case RoleFocal:
			if len(rivals) > 0 {
				regions = append(regions, r)
			}
		case RoleQuiet:
			if focal > 0 || 2*(len(rivals)-focal) > support {
				regions = append(regions, r)
			}
		}
	}
	return regions
}

// disagreements says of each misplaced region what stands in its way and what mends it.
func (s *scene) disagreements(standings []analyze.Standing) []Disagreement {
	list := []Disagreement{}
	misplaced := s.misplaced(standings)
	for _, r := range misplaced {
		rivals := s.rivals(r, standings)
		d := Disagreement{Region: tagOf(r), Role: s.wishes[r].role(), Rank: standings[r].Rank, Mend: s.mend(r, rivals, misplaced)}
		names := make([]string, len(rivals))
		for i, rival := range rivals {
			names[i] = s.label(rival)
		}
		if d.Role == RoleFocal {
			d.Text = fmt.Sprintf("%s is to be focal, but stands out only as number %d: %s.", s.label(r), d.Rank, standOutMore(names))
		} else {
			d.Text = fmt.Sprintf("%s is to be quiet, but stands out as number %d, more than %s.", s.label(r), d.Rank, match.Listed(names))
		}
		if d.Mend == nil {
			d.Text += " No change of one region's palette and value was found that mends it."
		}
		list = append(list, d)
	}
	return list
}

func standOutMore(names []string) string {
	if len(names) == 1 {
		return names[0] + " stands out more"
	}
	return match.Listed(names) + " stand out more"
}

// label is a region's tag and name; what no region covers has no wish.
func (s *scene) label(r int) string {
	return fmt.Sprintf("%s (%s)", tagOf(r), cmp.Or(s.wishes[r].Name, analyze.TheRest))
}

// rivals lists, the nearest in rank first, the regions of lower role that outrank a
// focal region, or those of higher role that a quiet one outranks.
func (s *scene) rivals(r int, standings []analyze.Standing) []int {
	role, rank := s.wishes[r].role(), standings[r].Rank
	var list []int
	for i, st := range standings {
		level := math.Abs(st.Score-standings[r].Score) < evenly
		above := st.Rank > 0 && st.Rank < rank && !level
		below := st.Rank > rank && rank > 0 && !level
		other := s.wishes[i].role() != role
		if role == RoleFocal && above && other || role == RoleQuiet && below && other {
			list = append(list, i)
		}
	}
	slices.SortFunc(list, func(a, b int) int {
		return cmp.Compare(apartRanks(standings[a].Rank, rank), apartRanks(standings[b].Rank, rank))
	})
	return list
}

// evenly is the difference of scores under which neither of two regions stands out more:
// what ranks them then is only their order in the file. The same as in analyze.Standings.
const evenly = 1e-6

func apartRanks(a, b int) int { return max(a-b, b-a) }
