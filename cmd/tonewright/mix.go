package main

import (
	"io"

	"github.com/spf13/pflag"

	"tonewright/report"
	"tonewright/report/answer"
)

const mixHelp = `Find recipes for one colour.

Usage:
  tonewright mix COLOUR [flags]

COLOUR is Munsell "5YR 6/8", "lab(52, 18, 30)", '#c08a5c' (in quotes: the shell
takes # for a comment), or the middle of a cell of a photo: kettle.jpg@C3.

Examples:
  tonewright mix "5YR 6/8"
  tonewright mix "5YR 6/8" --with yellow-ochre --without burnt-sienna
  tonewright mix kettle.jpg@G5 --ground black --finish satin

Flags:
`

type mixFlags struct {
	answering
	layoutFlags
	mixingFlags
	with, without []string
}

func (f *mixFlags) set() *pflag.FlagSet {
	s := newFlags("mix")
	s.StringArrayVar(&f.with, "with", nil, "a `PAINT` that every recipe must have, up to 3 times")
	s.StringArrayVar(&f.without, "without", nil, "a `PAINT` to do without, as often as wanted")
	s.StringVar(&f.ground, "ground", "", "the panel's `COLOUR`, as in plan: says what one coat does over it")
	f.mixingFlags.set(s)
	s.StringVar(&f.panel, "panel", "", "of PHOTO@CELL: the panel's `WIDTHxHEIGHT`, as in plan")
	s.StringVar(&f.cell, "cell", "", "of PHOTO@CELL: the `SIDE` of a grid cell, as in plan")
	s.StringVar(&f.crop, "crop", "", "of PHOTO@CELL: what to keep of the photo, as in plan: `WHERE`")
	s.StringVar(&f.key, "key", "fit", "of PHOTO@CELL: `MODE` of the values, as in plan: fit or literal")
	f.answering.set(s)
	return s
}

func runMix(args []string, out, _ io.Writer) error {
	var f mixFlags
	set := f.set()
	if helped, err := parse(set, mixHelp, args, out); helped || err != nil {
		return err
	}
	if set.NArg() != 1 {
		return usageError(`mix takes one colour, not %d: tonewright mix "5YR 6/8" (in quotes)`, set.NArg())
	}
	opt, err := f.options(set.Arg(0))
	if err != nil {
		return err
	}
	a, err := answer.MixFor(opt)
	if err != nil {
		return err
	}
	return f.print(out, a, func(w io.Writer) error { return report.MixText(w, a) })
}

func (f *mixFlags) options(colour string) (opt answer.MixOptions, err error) {
	opt = answer.MixOptions{Colour: colour, With: f.with, Without: f.without}
	if opt.Photo, err = f.layout(); err != nil {
		return opt, err
	}
	if opt.Photo.Mixing, err = f.mixing(); err != nil {
		return opt, err
	}
	opt.Photo.Box, err = f.paints()
	return opt, err
}
