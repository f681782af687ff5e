// The pictures as the painter's own sight sees them.

package plan

import (
	"tonewright/analyze"
	"tonewright/analyze/colour"
)

// seen is photo and study as a sight sees them, and what it misses of the study.
type seen struct{ photo, study, missed []uint8 }

// seenOf returns the pictures as a sight sees them; none for full sight.
func seenOf(photo, study *analyze.Picture, sight colour.Sight) seen {
	if sight.Full() {
		return seen{}
	}
	return seen{photo.Seen(sight), study.Seen(sight), study.Missed(sight)}
}
