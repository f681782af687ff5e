// What plan makes a plan from: a photo and flags, or a painting file and flags that win
// over it.

package main

import (
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

// job reads what the flags and the file named say: a painting file where its name ends in
// .toml, else a photo.
func (f *planFlags) job(set *pflag.FlagSet, file string) (j job, err error) {
	flags, err := f.options(set)
	if err != nil {
		return j, err
	}
	if !isPainting(file) {
		j.Options, j.BoxFile = flags, f.box
		j.Options.Photo = file
	} else {
		if j.Painting, err = f.painting(file, flags); err != nil {
			return j, err
		}
		j.reads = append([]string{file}, masks(j.Options)...) // those too that flags take the place of
		if j.BoxFile != "" {
			j.reads = append(j.reads, j.BoxFile)
		}
		if f.box != "" {
			j.BoxFile = f.box
		}
		f.over(set, flags, &j)
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

// painting reads the painting file, with the box of the flags where they name one.
func (f *planFlags) painting(file string, flags plan.Options) (painting.Painting, error) {
	if f.box == "" {
		return painting.Read(file)
	}
	return painting.ReadWithBox(file, flags.Box)
}

// over lays the flags that were given over what the painting file says, and takes from
// it where results go where no flag says so.
func (f *planFlags) over(set *pflag.FlagSet, flags plan.Options, j *job) {
	o := &j.Options
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
		{"region", func() { o.Regions = flags.Regions }},
		{"colours", func() { o.Colours = flags.Colours }},
		{"finish", func() { o.Mixing.Finish = flags.Mixing.Finish }},
		{"coat", func() { o.Mixing.Coat = flags.Mixing.Coat }},
		{"holds", func() { o.Mixing.Holds = flags.Mixing.Holds }},
		{"sight", func() { o.Sight = flags.Sight }},
		{"tubes", func() { o.Tubes.Most = flags.Tubes.Most }},
		{"within", func() { o.Tubes.Within = flags.Tubes.Within }},
		{"megapixels", func() { o.Megapixels = flags.Megapixels }},
	} {
		if set.Changed(each.flag) {
			each.take()
		}
	}
	o.Version = version
	for _, each := range []struct {
		flag string
		to   *string
		said string
	}{{"out", &f.out, j.Out}, {"json", &f.json, j.JSON}, {"study", &f.study, j.Study}} {
		if !set.Changed(each.flag) && each.said != "" {
			*each.to = each.said
		}
	}
	if !set.Changed("quiet") {
		f.quiet = j.Quiet
	}
}
