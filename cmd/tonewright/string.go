package main

import (
	"io"

	"github.com/spf13/pflag"

	"tonewright/match/paint"
	"tonewright/report"
	"tonewright/report/answer"
)

const stringHelp = `Lay out a string: mixes from one paint to another, evenly spaced to the eye.

Usage:
  tonewright string PAINT PAINT [flags]
  tonewright string PAINT --white [flags]

A paint is named as in a box: cadmium-orange, "Cadmium Orange", PB29. The string
says where it dulls and what hues it goes through. With --white each step comes
with its tints; one paint with --white is a string from white to that paint.

Examples:
  tonewright string cadmium-orange ultramarine-blue
  tonewright string "Yellow Ochre" burnt-umber --steps 5 --white --to 8
  tonewright string burnt-umber --white=zinc-white --steps 9

Flags:
`

type stringFlags struct {
	answering
	steps, to     int
	white, finish string
}

func (f *stringFlags) set() *pflag.FlagSet {
	s := newFlags("string")
	s.IntVar(&f.steps, "steps", 7, "`COUNT` of mixes, the ends included, 3 to 15")
	s.StringVar(&f.white, "white", "", "tints too, with the white of the box or, after =, with this `PAINT`")
	s.Lookup("white").NoOptDefVal = answer.BoxWhite
	s.IntVar(&f.to, "to", 8, "the whole Munsell `VALUE` that tints go up to, 1 to 9")
	s.StringVar(&f.finish, "finish", "gloss", "the dry paint's `SURFACE`: gloss, satin or matt")
	f.answering.set(s)
	return s
}

func runString(args []string, out, _ io.Writer) error {
	var f stringFlags
	set := f.set()
	if helped, err := parse(set, stringHelp, args, out); helped || err != nil {
		return err
	}
	opt, err := f.options(set)
	if err != nil {
		return err
	}
	a, err := answer.StringFor(opt)
	if err != nil {
		return err
	}
	return f.print(out, a, func(w io.Writer) error { return report.StringText(w, a) })
}

func (f *stringFlags) options(set *pflag.FlagSet) (opt answer.StringOptions, err error) {
	opt = answer.StringOptions{Paints: set.Args(), White: f.white, Steps: f.steps, Lightest: f.to, Version: version}
	switch n := set.NArg(); {
	case n == 0 || n > 2 || n == 1 && f.white == "":
		return opt, usageError("string takes two paints, or one with --white, not %d; another white is named as --white=zinc-white, and names of several words in quotes", n)
	case set.Changed("to") && (f.white == "" || n == 1):
		return opt, usageError("--to: is for the tints of two paints; add --white")
	case f.steps == 0:
		return opt, usageError("--steps: 0 is out of range: a string has 3 to 15")
	case f.to == 0:
		return opt, usageError("--to: 0 is out of range: tints go up to a whole value of 1 to 9")
	}
	if opt.Finish, err = paint.ParseFinish(f.finish); err != nil {
		return opt, wrongFlag("finish", err)
	}
	opt.Box, err = f.paints()
	return opt, err
}
