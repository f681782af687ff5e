package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/pflag"

	"tonewright/report"
)

// command is one of the program's commands.
type command struct {
	name, args, does string
	run              func(args []string, out, errs io.Writer) error
}

var commands = []command{
	{"start", "PHOTO", "a painting file to set regions, palettes and more in", runStart},
	{"plan", "PHOTO|PAINTING", "a paint plan from a photo or a painting file", runPlan},
	{"sheet", "PHOTO|PAINTING", "transfer sheets, to carry the drawing to the panel", runSheet},
	{"mix", "COLOUR", "recipes for one colour", runMix},
	{"string", "PAINT PAINT", "mixes from one paint to another, evenly spaced", runString},
	{"glaze", "--over COLOUR", "which transparent paint, how thin, for a colour", runGlaze},
	{"swatch", "PHOTO", "whether a mixed pile is right, and what to add", runSwatch},
	{"tube", "FILE", "your own tube of a paint, from spectra or painted swatches", runTube},
	{"box", "", "what is known of your paints, and what they do not reach", runBox},
}

// newFlags starts the flags of a command.
func newFlags(name string) *pflag.FlagSet {
	s := pflag.NewFlagSet(name, pflag.ContinueOnError)
	s.SortFlags = false
	s.SetOutput(io.Discard)
	return s
}

// parse reads the flags; where help was asked for it is printed and there is nothing
// more to do.
func parse(s *pflag.FlagSet, help string, args []string, out io.Writer) (helped bool, err error) {
	err = s.Parse(args)
	if errors.Is(err, pflag.ErrHelp) {
		_, err = fmt.Fprint(out, help, s.FlagUsagesWrapped(80))
		return true, err
	}
	if err != nil {
		return false, usageError("%v; see tonewright %s --help", err, s.Name())
	}
	return false, nil
}

// answering are the flags that every command with an answer on the terminal has.
type answering struct {
	boxFlag
	json bool
}

func (f *answering) set(s *pflag.FlagSet) {
	f.boxFlag.set(s)
	s.BoolVar(&f.json, "json", false, "print the answer as JSON")
}

// print writes the answer as text or as JSON, whole or not at all.
func (f *answering) print(out io.Writer, answer any, text func(io.Writer) error) error {
	var b bytes.Buffer
	write := text
	if f.json {
		write = func(w io.Writer) error { return report.JSON(w, answer) }
	}
	if err := write(&b); err != nil {
		return err
	}
	written := b.String()
	if !f.json { // JSON has its own escapes
		written = plainText(written)
	}
	_, err := io.WriteString(out, written)
	return err
}
