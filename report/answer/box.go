package answer

import (
	"fmt"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// Box is what is known of the paints in a box.
type Box struct {
	Made
	Name     string         `json:"box"`
	White    string         `json:"tinting_white"` // of the tints: one part of paint in four of it
	Sight    string         `json:"sight"`
	Full     bool           `json:"full_sight"`
	Paints   []Tube         `json:"paints"`
	Close    float64        `json:"close"` // the CIEDE2000 up to which paints are alike
	Alike    []Alike        `json:"alike"`
	Gamut    *Gamut         `json:"gamut,omitempty"` // where the gaps were asked for
	Cautions []plan.Caution `json:"cautions"`
}

// Tube is one paint: its look, from its optics, and what is known of its pigment.
type Tube struct {
	ID            string     `json:"paint"`
	Name          string     `json:"name"`
	CI            []string   `json:"ci"`
	Basis         string     `json:"basis"` // of masstone, tint and contrast
	Masstone      Look       `json:"masstone"`
	NearBlack     bool       `json:"near_black"` // the masstone: only the tint tells its hue
	Tint          Look       `json:"tint"`
	Opacity       string     `json:"opacity"`
	Contrast      float64    `json:"contrast"` // luminance of one coat over black by that over white
	Strength      string     `json:"tinting_strength"`
	Drying        string     `json:"drying"`
	TouchDry      [2]int     `json:"touch_dry_days"`
	Lightfastness string     `json:"lightfastness"`
	Oil           [2]float64 `json:"oil_g_per_100g"`
	Cautions      []string   `json:"cautions"`
	LeftML        *float64   `json:"left_ml,omitempty"` // none where the box does not say
	CautionKeys   []string   `json:"caution_keys"`      // of each
}

// Alike is a pair of tubes that are easily taken for one another, with the CIEDE2000
// between them to full sight and to the painter's.
type Alike struct {
	Paints   [2]string `json:"paints"`
	Names    [2]string `json:"names"`
	Masstone Apart     `json:"masstone"`
	Tint     Apart     `json:"tint"`
	Twins    bool      `json:"twins"` // to full sight too

	LabelOnly bool   `json:"label_only"` // no look of theirs tells them apart
	Tells     string `json:"tells"`      // what still does
}

// Apart says how far two colours are apart, and whether that is too little.
type Apart struct {
	Full  float64 `json:"full"`
	Seen  float64 `json:"seen"`
	Close bool    `json:"close"`
}

// BoxOptions asks for a box's table; the zero value of each field is the good default.
type BoxOptions struct {
	Box     paint.Box
	All     bool   // every paint of the library in place of the box
	Gaps    bool   // also what the box does not reach
	Sight   string // as colour.ParseSight reads it; "" is full sight
	Version string
}

// BoxFor tells what is known of the paints in a box.
// Every error is a plan.UsageError: a mistake in opt.
func BoxFor(opt BoxOptions) (*Box, error) {
	if opt.All && opt.Gaps {
		return nil, plan.Misused(fmt.Errorf("--gaps: all paints together have no gaps; leave out --all"))
	}
	var sight colour.Sight
	if opt.Sight != "" {
		var err error
		if sight, err = colour.ParseSight(opt.Sight); err != nil {
			return nil, plan.Misused(fmt.Errorf("--sight: %w", err))
		}
	}
	box := opt.Box
	if opt.All {
		box = paint.Box{Name: "all paints", Paints: paint.Library()}
	}
	white := paint.TintingWhite(box.Paints)
	a := &Box{Made: made(opt.Version), Name: box.Name, White: white.Name, Sight: sight.String(), Full: sight.Full(), Close: match.Close, Paints: []Tube{}, Alike: []Alike{}}
	for _, p := range box.Paints {
		t := tubeOf(p, white)
		if left, told := box.Left[p.ID]; told {
			left = plan.Round(left, 1)
			t.LeftML = &left
		}
		a.Paints = append(a.Paints, t)
	}
	for _, pair := range match.AlikeTubes(box.Paints, sight) {
		a.Alike = append(a.Alike, alikeOf(pair, box.Paints))
	}
	a.Cautions = plan.CautionsFor(box.Paints)
	if opt.Gaps {
		a.Gamut = gamutOf(box.Paints)
	}
	return a, nil
}

func tubeOf(p, white paint.Paint) Tube {
	t := Tube{
		ID: p.ID, Name: p.Name, CI: p.CI, Basis: p.Basis,
		Masstone: look(p.Masstone()), NearBlack: nearBlack(p.Masstone().Munsell()), Tint: look(p.Tint(white)),
		Opacity: p.Opacity, Contrast: plan.Round(paint.ContrastRatio(&p.K, &p.S), 2),
		Strength: p.Facts.Strength, Drying: p.Facts.Drying, TouchDry: p.Facts.TouchDry,
		Lightfastness: p.Facts.Lightfastness, Oil: [2]float64{plan.Round(p.Facts.Oil[0], 0), plan.Round(p.Facts.Oil[1], 0)},
		Cautions: []string{}, CautionKeys: []string{},
	}
	for _, c := range p.Cautions() {
		t.Cautions, t.CautionKeys = append(t.Cautions, c.Text), append(t.CautionKeys, c.Key)
	}
	return t
}

// hueLost is the Munsell value under which a colour's name misleads as to its hue. Ours:
// phthalo green, at 1.3, would be a "greenish blue"; a paint that is black stays one.
const hueLost = 1.5

// nearBlack tells whether a colour is nearly black and its name says otherwise.
func nearBlack(m colour.Munsell) bool {
	return m.Value < hueLost && !strings.HasSuffix(m.Name(), "black")
}

func alikeOf(pair match.Alike, paints []paint.Paint) Alike {
	a, b := paints[pair.A], paints[pair.B]
	return Alike{
		Paints: [2]string{a.ID, b.ID}, Names: [2]string{a.Name, b.Name},
		Masstone: apartOf(pair.Masstone), Tint: apartOf(pair.Tint), Twins: pair.Twins,
		LabelOnly: pair.LabelOnly, Tells: pair.Tells,
	}
}

func apartOf(a match.Apart) Apart {
	return Apart{plan.Round(a.Full, 1), plan.Round(a.Seen, 1), a.Seen <= match.Close}
}
