// The pictures as the painter's own sight sees them.

package plan

import (
	"tonewright/analyze"
	"tonewright/analyze/colour"
)

// seen is photo and study as a sight sees them, and what it misses of the study.
type seen struct {
	photo, study, missed []uint8
	borders              []bool // see Pictures.LostBorders
}

// seenOf returns the pictures as a sight sees them; none for full sight. colourOf is
// each pixel's pile.
func seenOf(photo, study *analyze.Picture, colourOf []uint16, sight colour.Sight) seen {
	if sight.Full() {
		return seen{}
	}
	return seen{photo.Seen(sight), study.Seen(sight), study.Missed(sight), lostBorders(study, colourOf, sight)}
}
