package main

import (
	"bytes"
	"errors"
	"io"

	"github.com/spf13/pflag"

	"tonewright/report"
	"tonewright/report/plan"
)

const planHelp = `Make a paint plan from a photo: report.html, to paint from.

Usage:
  tonewright plan PHOTO [flags]
  tonewright plan PAINTING.toml [flags]

What ends in .toml is a painting file, which tonewright start writes: it names
the photo and holds what you want of the picture, with a palette, a role and
more for each region. Flags win over what it says; paths in it start from its
folder.

Examples:
  tonewright plan kettle.jpg
  tonewright plan painting.toml
  tonewright plan painting.toml --ground umber --out on-umber.html
  tonewright plan kettle.jpg --panel 12x16in --cell 1in --ground black
  tonewright plan kettle.jpg --region "kettle=C3:F7,G4" --region "shelf=A8:L9"
  tonewright plan kettle.jpg --box my-paints.toml --json plan.json

Flags:
`

// planFlags are the flags as typed; options turns them into a plan.Options.
type planFlags struct {
	boxFlag
	layoutFlags
	mixingFlags
	studyFlag
	sightFlag
	tubesFlags
	name, out, json string
	regions         []string
	colours         int
	megapixels      float64
	quiet           bool
}

func (f *planFlags) set() *pflag.FlagSet {
	s := newFlags("plan")
	f.layoutFlags.set(s)
	s.StringArrayVar(&f.regions, "region", nil, "a region by its cells, as often as wanted: `NAME=CELLS`, like \"kettle=C3:F7,G4\" (default: found in the picture)")
	s.IntVar(&f.colours, "colours", 0, "how many colours, `N` from 1 to 24, each region gets (default: as few of 3 to 8 as describe it)")
	f.boxFlag.set(s)
	f.mixingFlags.set(s)
	f.sightFlag.set(s)
	f.tubesFlags.set(s)
	s.StringVar(&f.name, "name", "", "the job's `NAME` (default: the photo's file name)")
	s.StringVarP(&f.out, "out", "o", "report.html", "the `FILE` for the report")
	s.StringVar(&f.json, "json", "", "also write the plan as JSON to `FILE`")
	f.studyFlag.set(s)
	s.Float64Var(&f.megapixels, "megapixels", 200, "refuse photos of more than `N` million pixels")
	s.BoolVarP(&f.quiet, "quiet", "q", false, "print nothing but errors")
	return s
}

// runPlan makes a plan and writes it; nothing is written unless all of it is made.
func runPlan(args []string, out, errs io.Writer) error {
	var f planFlags
	set := f.set()
	if helped, err := parse(set, planHelp, args, out); helped || err != nil {
		return err
	}
	if set.NArg() != 1 {
		return usageError("plan takes one photo or one painting file, not %d: tonewright plan PHOTO [flags]", set.NArg())
	}
	job, err := f.job(set, set.Arg(0))
	if err != nil {
		return err
	}
	opt := job.Options
	targets, err := f.targets(job.reads)
	if err != nil {
		return err
	}
	if err := f.studyFlag.check(targets, job.reads...); err != nil {
		return err
	}
	steps := newProgress(errs, f.quiet)
	opt.Step = steps.say
	p, err := plan.Make(opt)
	if err != nil {
		steps.end()
		return f.blame(set, job, err)
	}
	steps.say("writing")
	err = write(p, targets, &f.studyFlag)
	steps.end()
	if err != nil || f.quiet {
		return err
	}
	var text bytes.Buffer
	if err := report.PlanText(&text, p, oneLine(f.out), oneLine(f.json), oneLine(f.written(p))); err != nil {
		return err
	}
	_, err = io.WriteString(out, plainText(text.String()))
	return err
}

// blame tells where in the painting file the mistake is, unless a flag made it.
func (f *planFlags) blame(set *pflag.FlagSet, j job, err error) error {
	if wrong, ok := errors.AsType[plan.KeyError](err); ok && set.Changed(wrong.Key) {
		return err
	}
	if _, ok := errors.AsType[plan.RegionError](err); ok && set.Changed("region") {
		return err
	}
	return j.Blame(err)
}

// options reads the flags; every mistake in them is a usage error that names the flag.
func (f *planFlags) options(set *pflag.FlagSet) (plan.Options, error) {
	opt, err := f.layout()
	if err != nil {
		return opt, err
	}
	opt.Name, opt.Colours, opt.Megapixels = f.name, f.colours, f.megapixels
	for _, text := range f.regions {
		r, err := plan.ParseRegion(text)
		if err != nil {
			return opt, wrongFlag("region", err)
		}
		opt.Regions = append(opt.Regions, r)
	}
	if f.colours < 0 || f.colours > plan.MostColours || f.colours == 0 && set.Changed("colours") {
		return opt, usageError("--colours %d is out of range: 1 to %d, or leave it out", f.colours, plan.MostColours)
	}
	if !(f.megapixels > 0) || f.megapixels > plan.MostMegapixels {
		return opt, usageError("--megapixels %g is out of range: more than 0 and at most %d", f.megapixels, plan.MostMegapixels)
	}
	if opt.Mixing, err = f.mixing(); err != nil {
		return opt, err
	}
	if opt.Sight, err = f.vision(); err != nil {
		return opt, err
	}
	if opt.Tubes, err = f.wish(set); err != nil {
		return opt, err
	}
	if f.out == "" {
		return opt, usageError("--out needs a file name")
	}
	opt.Box, err = f.paints()
	return opt, err
}

// targets says where the report and, if asked for, the JSON go, after making sure
// that nothing else is lost by it. reads are the files that the plan is made from.
func (f *planFlags) targets(reads []string) ([]string, error) {
	names := []string{f.out}
	if f.json != "" {
		names = append(names, f.json)
	}
	for i, name := range names {
		target, err := targetOf(name)
		if err != nil {
			return nil, err
		}
		for _, input := range reads {
			if sameFile(target, input) {
				return nil, usageError("%s is read and would be written over: choose another file for the result", name)
			}
		}
		names[i] = target
	}
	if len(names) == 2 && (sameFile(names[0], names[1]) || absolute(names[0]) == absolute(names[1])) {
		return nil, usageError("--out and --json name the same file %s", f.out)
	}
	return names, nil
}

// write puts the report, if there is a second target the JSON, and the study in place.
func write(p *plan.Plan, targets []string, study *studyFlag) error {
	var page, data bytes.Buffer
	if err := report.HTML(&page, p); err != nil {
		return err
	}
	files := []output{{targets[0], page.Bytes()}}
	if len(targets) > 1 {
		if err := report.JSON(&data, p); err != nil {
			return err
		}
		files = append(files, output{targets[1], data.Bytes()})
	}
	pictures, err := study.files(p)
	if err != nil {
		return err
	}
	return place(append(files, pictures...))
}
