// What plan and sheet begin with: a photo and flags, or a painting file and flags that
// win over it.

package main

import (
	"errors"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"tonewright/report/painting"
	"tonewright/report/plan"
)

// job is a painting to be planned, and every file that is read for it or that its
// painting file names: no result takes the place of one of them.
type job struct {
	painting.Painting
	reads []string
}

// jobOf reads what the file named says, a painting file where its name ends in .toml,
// else a photo, and lays over it the flags that were given. flags are what all of them
// say, box the box file among them.
func jobOf(set *pflag.FlagSet, file string, flags plan.Options, box string) (j job, err error) {
	if !isPainting(file) {
		j.Options, j.BoxFile = flags, box
		j.Options.Photo = file
	} else {
		if j.Painting, err = readPainting(file, flags, box); err != nil {
			return j, err
		}
		j.reads = append([]string{file}, masks(j.Options)...) // those too that flags take the place of
		if j.BoxFile != "" {
			j.reads = append(j.reads, j.BoxFile)
		}
		if box != "" {
			j.BoxFile = box
		}
		over(set, flags, &j.Options)
	}
	j.reads = append(j.reads, j.Options.Photo)
	if j.BoxFile != "" {
		j.reads = append(j.reads, j.BoxFile)
	}
	return j, nil
}

func masks(o plan.Options) (files []string) {
	for _, r := range o.Regions {
		if r.Mask != "" {
			files = append(files, r.Mask)
		}
	}
	return files
}

func isPainting(file string) bool { return strings.EqualFold(filepath.Ext(file), ".toml") }

// readPainting reads the painting file, with the box of the flags where they name one.
func readPainting(file string, flags plan.Options, box string) (painting.Painting, error) {
	if box == "" {
		return painting.Read(file)
	}
	return painting.ReadWithBox(file, flags.Box)
}

// over lays the flags that were given over what the painting file says. A flag that the
// command has not is none that was given.
func over(set *pflag.FlagSet, flags plan.Options, o *plan.Options) {
	for _, each := range []struct {
		flag string
		take func()
	}{
		{"name", func() { o.Name = flags.Name }},
		{"panel", func() { o.Panel = flags.Panel }},
		{"cell", func() { o.Cell = flags.Cell }},
		{"crop", func() { o.Crop = flags.Crop }},
		{"ground", func() { o.Ground = flags.Ground }},
		{"key", func() { o.Literal = flags.Literal }},
		{"region", func() { o.Regions, o.Work.Coats = flags.Regions, nil }}, // coats are for the file's regions
		{"colours", func() { o.Colours = flags.Colours }},
		{"finish", func() { o.Mixing.Finish = flags.Mixing.Finish }},
		{"coat", func() { o.Mixing.Coat = flags.Mixing.Coat }},
		{"holds", func() { o.Mixing.Holds = flags.Mixing.Holds }},
		{"sight", func() { o.Sight = flags.Sight }},
		{"tubes", func() { o.Tubes.Most = flags.Tubes.Most }},
		{"within", func() { o.Tubes.Within = flags.Tubes.Within }},
		{"start", func() { o.Work.Start = flags.Work.Start }},
		{"sessions", func() { o.Work.Sessions = flags.Work.Sessions }},
		{"detail", func() { o.Detail = flags.Detail }},
		{"megapixels", func() { o.Megapixels = flags.Megapixels }},
	} {
		if set.Changed(each.flag) {
			each.take()
		}
	}
	o.Version = version
}

// said takes what the painting file says for what a flag was not given for.
func said(set *pflag.FlagSet, flag string, to *string, file string) {
	if !set.Changed(flag) && file != "" {
		*to = file
	}
}

// blame tells where in the painting file the mistake is, unless a flag made it.
func (j *job) blame(set *pflag.FlagSet, err error) error {
	if wrong, ok := errors.AsType[plan.KeyError](err); ok && set.Changed(wrong.Key) {
		return err
	}
	if _, ok := errors.AsType[plan.RegionError](err); ok && set.Changed("region") {
		return err
	}
	return j.Blame(err)
}
