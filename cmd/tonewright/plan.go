package main

import (
	"bytes"
	"errors"
	"io"
	"slices"
	"strings"

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
  tonewright plan painting.toml --start 2026-12-01 --ics days.ics

Flags:
`

// planFlags are the flags as typed; options turns them into a plan.Options.
type planFlags struct {
	pictureFlags
	boxFlag
	mixingFlags
	studyFlag
	sightFlag
	tubesFlags
	daysFlags
	out, json, ics, checklist string
	colours                   int
	quiet                     bool
}

func (f *planFlags) set() *pflag.FlagSet {
	s := newFlags("plan")
	f.pictureFlags.set(s)
	s.IntVar(&f.colours, "colours", 0, "how many colours, `N` from 1 to 24, each region gets (default: as few of 3 to 8 as describe it)")
	f.boxFlag.set(s)
	f.mixingFlags.set(s)
	f.sightFlag.set(s)
	f.tubesFlags.set(s)
	f.daysFlags.set(s)
	s.StringVarP(&f.out, "out", "o", "report.html", "the `FILE` for the report")
	s.StringVar(&f.json, "json", "", "also write the plan as JSON to `FILE`")
	f.studyFlag.set(s)
	s.StringVar(&f.ics, "ics", "", "also write the days as a calendar to `FILE`, for any program that reads iCalendar; they need a --start")
	s.StringVar(&f.checklist, "checklist", "", "also write the days as text to tick off to `FILE`")
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
	if f.ics != "" && opt.Work.Start == "" {
		return job.blame(set, plan.WrongKey("ics", errNoStart))
	}
	results := f.results()
	targets, err := targetsOf(results, job.reads)
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
		return job.blame(set, err)
	}
	steps.say("writing")
	err = write(p, results, targets, &f.studyFlag)
	steps.end()
	if err != nil || f.quiet {
		return err
	}
	var text bytes.Buffer
	if err := report.PlanText(&text, p, oneLine(f.out), oneLine(f.json), oneLine(f.written(p)), oneLine(f.days())); err != nil {
		return err
	}
	_, err = io.WriteString(out, plainText(text.String()))
	return err
}

// job reads what the flags and the file named say, and takes from a painting file where
// results go where no flag says so.
func (f *planFlags) job(set *pflag.FlagSet, file string) (job, error) {
	flags, err := f.options(set)
	if err != nil {
		return job{}, err
	}
	j, err := jobOf(set, file, flags, f.box)
	if err != nil {
		return j, err
	}
	said(set, "out", &f.out, j.Out)
	said(set, "json", &f.json, j.JSON)
	said(set, "study", &f.study, j.Study)
	said(set, "ics", &f.ics, j.Calendar)
	said(set, "checklist", &f.checklist, j.Checklist)
	f.quiet = f.quiet || j.Quiet && !set.Changed("quiet")
	return j, nil
}

var errNoStart = errors.New("a calendar needs the date of its first day: give --start 2026-12-01, or set start in the painting file")

// options reads the flags; every mistake in them is a usage error that names the flag.
func (f *planFlags) options(set *pflag.FlagSet) (plan.Options, error) {
	opt, err := f.picture()
	if err != nil {
		return opt, err
	}
	opt.Colours = f.colours
	if f.colours < 0 || f.colours > plan.MostColours || f.colours == 0 && set.Changed("colours") {
		return opt, usageError("--colours %d is out of range: 1 to %d, or leave it out", f.colours, plan.MostColours)
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
	if opt.Work, err = f.work(); err != nil {
		return opt, err
	}
	if f.out == "" {
		return opt, usageError("--out needs a file name")
	}
	opt.Box, err = f.paints()
	return opt, err
}

// results are the files that are asked for, but for the study's, in the order that they
// are written.
func (f *planFlags) results() []result[*plan.Plan] {
	return asked([]result[*plan.Plan]{
		{"out", f.out, report.HTML},
		{"json", f.json, func(w io.Writer, p *plan.Plan) error { return report.JSON(w, p) }},
		{"ics", f.ics, report.Calendar},
		{"checklist", f.checklist, report.Checklist},
	})
}

// days lists the files of the days, as they were named.
func (f *planFlags) days() string {
	return strings.Join(slices.DeleteFunc([]string{f.ics, f.checklist}, func(name string) bool { return name == "" }), ", ")
}

// write puts the results and the study in place.
func write(p *plan.Plan, results []result[*plan.Plan], targets []string, study *studyFlag) error {
	files, err := made(results, targets, p)
	if err != nil {
		return err
	}
	pictures, err := study.files(p)
	if err != nil {
		return err
	}
	return place(append(files, pictures...))
}
