// What can be wrong with how and when a painting is to be painted.

package plan

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"tonewright/match/layer"
	"tonewright/match/paint"
)

// What can be asked for. Ours, where no source is named: past these a slip is likelier
// than a wish.
const (
	MostDetail    = 10 // of the drawing
	LeastFilm     = 10 // µm, wet: paint rubbed into the ground
	MostFilm      = 1000
	MostWaste     = 2 // as a share of what is painted
	MostSessions  = 7 // a week
	MostPiles     = 40
	LeastCelsius  = 0 // the estimates of drying reach no further
	MostCelsius   = 45
	LeastHumidity = 5 // percent
	MostHumidity  = 95
	MostAfter     = 366 // days between two coats
	MostCoats     = 200 // in all: eight on each region there can be
	MostOnRegion  = 12  // of them: every one is held against all others, and every mend tried
	firstYear     = 1900
	lastYear      = 2199
)

// Passes are those that a coat can be, in the order they are painted.
var Passes = []string{PassBlockIn, PassNext, PassGlaze}

// ParseDate reads a date as a painting's days are written, "2026-12-01", and returns it so.
func ParseDate(text string) (string, error) {
	text = strings.TrimSpace(text)
	day, err := time.Parse(time.DateOnly, text)
	if err != nil {
		if _, wrong := errors.AsType[*time.ParseError](err); wrong && strings.HasSuffix(err.Error(), "day out of range") {
			return "", fmt.Errorf("%q is no day of the calendar: that month is shorter", text)
		}
		return "", fmt.Errorf("%q is not a date; write year, month and day like 2026-12-01", text)
	}
	if y := day.Year(); y < firstYear || y > lastYear {
		return "", fmt.Errorf("%q is out of range: the year is %d to %d", text, firstYear, lastYear)
	}
	return text, nil
}

// checkWork tells what is wrong with how and when opt's painting is to be painted: a
// KeyError for what stands for the whole painting, a RegionError for a coat of a region.
func checkWork(opt Options) error {
	for _, each := range []struct {
		key   string
		wrong error
	}{
		{"detail", inRange("detail", float64(opt.Detail), 0, MostDetail)},
		{"medium", checkMedium(opt.Work.Medium)},
		{"film", opt.Work.checkFilm()},
		{"waste", opt.Work.checkWaste()},
		{"temperature", opt.Work.checkAir("temperature", opt.Work.Air.Celsius, LeastCelsius, MostCelsius)},
		{"humidity", opt.Work.checkAir("humidity", opt.Work.Air.Humidity, LeastHumidity, MostHumidity)},
		{"start", opt.Work.checkStart()},
		{"sessions", inRange("sessions a week", float64(opt.Work.Sessions), 0, MostSessions)},
		{"piles", inRange("piles in a session", float64(opt.Work.Piles), 0, MostPiles)},
	} {
		if each.wrong != nil {
			return KeyError{each.key, each.wrong}
		}
	}
	return checkCoats(opt)
}

// inRange tells whether a number is from least to most; NaN is not.
func inRange(what string, n, least, most float64) error {
	if n >= least && n <= most {
		return nil
	}
	return fmt.Errorf("%s of %g is out of range: %g to %g", what, n, least, most)
}

func (w Work) checkFilm() error {
	if w.Film == 0 {
		return nil
	}
	return inRange("a film", w.Film, LeastFilm, MostFilm)
}

func (w Work) checkWaste() error {
	if w.Waste == nil {
		return nil
	}
	return inRange("a waste", *w.Waste, 0, MostWaste)
}

// checkAir holds one figure of the air to its range; air that is not set is as indoors.
func (w Work) checkAir(what string, n, least, most float64) error {
	if w.Air == (layer.Air{}) {
		return nil
	}
	return inRange("a "+what, n, least, most)
}

func (w Work) checkStart() error {
	if w.Start == "" {
		return nil
	}
	_, err := ParseDate(w.Start)
	return err
}

// checkMedium tells whether a medium is one that ParseMedium could have read.
func checkMedium(m layer.Medium) error {
	_, err := layer.ParseMedium(m.String())
	return err
}

// checkCoats holds the painter's coats against the regions and the box. Regions that are
// found in the picture have no names to set coats for.
func checkCoats(opt Options) error {
	coats := opt.Work.Coats
	if n := len(coats); n > MostCoats {
		return KeyError{"layer", fmt.Errorf("%d coats are too many: set at most %d", n, MostCoats)}
	}
	if len(coats) > 0 && len(opt.Regions) == 0 {
		return KeyError{"layer", fmt.Errorf("a coat is set for region %q, but the regions are found in the picture and have no names yet; name them, each with its place", coats[0].Region)}
	}
	begun := map[string]int{}
	for _, c := range coats {
		i := slices.IndexFunc(opt.Regions, func(r RegionWish) bool { return sameName(r.Name, c.Region) })
		if i < 0 {
			return KeyError{"layer", fmt.Errorf("a coat is set for region %q, which is none; there are %s", c.Region, strings.Join(regionNames(opt.Regions), ", "))}
		}
		name := opt.Regions[i].Name
		if err := c.check(begun[name] == 0, opt.Box.Paints); err != nil {
			return RegionError{name, err}
		}
		if begun[name]++; begun[name] > MostOnRegion {
			return RegionError{name, fmt.Errorf("more than %d coats are set for it: set fewer", MostOnRegion)}
		}
	}
	return nil
}

func regionNames(regions []RegionWish) (names []string) {
	for _, r := range regions {
		names = append(names, r.Name)
	}
	return names
}

// check tells what is wrong with a coat; first tells whether it is its region's first.
func (c CoatWish) check(first bool, box []paint.Paint) error {
	switch {
	case !slices.Contains(Passes, c.Pass):
		return fmt.Errorf("pass %q is not known: %s", c.Pass, strings.Join(Passes, ", "))
	case c.Film != 0 && !(c.Film >= LeastCoat && c.Film <= MostCoat):
		return fmt.Errorf("a coat of %g times an ordinary one is out of range: %g to %d", c.Film, LeastCoat, MostCoat)
	case c.After < 0 || c.After > MostAfter:
		return fmt.Errorf("%d days after the coat before is out of range: 1 to %d, or 0 for as soon as may be", c.After, MostAfter)
	case first && c.Wet:
		return errors.New("its first coat cannot be painted wet into one before: there is none")
	case first && c.After > 0:
		return errors.New("its first coat cannot wait for one before: there is none")
	}
	if c.Medium != nil {
		if err := checkMedium(*c.Medium); err != nil {
			return err
		}
	}
	if c.Pile == nil {
		return nil
	}
	if n := len(c.Pile.Paints); n == 0 || n != len(c.Pile.Parts) {
		return fmt.Errorf("a coat's mix has %d paints and %d parts: give each paint its parts", n, len(c.Pile.Parts))
	}
	for _, p := range c.Pile.Paints {
		if !slices.ContainsFunc(box, func(q paint.Paint) bool { return q.ID == p.ID }) {
			return fmt.Errorf("%s is not in the box: add it there, or take it out of the coat", p.ID)
		}
	}
	return nil
}
