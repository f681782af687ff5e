package answer

import (
	"fmt"
	"slices"
	"strings"
)

// Forgotten is a round that was taken out of the log.
type Forgotten struct {
	Made
	Aim   string `json:"aim"` // as it was given for that round
	Date  string `json:"date"`
	Photo string `json:"photo"`
	Pile  string `json:"pile"`   // "-" where none was told
	Left  int    `json:"rounds"` // in the log, of any aim
}

// Forget takes the last round for an aim out of the log in a file, so that nothing is
// learned from it. The aim is a tag of the plan or a colour, as SwatchFor has it.
// It is an error if the log has no round for it.
func Forget(log *Rounds, file string, opt SwatchOptions) (*Forgotten, error) {
	wanted, aimed, err := findAim(opt.Aim, opt.Plan, opt.Box.Paints)
	if err != nil {
		return nil, err
	}
	i := lastOf(log.list, wanted.aim)
	if i < 0 {
		return nil, fmt.Errorf("%s: has no round for %s to forget; %s", file, aimed, log.aims())
	}
	r := log.list[i]
	log.remove(i)
	return &Forgotten{made(opt.Version), r.aimed, r.date, r.photo, r.pile.String(), len(log.list)}, nil
}

// aims says for which aims the log has rounds.
func (l *Rounds) aims() string {
	var aims []string
	for _, r := range l.list {
		if !slices.Contains(aims, r.aimed) {
			aims = append(aims, r.aimed)
		}
	}
	if len(aims) == 0 {
		return "it has none at all"
	}
	return "it has some for " + strings.Join(aims, ", ")
}
