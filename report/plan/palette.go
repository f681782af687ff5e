// The palette of a region: which paints it is mixed from, and which were proposed.

package plan

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// Roles are what a region can do in the picture, the strongest first.
var Roles = []string{RoleFocal, RoleSupport, RoleQuiet}

// The roles of regions.
const (
	RoleFocal   = "focal"
	RoleSupport = "support"
	RoleQuiet   = "quiet"
)

// Aims are what a region's mixes go after: the photo's colours, or its values only.
var Aims = []string{AimPhoto, AimValue}

// The aims of regions.
const (
	AimPhoto = "photo"
	AimValue = "value"
)

// Where a palette comes from.
const (
	WholeBox = "box"
	Painters = "painter"
	Proposed = "proposed"
)

// Wish is what palettes a painter wants proposed for a region; zero asks for none.
type Wish struct {
	Scheme match.Scheme // "": none, but for a Hue
	Of     string       // the region to be the complement of, with match.Complement
	Hue    string       // a wished hue as colour.ParseHue reads it; "": none
}

// none tells whether nothing is wished for.
func (w Wish) none() bool { return w == Wish{} }

// words says the wish as the painting file does.
func (w Wish) words() string {
	switch {
	case w.Scheme == match.Complement:
		return "complement of " + w.Of
	case w.Scheme != "" && w.Hue != "":
		return string(w.Scheme) + ", hue " + w.Hue
	case w.Scheme != "":
		return string(w.Scheme)
	case w.Hue != "":
		return "hue " + w.Hue
	}
	return ""
}

// aim returns what the region's mixes go after.
func (w RegionWish) aim() string {
	switch {
	case w.Aim != "":
		return w.Aim
	case len(w.Palette) > 0 || !w.Wish.none():
		return AimValue
	}
	return AimPhoto
}

// role returns what the region is to do in the picture.
func (w RegionWish) role() string {
	if w.Role == "" {
		return RoleSupport
	}
	return w.Role
}

// Palette is what a region is mixed from, and how.
type Palette struct {
	Paints []string `json:"paints"` // ids, the white aside; none where it is the whole box
	White  string   `json:"white"`  // id; "": mixed without, or the whole box
	Aim    string   `json:"aim"`    // one of Aims
	From   string   `json:"from"`   // "box" (all of it), "painter", or "proposed"

	ValueMin float64 `json:"value_min"` // Munsell values that it reaches
	ValueMax float64 `json:"value_max"`
	Family   string  `json:"family"` // "one paint", "no hue", "one hue", "analogous", "near complements", "mixed", see match.Family; "" for the whole box
	Note     string  `json:"note"`   // values that the region wants and it lacks, and what would reach them; "" where none
}

// Suggestion is a palette proposed for a region.
type Suggestion struct {
	Paints   []string `json:"paints"` // ids, the white aside
	Names    []string `json:"names"`
	White    string   `json:"white"`
	ValueMin float64  `json:"value_min"` // Munsell values that it reaches
	ValueMax float64  `json:"value_max"`
	Covered  float64  `json:"covered"` // share of the region whose value it reaches, 0-1; up to a quarter of a value step beyond its ends all counts, from there to half a step evenly less
	Chroma   float64  `json:"chroma"`  // Munsell, the strongest at the region's values
	Dulls    float64  `json:"dulls"`   // Munsell chroma lost inside it, as a string says; 0 for one paint
	TieIns   []string `json:"tie_ins"` // tags of regions that use one of its paints already
	Why      string   `json:"why"`
	Line     string   `json:"line"` // to put into the painting file
}

// tubes are the paints of a palette; the white, nil for none, stands apart.
type tubes struct {
	paints []paint.Paint
	white  *paint.Paint
}

// all lists the palette's paints, the white last.
func (t tubes) all() []paint.Paint {
	if t.white == nil {
		return t.paints
	}
	return append(slices.Clip(t.paints), *t.white)
}

// paletteOf returns the paints of a region's palette: those named, and the box's
// lightest white unless it is to go without. A white that is named is the white.
func paletteOf(w RegionWish, box []paint.Paint) (of tubes) {
	for _, id := range w.Palette {
		p := box[slices.IndexFunc(box, func(p paint.Paint) bool { return p.ID == id })]
		if p.White() && of.white == nil {
			of.white = &p
		} else {
			of.paints = append(of.paints, p)
		}
	}
	if of.white == nil && !w.NoWhite {
		of.white = paint.OwnWhite(box)
	}
	if len(of.paints) == 0 { // white alone
		of.paints, of.white = []paint.Paint{*of.white}, nil
	}
	return of
}

// entry writes the palette as data.
func (t tubes) entry(w RegionWish, l *match.Ladder) Palette {
	lo, hi := l.Reach()
	e := Palette{
		Paints: ids(t.paints), Aim: w.aim(), From: Painters, Family: match.Family(t.paints),
		ValueMin: Round(colour.ValueOf(lo), 1), ValueMax: Round(colour.ValueOf(hi), 1),
	}
	if t.white != nil {
		e.White = t.white.ID
	}
	return e
}

// wholeBox is the palette of a region that has none of its own.
func (m *mixer) wholeBox() Palette {
	return Palette{
		Paints: []string{}, Aim: AimPhoto, From: WholeBox,
		ValueMin: Round(colour.ValueOf(m.reach[0]), 1), ValueMax: Round(colour.ValueOf(m.reach[1]), 1),
	}
}

// suggestionsOf writes proposed palettes as data.
func suggestionsOf(list []match.Suggestion) []Suggestion {
	entries := []Suggestion{}
	for _, s := range list {
		e := Suggestion{
			Paints: ids(s.Paints), ValueMin: Round(s.ValueMin, 1), ValueMax: Round(s.ValueMax, 1),
			Covered: Round(s.Covered, 2), Chroma: Round(s.Chroma, 1), Dulls: Round(s.Dulls, 1),
			TieIns: append([]string{}, s.TieIns...), Why: s.Why, Line: paletteLine(s.Paints),
		}
		for _, p := range s.Paints {
			e.Names = append(e.Names, p.Name)
		}
		if s.White != nil {
			e.White = s.White.ID
		}
		entries = append(entries, e)
	}
	return entries
}

// paletteLine is the line of the painting file that sets a palette.
func paletteLine(paints []paint.Paint) string {
	names := make([]string, len(paints))
	for i, p := range paints {
		names[i] = fmt.Sprintf("%q", p.Name)
	}
	return "palette = [" + strings.Join(names, ", ") + "]"
}

func ids(paints []paint.Paint) []string {
	list := []string{}
	for _, p := range paints {
		list = append(list, p.ID)
	}
	return list
}

// checkWishes finds what is wrong with the regions' palettes and wishes.
func checkWishes(opt Options) error {
	for _, r := range opt.Regions {
		if err := r.check(opt.Regions, opt.Box.Paints); err != nil {
			return RegionError{r.Name, err}
		}
	}
	if err := opt.Tubes.check(opt); err != nil {
		return KeyError{"tubes", err}
	}
	return nil
}

func (w RegionWish) check(regions []RegionWish, box []paint.Paint) error {
	switch {
	case !slices.Contains(Roles, w.role()):
		return fmt.Errorf("role %q is not known: %s", w.Role, strings.Join(Roles, ", "))
	case !slices.Contains(Aims, w.aim()):
		return fmt.Errorf("aim %q is not known: %s", w.Aim, strings.Join(Aims, ", "))
	case w.Aim == AimValue && len(w.Palette) == 0 && w.Wish.none():
		return errors.New("aim value needs a palette, a scheme or a hue")
	case w.NoWhite && len(w.Palette) == 0 && w.Wish.none():
		return errors.New("to go without white it needs a palette, a scheme or a hue")
	case !(w.Shift >= -MostShift && w.Shift <= MostShift):
		return fmt.Errorf("a value shift of %g is out of range: -%d to %d", w.Shift, MostShift, MostShift)
	}
	for _, id := range w.Palette {
		if !slices.ContainsFunc(box, func(p paint.Paint) bool { return p.ID == id }) {
			return fmt.Errorf("%s is not in the box: add it there, or take it out of the palette", id)
		}
	}
	if w.Wish.Hue != "" {
		if _, err := colour.ParseHue(w.Wish.Hue); err != nil {
			return err
		}
	}
	return w.checkComplement(regions)
}

// checkComplement follows complements from region to region: each must be there, and
// none may come back to where it began.
func (w RegionWish) checkComplement(regions []RegionWish) error {
	at := w
	for range regions {
		if at.Wish.Scheme != match.Complement {
			return nil
		}
		i := slices.IndexFunc(regions, func(r RegionWish) bool { return sameName(r.Name, at.Wish.Of) })
		if i < 0 {
			return fmt.Errorf("there is no region %q to be the complement of", at.Wish.Of)
		}
		if at = regions[i]; len(at.Palette) > 0 {
			return nil
		}
	}
	return errors.New("its complement comes back to itself: give one of the regions a palette")
}

func sameName(a, b string) bool { return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b)) }
