package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"tonewright/match/paint"
	"tonewright/report"
	"tonewright/report/answer"
)

const swatchHelp = `Is the pile right? Measures a swatch of it in a photo and says what to add.

Usage:
  tonewright swatch PHOTO --card RECT --swatch RECT --aim TAG|COLOUR [flags]
  tonewright swatch --forget --aim TAG|COLOUR [flags]

Photograph the swatch, still wet and thick, beside a gray or white card in the same
light, without glare. RECT is x,y,w,h from the top left in percent of the photo, or
in pixels with px after the last number. TAG is a colour of the plan, such as A1:
its recipe is taken for the pile unless --pile says what is in it. What was measured
and advised goes into a log beside the plan, and each round learns from those before;
--forget takes the last round for the aim out again. Without --box the paints are the
plan's.

Examples:
  tonewright swatch pile.jpg --card 10,20,15,20 --swatch 55,25,20,20 --aim A1
  tonewright swatch pile.jpg --card 10,20,15,20 --swatch 55,25,20,20 \
      --aim "5YR 6/8" --pile "yellow-ochre 3, titanium-white 1"
  tonewright swatch --forget --aim A1

Flags:
`

type swatchFlags struct {
	answering
	card, swatch, aim, pile, plan, cardIs, log string
	forget                                     bool
}

func (f *swatchFlags) set() *pflag.FlagSet {
	s := newFlags("swatch")
	s.StringVar(&f.card, "card", "", "where the card is in the photo: a `RECT`")
	s.StringVar(&f.swatch, "swatch", "", "where the swatch is: a `RECT`")
	s.StringVar(&f.aim, "aim", "", "the `AIM`: a tag of the plan, or a colour as in mix")
	s.StringVar(&f.pile, "pile", "", "what is in the pile: `PARTS` such as \"yellow-ochre 3, titanium-white 1, 2 touches of viridian\"")
	s.StringVar(&f.plan, "plan", "", "the plan's JSON `FILE` (default: plan.json beside the photo)")
	s.StringVar(&f.cardIs, "card-is", "gray", "what the card is: gray (18 %), white, or its own `COLOUR`")
	s.StringVar(&f.log, "log", "", "the `FILE` for the rounds (default: the plan's name with .rounds.tsv)")
	s.BoolVar(&f.forget, "forget", false, "take the last round for the aim out of the log, and measure nothing")
	f.answering.set(s)
	return s
}

func runSwatch(args []string, out, _ io.Writer) error {
	var f swatchFlags
	set := f.set()
	if helped, err := parse(set, swatchHelp, args, out); helped || err != nil {
		return err
	}
	if f.forget {
		return f.forgets(set, out)
	}
	if set.NArg() != 1 {
		return usageError("swatch takes one photo, not %d: tonewright swatch PHOTO --card RECT --swatch RECT --aim A1", set.NArg())
	}
	for _, wanted := range []struct{ flag, value, example string }{
		{"card", f.card, "10,20,15,20"}, {"swatch", f.swatch, "55,25,20,20"}, {"aim", f.aim, "A1"},
	} {
		if wanted.value == "" {
			return usageError("swatch needs --%s, such as --%s %s; see tonewright swatch --help", wanted.flag, wanted.flag, wanted.example)
		}
	}
	return f.answer(set.Arg(0), out)
}

// open reads the box and the log, and returns where the log is written.
func (f *swatchFlags) open(photo string) (opt answer.SwatchOptions, target string, err error) {
	f.defaults(photo)
	if target, err = f.target(photo); err != nil {
		return opt, "", err
	}
	opt = answer.SwatchOptions{
		Photo: photo, Card: f.card, Spot: f.swatch, CardIs: f.cardIs, Aim: f.aim, Pile: f.pile,
		Plan: f.plan, Date: time.Now().Format(time.DateOnly), Version: version,
	}
	var given *paint.Box
	if f.box != "" {
		box, err := paint.ReadBox(f.box)
		if err != nil {
			return opt, "", err
		}
		given = &box
	}
	if opt.Box, opt.BoxNote, err = answer.SwatchBox(given, f.plan); err != nil {
		return opt, "", err
	}
	opt.Log, err = answer.ReadRounds(target, opt.Box.Paints)
	return opt, target, err
}

// answer measures, writes the log, and prints; nothing is printed unless the round is
// in the log or is not to go there.
func (f *swatchFlags) answer(photo string, out io.Writer) error {
	opt, target, err := f.open(photo)
	if err != nil {
		return err
	}
	a, err := answer.SwatchFor(opt)
	if err != nil {
		return err
	}
	if a.Logged {
		if err := f.keep(target, opt.Log); err != nil {
			return err
		}
	}
	err = f.print(out, a, func(w io.Writer) error { return report.SwatchText(w, a, f.log) })
	if err != nil && a.Logged {
		return fmt.Errorf("%w; the round is in %s all the same: ask again for the answer, it does not count twice", err, f.log)
	}
	return err
}

// keep writes the log to where it is.
func (f *swatchFlags) keep(target string, log *answer.Rounds) error {
	text, err := log.Text(f.log)
	if err != nil {
		return err
	}
	return place([]output{{target, text}})
}

// forgets takes a round out of the log; a photo only says where the plan lies.
func (f *swatchFlags) forgets(set *pflag.FlagSet, out io.Writer) error {
	if set.NArg() > 1 || f.aim == "" {
		return usageError("--forget takes the aim whose last round is to be taken out: tonewright swatch --forget --aim A1")
	}
	opt, target, err := f.open(set.Arg(0))
	if err != nil {
		return err
	}
	forgotten, err := answer.Forget(opt.Log, f.log, opt)
	if err != nil {
		return err
	}
	if err := f.keep(target, opt.Log); err != nil {
		return err
	}
	err = f.print(out, forgotten, func(w io.Writer) error { return report.ForgottenText(w, forgotten, f.log) })
	if err != nil {
		return fmt.Errorf("%w; the round is out of %s all the same: asking again takes out the one before", err, f.log)
	}
	return nil
}

// defaults fills in the files that were not named.
func (f *swatchFlags) defaults(photo string) {
	if f.plan == "" {
		f.plan = filepath.Join(filepath.Dir(photo), "plan.json")
	}
	if f.log == "" {
		f.log = strings.TrimSuffix(f.plan, filepath.Ext(f.plan)) + ".rounds.tsv"
	}
}

// target returns where the log is written, after making sure that nothing that is
// read is written over.
func (f *swatchFlags) target(photo string) (string, error) {
	target, err := targetOf(f.log)
	if err != nil {
		return "", err
	}
	for _, input := range []string{photo, f.plan, f.box} {
		if input != "" && sameFile(target, input) {
			return "", usageError("--log: %s is read and would be written over: choose another file for the rounds", f.log)
		}
	}
	return target, nil
}
