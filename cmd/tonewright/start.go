package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"tonewright/report"
	"tonewright/report/painting"
	"tonewright/report/plan"
)

const startHelp = `Begin a painting file: what was found in a photo, to say in it what you want.

Usage:
  tonewright start PHOTO [flags]

It holds the photo, the panel, your sight, your paints and the regions found in
the picture, with a note on what each line does. Name the regions, give them
palettes and roles, and tonewright plan painting.toml plans from it.

Examples:
  tonewright start kettle.jpg
  tonewright start kettle.jpg --panel 12x16in --sight "deutan 0.8"
  tonewright start kettle.jpg --box my-paints.toml -o kettle.toml

Flags:
`

type startFlags struct {
	layoutFlags
	boxFlag
	sightFlag
	out   string
	force bool
}

func (f *startFlags) set() *pflag.FlagSet {
	s := newFlags("start")
	f.layoutFlags.set(s)
	f.boxFlag.set(s)
	f.sightFlag.set(s)
	s.StringVarP(&f.out, "out", "o", "painting.toml", "the painting `FILE` to write")
	s.BoolVar(&f.force, "force", false, "write over a painting file that is there; what it says is lost")
	return s
}

// runStart finds the regions of a photo and writes a painting file with them.
func runStart(args []string, out, errs io.Writer) error {
	var f startFlags
	set := f.set()
	if helped, err := parse(set, startHelp, args, out); helped || err != nil {
		return err
	}
	if set.NArg() != 1 {
		return usageError("start takes one photo, not %d: tonewright start PHOTO [flags]", set.NArg())
	}
	photo := set.Arg(0)
	if isPainting(photo) {
		return usageError("%s is a painting file already: edit it, then tonewright plan %s", photo, asTyped(photo))
	}
	opt, err := f.options(photo)
	if err != nil {
		return err
	}
	target, err := f.target(photo)
	if err != nil {
		return err
	}
	steps := newProgress(errs, false)
	opt.Step = steps.say
	found, err := plan.Found(opt)
	steps.end()
	if err != nil {
		return err
	}
	return f.write(out, target, opt, found)
}

// options reads the flags.
func (f *startFlags) options(photo string) (opt plan.Options, err error) {
	if opt, err = f.layout(); err != nil {
		return opt, err
	}
	opt.Photo = photo
	if opt.Sight, err = f.vision(); err != nil {
		return opt, err
	}
	opt.Box, err = f.paints()
	return opt, err
}

// target says where the painting file goes, after making sure that nothing is lost by it.
func (f *startFlags) target(photo string) (string, error) {
	if !isPainting(f.out) {
		return "", usageError("--out %s: a painting file's name ends in .toml, by which plan knows it", f.out)
	}
	target, err := targetOf(f.out)
	if err != nil {
		return "", err
	}
	for _, input := range []string{photo, f.box} {
		if input != "" && sameFile(target, input) {
			return "", usageError("%s is read and would be written over: choose another file with --out", f.out)
		}
	}
	if _, err := os.Lstat(target); err == nil && !f.force {
		return "", usageError("%s is there already and stays as it is: edit it, choose another file with --out, or begin anew with --force", f.out)
	}
	return target, nil
}

// write writes the painting file and says what to do next.
func (f *startFlags) write(out io.Writer, target string, opt plan.Options, found plan.FoundPlan) error {
	base := filepath.Base(opt.Photo)
	start := painting.Start{
		Name: strings.TrimSuffix(base, filepath.Ext(base)), Options: opt, Found: found,
		Command: oneLine("tonewright plan " + asTyped(f.out)),
	}
	var err error
	if start.Photo, err = pathFrom(target, opt.Photo); err != nil {
		return err
	}
	if f.box != "" {
		if start.BoxFile, err = pathFrom(target, f.box); err != nil {
			return err
		}
	}
	text, err := start.Text()
	if err != nil {
		return err
	}
	if err := place([]output{{target, []byte(text)}}); err != nil {
		return err
	}
	ground := opt.Ground.Name
	if ground == "" {
		ground = "white"
	}
	return report.StartText(out, oneLine(start.Name), ground, found, oneLine(f.out), start.Command)
}

// pathFrom returns how a file is reached from the folder of another, with / between
// folders, links in both followed.
func pathFrom(from, file string) (string, error) {
	folder, err := realFolder(from)
	if err != nil {
		return "", err
	}
	to, err := realFolder(file)
	if err != nil {
		return "", err
	}
	to = filepath.Join(to, filepath.Base(file))
	if way, err := filepath.Rel(folder, to); err == nil {
		to = way
	}
	return filepath.ToSlash(to), nil
}

// realFolder returns the folder of a file from the root, links followed.
func realFolder(file string) (string, error) {
	folder, err := filepath.EvalSymlinks(filepath.Dir(file))
	if err == nil {
		folder, err = filepath.Abs(folder)
	}
	if err != nil {
		return "", fmt.Errorf("%s: its folder cannot be found: %s", file, reason(err))
	}
	return folder, nil
}

// asTyped returns a file's name as it is typed after a command: in quotes where a shell
// would take it apart.
func asTyped(file string) string {
	plain := func(r rune) bool {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune("._-/", r) || r > 127
	}
	if file != "" && !strings.ContainsFunc(file, func(r rune) bool { return !plain(r) }) {
		return file
	}
	return "'" + strings.ReplaceAll(file, "'", `'\''`) + "'"
}
