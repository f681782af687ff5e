package main

import (
	"io"

	"github.com/spf13/pflag"

	"tonewright/report"
	"tonewright/report/answer"
)

const glazeHelp = `Say which transparent paint, how thin, brings a dry layer nearest to a colour.

Usage:
  tonewright glaze --over COLOUR|MIX --aim COLOUR [flags]
  tonewright glaze --over COLOUR|MIX --try PAINT [flags]

COLOUR is Munsell "5YR 6/8", "lab(52, 18, 30)" or '#c08a5c' (in quotes: the shell
takes # for a comment); MIX is paints with their parts. A glaze takes light away:
where the aim asks for what no glaze can do, it says so and what to do instead.

Examples:
  tonewright glaze --over "yellow-ochre 1, titanium-white 3" --aim "2.5YR 5/6"
  tonewright glaze --over "5Y 8/6" --try ultramarine-blue

Flags:
`

type glazeFlags struct {
	answering
	over, aim, try string
}

func (f *glazeFlags) set() *pflag.FlagSet {
	s := newFlags("glaze")
	s.StringVar(&f.over, "over", "", "the dry layer: its `COLOUR`, or a mix \"yellow-ochre 3, titanium-white 1\"")
	s.StringVar(&f.aim, "aim", "", "the `COLOUR` wanted")
	s.StringVar(&f.try, "try", "", "a `PAINT` to see at every thickness instead")
	f.answering.set(s)
	return s
}

func runGlaze(args []string, out, _ io.Writer) error {
	var f glazeFlags
	set := f.set()
	if helped, err := parse(set, glazeHelp, args, out); helped || err != nil {
		return err
	}
	switch {
	case set.NArg() > 0:
		return usageError(`glaze takes flags only, not %q: tonewright glaze --over "5Y 8/6" --aim "5Y 6/8" (in quotes)`, set.Arg(0))
	case f.over == "":
		return usageError(`--over: say what the glaze goes over, as in --over "5Y 8/6"`)
	}
	box, err := f.paints()
	if err != nil {
		return err
	}
	a, err := answer.GlazeFor(answer.GlazeOptions{Over: f.over, Aim: f.aim, Try: f.try, Box: box, Version: version})
	if err != nil {
		return err
	}
	return f.print(out, a, func(w io.Writer) error { return report.GlazeText(w, a) })
}
