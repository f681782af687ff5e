// Flags that more than one command has.

package main

import (
	"github.com/spf13/pflag"

	"tonewright/analyze/colour"
	"tonewright/grid"
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// boxFlag names the paints owned.
type boxFlag struct{ box string }

func (f *boxFlag) set(s *pflag.FlagSet) {
	s.StringVar(&f.box, "box", "", "a TOML `FILE` with the paints you own (default: a starter box of 12)")
}

// paints reads the box.
func (f *boxFlag) paints() (paint.Box, error) {
	if f.box == "" {
		return paint.StarterBox(), nil
	}
	return paint.ReadBox(f.box)
}

// mixingFlags are those that say how mixes are chosen.
type mixingFlags struct {
	finish string
	coat   float64
	holds  bool
}

func (f *mixingFlags) set(s *pflag.FlagSet) {
	s.StringVar(&f.finish, "finish", "gloss", "the dry paint's `SURFACE`: gloss, satin or matt")
	s.Float64Var(&f.coat, "coat", 1, "how thick a coat over the ground is, `TIMES` an ordinary brushed one: 0.3 is thinly scrubbed in")
	s.BoolVar(&f.holds, "holds", false, "of mixes about as near, take one that holds its colour under lamps")
}

func (f *mixingFlags) mixing() (opt match.Options, err error) {
	if !(f.coat >= plan.LeastCoat && f.coat <= plan.MostCoat) {
		return opt, usageError("--coat %g is out of range: %g to %d times an ordinary coat", f.coat, plan.LeastCoat, plan.MostCoat)
	}
	opt.Holds, opt.Coat = f.holds, f.coat
	if opt.Finish, err = paint.ParseFinish(f.finish); err != nil {
		return opt, wrongFlag("finish", err)
	}
	return opt, nil
}

// sightFlag is the painter's colour vision.
type sightFlag struct{ sight string }

func (f *sightFlag) set(s *pflag.FlagSet) {
	s.StringVar(&f.sight, "sight", "", "your colour `VISION`: protan, deutan or tritan with its severity, 0 to 1, like \"deutan 0.8\" (default: full)")
}

func (f *sightFlag) vision() (seen colour.Sight, err error) {
	if f.sight == "" {
		return seen, nil
	}
	if seen, err = colour.ParseSight(f.sight); err != nil {
		return seen, wrongFlag("sight", err)
	}
	return seen, nil
}

// tubesFlags ask for few tubes.
type tubesFlags struct {
	tubes  int
	within float64
}

func (f *tubesFlags) set(s *pflag.FlagSet) {
	s.IntVar(&f.tubes, "tubes", 0, "choose the best `N` paints of the box for the whole picture, those of your palettes among them (default: any of the box)")
	s.Float64Var(&f.within, "within", 0, "choose as few paints of the box as keep every region's mean miss within `DE`, in CIEDE2000, like 3")
}

// wish returns what is asked for; set tells which flags were given.
func (f *tubesFlags) wish(set *pflag.FlagSet) (plan.TubeWish, error) {
	if set.Changed("tubes") && (f.tubes < 1 || f.tubes > plan.MostTubes) {
		return plan.TubeWish{}, usageError("--tubes %d is out of range: 1 to %d, or leave it out", f.tubes, plan.MostTubes)
	}
	if set.Changed("within") && !(f.within >= plan.LeastWithin && f.within <= plan.MostWithin) {
		return plan.TubeWish{}, usageError("--within %g is out of range: %g to %d, in CIEDE2000", f.within, plan.LeastWithin, plan.MostWithin)
	}
	return plan.TubeWish{Most: f.tubes, Within: f.within}, nil
}

// daysFlags say when there is time to paint.
type daysFlags struct {
	start    string
	sessions int
}

func (f *daysFlags) set(s *pflag.FlagSet) {
	s.StringVar(&f.start, "start", "", "the `DATE` of the first day at the easel, like 2026-12-01 (default: days are counted)")
	s.IntVar(&f.sessions, "sessions", plan.SessionsUsual, "how many days a week there are for painting, `N` from 1 to 7")
}

// work reads the flags.
func (f *daysFlags) work() (w plan.Work, err error) {
	w.Sessions = f.sessions
	if f.sessions < 1 || f.sessions > plan.MostSessions {
		return w, usageError("--sessions %d is out of range: 1 to %d", f.sessions, plan.MostSessions)
	}
	if f.start == "" {
		return w, nil
	}
	if w.Start, err = plan.ParseDate(f.start); err != nil {
		return w, wrongFlag("start", err)
	}
	return w, nil
}

// layoutFlags are those that lay a grid on a photo.
type layoutFlags struct{ panel, cell, crop, ground, key string }

func (f *layoutFlags) set(s *pflag.FlagSet) {
	s.StringVar(&f.panel, "panel", "", "the panel's `WIDTHxHEIGHT` with its unit: 12x16in, 30x40cm, 300x400mm (default: 12 in on the long side, in the photo's proportion)")
	s.StringVar(&f.cell, "cell", "", "the `SIDE` of a grid cell: 1in, 2.5cm (default 1in)")
	s.StringVar(&f.crop, "crop", "", "what to keep where the panel's proportion differs: centre, top, bottom, left, right; or `X,Y,W,H` in percent of the photo (default centre)")
	s.StringVar(&f.ground, "ground", "", "the panel's `COLOUR`: white, gray, black, umber, sienna, or like #b0a090 (default white)")
	s.StringVar(&f.key, "key", "fit", "`MODE` of the values: fit brings them into what the box reaches, literal takes them as photographed")
}

// layout reads the flags that say what lies where on the panel, and how its values
// are keyed.
func (f *layoutFlags) layout() (opt plan.Options, err error) {
	opt.Version = version
	if f.panel != "" {
		if opt.Panel.Width, opt.Panel.Height, opt.Panel.Unit, err = grid.ParsePanel(f.panel); err != nil {
			return opt, wrongFlag("panel", err)
		}
	}
	if f.cell != "" {
		if opt.Cell.Length, opt.Cell.Unit, err = grid.ParseLength(f.cell); err != nil {
			return opt, wrongFlag("cell", err)
		}
	}
	if opt.Crop, err = grid.ParseCrop(f.crop); err != nil {
		return opt, wrongFlag("crop", err)
	}
	if f.ground != "" {
		if opt.Ground, err = plan.ParseGround(f.ground); err != nil {
			return opt, wrongFlag("ground", err)
		}
	}
	switch f.key {
	case "fit", "literal":
		opt.Literal = f.key == "literal"
	default:
		return opt, usageError("--key %q is not known: fit or literal", f.key)
	}
	return opt, nil
}

// pictureFlags are those that say what lies where on the panel, and what is drawn of it.
type pictureFlags struct {
	layoutFlags
	name       string
	regions    []string
	detail     int
	megapixels float64
}

func (f *pictureFlags) set(s *pflag.FlagSet) {
	f.layoutFlags.set(s)
	s.StringArrayVar(&f.regions, "region", nil, "a region by its cells, as often as wanted: `NAME=CELLS`, like \"kettle=C3:F7,G4\" (default: found in the picture)")
	s.IntVar(&f.detail, "detail", plan.DetailUsual, "how much is drawn, `N` from 1, the main contours, to 10, all that was found")
	s.StringVar(&f.name, "name", "", "the job's `NAME` (default: the photo's file name)")
	s.Float64Var(&f.megapixels, "megapixels", 200, "refuse photos of more than `N` million pixels")
}

// picture reads the flags; every mistake in them is a usage error that names the flag.
func (f *pictureFlags) picture() (plan.Options, error) {
	opt, err := f.layout()
	if err != nil {
		return opt, err
	}
	opt.Name, opt.Megapixels, opt.Detail = f.name, f.megapixels, f.detail
	for _, text := range f.regions {
		r, err := plan.ParseRegion(text)
		if err != nil {
			return opt, wrongFlag("region", err)
		}
		opt.Regions = append(opt.Regions, r)
	}
	if f.detail < 1 || f.detail > plan.MostDetail {
		return opt, usageError("--detail %d is out of range: 1 to %d", f.detail, plan.MostDetail)
	}
	if !(f.megapixels > 0) || f.megapixels > plan.MostMegapixels {
		return opt, usageError("--megapixels %g is out of range: more than 0 and at most %d", f.megapixels, plan.MostMegapixels)
	}
	return opt, nil
}

func wrongFlag(flag string, err error) error { return usageError("--%s: %w", flag, err) }
