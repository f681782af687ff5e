// Transfer sheets: tonewright sheet PHOTO|PAINTING.

package main

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"tonewright/grid"
	"tonewright/report/plan"
	"tonewright/report/sheet"
)

const sheetHelp = `Make transfer sheets, to carry the drawing from the photo to the panel.

Usage:
  tonewright sheet PHOTO [flags]
  tonewright sheet PAINTING.toml [flags]

Kinds of sheet:
  whole  the whole picture on one page, with the grid and its scale
  panel  the picture at the panel's size, on sheets to be glued together
  cards  cells by themselves, at the panel's size or enlarged
  table  where the main contours cross the grid, for a ruler and no printer

Every page has a rule of 100 mm and 4 in: measure it before you trust the print.

Examples:
  tonewright sheet kettle.jpg --panel 12x16in
  tonewright sheet painting.toml --sheets panel --paper A3 --as values
  tonewright sheet kettle.jpg --cards C3:F7 --enlarge 2
  tonewright sheet kettle.jpg --sheets whole --out sheet.svg

Flags:
`

// sheetFlags are those that say what lies where, and what sheets are wanted.
type sheetFlags struct {
	pictureFlags
	boxFlag
	sheets, as, paper, overlap, cards, out string
	steps, finer                           int
	enlarge                                float64
	mirror, quiet                          bool
}

func (f *sheetFlags) set() *pflag.FlagSet {
	s := newFlags("sheet")
	s.StringVar(&f.sheets, "sheets", "", "which `KINDS`, with commas between: whole, panel, cards, table (default whole,panel,table; with --cards only those)")
	s.StringVar(&f.as, "as", "drawing", "show the picture as `WAY`: drawing, photo, gray or values")
	s.IntVar(&f.steps, "steps", 5, "values in `N` steps, 5 or 9")
	s.StringVar(&f.paper, "paper", "A4", "the printer's `PAPER`: A4, Letter, A3, Tabloid, A2, A1, A0, ANSI-C, ANSI-D or ANSI-E")
	s.StringVar(&f.overlap, "overlap", "10mm", "the `WIDTH` that neighbouring sheets of the panel share, to be glued")
	s.StringVar(&f.cards, "cards", "", "the `CELLS` to make cards of: C3:F7 for a block, C3,D3 for one on each page")
	s.Float64Var(&f.enlarge, "enlarge", 1, "enlarge the cards so many `TIMES`")
	s.IntVar(&f.finer, "finer", sheet.UsualFiner, "part each side of a cell on the cards into `N`")
	s.BoolVar(&f.mirror, "mirror", false, "turn the picture left for right, to trace it through from the back")
	f.pictureFlags.set(s)
	f.boxFlag.set(s)
	s.StringVarP(&f.out, "out", "o", "sheets.pdf", "the `FILE` for the sheets, .pdf or .svg; of more than one page SVG makes sheets-1.svg, sheets-2.svg …")
	s.BoolVarP(&f.quiet, "quiet", "q", false, "print nothing but errors")
	return s
}

// runSheet makes sheets and writes them; nothing is written unless all are made.
func runSheet(args []string, out, errs io.Writer) error {
	var f sheetFlags
	set := f.set()
	if helped, err := parse(set, sheetHelp, args, out); helped || err != nil {
		return err
	}
	if set.NArg() != 1 {
		return usageError("sheet takes one photo or one painting file, not %d: tonewright sheet PHOTO [flags]", set.NArg())
	}
	want, err := f.wanted(set)
	if err != nil {
		return err
	}
	job, err := f.job(set, set.Arg(0))
	if err != nil {
		return err
	}
	if _, err := targetsOf(f.results(1), job.reads); err != nil { // before the work, where it can be said
		return err
	}
	p, pages, err := f.make(set, job, want, newProgress(errs, f.quiet))
	if err != nil || f.quiet {
		return err
	}
	var text bytes.Buffer
	if err := sheet.Summary(&text, f.named(len(pages)), p, pages); err != nil {
		return err
	}
	_, err = io.WriteString(out, plainText(text.String()))
	return err
}

// make makes the sheets and puts them in place.
func (f *sheetFlags) make(set *pflag.FlagSet, j job, want sheet.Options, steps *progress) (*plan.SheetPlan, []sheet.Page, error) {
	defer steps.end()
	j.Options.Step = steps.say
	p, err := plan.Sheets(j.Options, want.Wish())
	if err != nil {
		return nil, nil, j.blame(set, err)
	}
	steps.say("laying out")
	pages, err := sheet.Pages(p, want)
	if err != nil {
		return nil, nil, err
	}
	return p, pages, f.write(sheet.Book{Title: p.Name, Program: "tonewright " + version, Pages: pages}, j.reads)
}

// job reads what the flags and the file named say.
func (f *sheetFlags) job(set *pflag.FlagSet, file string) (job, error) {
	flags, err := f.picture()
	if err != nil {
		return job{}, err
	}
	if flags.Box, err = f.paints(); err != nil {
		return job{}, err
	}
	j, err := jobOf(set, file, flags, f.box)
	f.quiet = f.quiet || j.Quiet && !set.Changed("quiet")
	return j, err
}

// wanted reads the flags that say which sheets are wanted; every mistake in them is a
// usage error that names the flag.
func (f *sheetFlags) wanted(set *pflag.FlagSet) (o sheet.Options, err error) {
	o = sheet.Options{Steps: f.steps, Cells: f.cards, Enlarge: f.enlarge, Finer: f.finer, Mirror: f.mirror}
	if set.Changed("sheets") {
		if o.Kinds, err = sheet.ParseKinds(f.sheets); err != nil {
			return o, wrongFlag("sheets", err)
		}
	}
	if o.As, err = sheet.ParseAs(f.as); err != nil {
		return o, wrongFlag("as", err)
	}
	if o.Paper, err = grid.ParsePaper(f.paper); err != nil {
		return o, wrongFlag("paper", err)
	}
	if o.Overlap, _, err = grid.ParseLength(f.overlap); err != nil {
		return o, wrongFlag("overlap", err)
	}
	if o.Overlap < leastOverlap {
		return o, usageError("--overlap %s is too little to glue: %g mm or more", f.overlap, float64(leastOverlap))
	}
	if set.Changed("cards") {
		if err := grid.CheckCells(f.cards); err != nil {
			return o, wrongFlag("cards", err)
		}
	}
	switch {
	case f.steps != 5 && f.steps != 9:
		return o, usageError("--steps %d is not known: 5 or 9", f.steps)
	case !(f.enlarge >= 1 && f.enlarge <= sheet.MostEnlarged):
		return o, usageError("--enlarge %g is out of range: 1 to %d times", f.enlarge, sheet.MostEnlarged)
	case f.finer < 1 || f.finer > sheet.MostFiner:
		return o, usageError("--finer %d is out of range: 1 to %d", f.finer, sheet.MostFiner)
	}
	end := filepath.Ext(f.out)
	if kind := strings.ToLower(end); kind != ".pdf" && kind != ".svg" || filepath.Base(f.out) == end {
		return o, usageError("--out %s: sheets are written as PDF or SVG: give it a name that ends in .pdf or .svg", f.out)
	}
	return o, nil
}

// leastOverlap is the narrowest strip that takes glue. Ours.
const leastOverlap grid.Millimetres = 2

// results lists the files that sheets of so many pages go into.
func (f *sheetFlags) results(pages int) []result[sheet.Book] {
	if !f.svg() {
		return []result[sheet.Book]{{"out", f.out, sheet.PDF}}
	}
	var all []result[sheet.Book]
	for i := range pages {
		all = append(all, result[sheet.Book]{"out", f.name(i, pages), func(w io.Writer, b sheet.Book) error { return sheet.SVG(w, b, i) }})
	}
	return all
}

// write puts the pages in place, all or none.
func (f *sheetFlags) write(b sheet.Book, reads []string) error {
	results := f.results(len(b.Pages))
	targets, err := targetsOf(results, reads)
	if err != nil {
		return err
	}
	files, err := made(results, targets, b)
	if err != nil {
		return err
	}
	return place(files)
}

// named says in words which files so many pages went into.
func (f *sheetFlags) named(pages int) string {
	if !f.svg() || pages == 1 {
		return f.out
	}
	return f.name(0, pages) + " to " + f.name(pages-1, pages)
}

func (f *sheetFlags) svg() bool { return strings.EqualFold(filepath.Ext(f.out), ".svg") }

// name returns the file of page i of n: a single page keeps the name as given.
func (f *sheetFlags) name(i, n int) string {
	if n == 1 {
		return f.out
	}
	end := filepath.Ext(f.out)
	return fmt.Sprintf("%s-%d%s", strings.TrimSuffix(f.out, end), i+1, end)
}
