package main

import (
	"io"

	"github.com/spf13/pflag"

	"tonewright/report"
	"tonewright/report/answer"
)

const boxHelp = `Tell what is known of the paints in a box, and what the box does not reach.

Usage:
  tonewright box [flags]

Each paint's colour thick and in white, how it hides, tints, dries and lasts,
its oil and what to beware of; tubes that look alike, to everyone or to your
sight; and with --gaps the hues and values that no mix of yours reaches, and the
paints that would widen them most.

Examples:
  tonewright box --box my-paints.toml
  tonewright box --gaps --sight "deutan 0.8"
  tonewright box --all

Flags:
`

type boxFlags struct {
	answering
	sightFlag
	all, gaps bool
}

func (f *boxFlags) set() *pflag.FlagSet {
	s := newFlags("box")
	s.BoolVar(&f.all, "all", false, "every paint known, in place of a box")
	s.BoolVar(&f.gaps, "gaps", false, "also what the box does not reach, and what would widen it")
	f.sightFlag.set(s)
	f.answering.set(s)
	return s
}

func runBox(args []string, out, _ io.Writer) error {
	var f boxFlags
	set := f.set()
	if helped, err := parse(set, boxHelp, args, out); helped || err != nil {
		return err
	}
	if set.NArg() != 0 {
		return usageError("box takes no %q; name the file with --box FILE", set.Arg(0))
	}
	if f.all && f.box != "" {
		return usageError("--all lists every paint known and --box those you own: choose one")
	}
	box, err := f.paints()
	if err != nil {
		return err
	}
	a, err := answer.BoxFor(answer.BoxOptions{Box: box, All: f.all, Gaps: f.gaps, Sight: f.sight, Version: version})
	if err != nil {
		return err
	}
	return f.print(out, a, func(w io.Writer) error { return report.BoxText(w, a) })
}
