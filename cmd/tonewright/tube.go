package main

import (
	"io"

	"github.com/spf13/pflag"

	"tonewright/report"
	"tonewright/report/answer"
)

const tubeHelp = `Fit a paint to your own tube of it, from spectra or a photo of painted swatches.

Usage:
  tonewright tube FILE --paint PAINT [flags]

FILE is text from a spectrophotometer (CGATS, or CSV in any layout) of the tube
laid on thick, its masstone, and mixed with white, a tint; or a photo of both,
painted beside a gray or white card in one light. Which of them it is, is told
by its content. Parts are by volume. A RECT is x,y,w,h from the photo's top
left, in percent of it, or in pixels with px.

Examples:
  tonewright tube ochre.csv --paint yellow-ochre --box my-paints.toml
  tonewright tube ochre.txt --paint "Yellow Ochre" --name "My warm ochre" \
    --masstone OCH1 --tint OCH2=1:4 --tint OCH3=1:10 --white TIW
  tonewright tube ochre.jpg --paint yellow-ochre --card 5,5,20,20 \
    --masstone 30,5,20,20 --tint 55,5,20,20=1:4

Flags:
`

type tubeFlags struct {
	answering
	opt answer.TubeOptions
}

func (f *tubeFlags) set() *pflag.FlagSet {
	s := newFlags("tube")
	o := &f.opt
	s.StringVar(&o.Paint, "paint", "", "the `PAINT` it is a tube of; needed")
	s.StringVar(&o.Name, "name", "", "what to call the tube: `NAME` (default: as the paint, in whose place it then is)")
	s.StringVar(&f.box, "box", "", "keep the tube in this box `FILE`; made where there is none")
	s.StringVar(&o.Masstone, "masstone", "", "the `SAMPLE` or RECT of the paint alone (default: the sample called masstone)")
	s.StringArrayVar(&o.Tints, "tint", nil, "a `SAMPLE=1:4` or RECT=1:4, paint to white; as often as wanted (default: samples called \"tint 1:4\" or with other parts)")
	s.StringVar(&o.White, "white", "", "the `WHITE` of the tints: a paint or, of spectra, a sample of it alone (default: titanium-white)")
	s.StringArrayVar(&o.OverBlack, "over-black", nil, "of spectra: the `SAMPLE` of a thin film over black")
	s.StringArrayVar(&o.OverWhite, "over-white", nil, "of spectra: the `SAMPLE` of the same film over white")
	s.StringVar(&o.BareBlack, "bare-black", "", "of spectra: the `SAMPLE` of the black under the films (default: 1 %, as of a usual chart)")
	s.StringVar(&o.BareWhite, "bare-white", "", "of spectra: the `SAMPLE` of the white under the films (default: 80 %)")
	s.StringVar(&o.Shine, "shine", "", "of spectra: `HOW` the surface's shine was measured: excluded (also 45/0) or included (default: excluded)")
	s.BoolVar(&o.Anyway, "anyway", false, "of spectra: keep a tube that reads like another paint, if its label is right")
	s.StringVar(&o.Card, "card", "", "of a photo: the `RECT` of the gray or white card")
	s.StringVar(&o.CardIs, "card-is", "", "of a photo: the card's `COLOUR`: gray (18 %), white, or as measured (default: gray)")
	s.StringVar(&o.Finish, "finish", "", "of a photo: the swatches' `SURFACE`: gloss, satin or matt (default: gloss)")
	s.BoolVar(&f.json, "json", false, "print the answer as JSON")
	return s
}

func runTube(args []string, out, _ io.Writer) error {
	var f tubeFlags
	set := f.set()
	if helped, err := parse(set, tubeHelp, args, out); helped || err != nil {
		return err
	}
	if set.NArg() != 1 {
		return usageError("tube takes one file, not %d: tonewright tube spectra.csv --paint yellow-ochre", set.NArg())
	}
	if f.opt.Paint == "" {
		return usageError("tube needs the paint it is a tube of: --paint yellow-ochre")
	}
	f.opt.File, f.opt.Box, f.opt.Version = set.Arg(0), f.box, version
	return f.answer(out)
}

// answer fits, writes the box file if one was named, and prints; nothing is printed
// unless the tube is in the box.
func (f *tubeFlags) answer(out io.Writer) error {
	var target string
	if f.box != "" {
		var err error
		if target, err = targetOf(f.box); err != nil {
			return err
		}
		if sameFile(target, f.opt.File) {
			return usageError("%s is read and would be written over: choose another box file", f.box)
		}
	}
	a, err := answer.TubeFor(f.opt)
	if err != nil {
		return err
	}
	if target != "" {
		if err := place([]output{{target, a.BoxText}}); err != nil {
			return err
		}
	}
	return f.print(out, a, func(w io.Writer) error { return report.TubeText(w, a) })
}
