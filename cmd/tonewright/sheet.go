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

// sheetFlags are those of plan that say what lies where, and what sheets are wanted.
type sheetFlags struct {
	planFlags
	sheets, as, paper, overlap, cards string
	steps, finer                      int
	enlarge                           float64
	mirror                            bool
	file                              string // for the sheets
}

func (f *sheetFlags) set() *pflag.FlagSet {
	s := newFlags("sheet")
	s.StringVar(&f.sheets, "sheets", "", "which `KINDS`, with commas between: whole, panel, cards, table (default whole,panel,table; with --cards: cards)")
	s.StringVar(&f.as, "as", "drawing", "show the picture as `WAY`: drawing, photo, gray or values")
	s.StringVar(&f.paper, "paper", "A4", "the printer's `PAPER`: A4, Letter, A3, Tabloid, A2, A1, A0, ANSI-C, ANSI-D or ANSI-E")
	s.StringVar(&f.overlap, "overlap", "", "the `WIDTH` that neighbouring sheets of the panel share, to be glued (default 10mm)")
	s.IntVar(&f.steps, "steps", 5, "values in `N` steps, 5 or 9")
	s.StringVar(&f.cards, "cards", "", "the `CELLS` to make cards of, like C3:F7 for a block or C3,D3 for one a page")
	s.Float64Var(&f.enlarge, "enlarge", 1, "enlarge the cards so many `TIMES`")
	s.IntVar(&f.finer, "finer", sheet.UsualFiner, "part each side of a cell on the cards into `N`")
	s.BoolVar(&f.mirror, "mirror", false, "turn the picture left for right, to trace it through from the back")
	f.planFlags.forSheets(s)
	s.StringVarP(&f.file, "out", "o", "sheets.pdf", "the `FILE` for the sheets, .pdf or .svg; SVG has a file for each page: sheets-1.svg, sheets-2.svg")
	return s
}

// forSheets sets the flags of plan that sheets have too. The rest keep what is usual.
func (f *planFlags) forSheets(s *pflag.FlagSet) {
	all := f.set()
	for _, name := range []string{"panel", "cell", "crop", "region", "ground", "key", "box", "detail", "name", "megapixels", "quiet"} {
		if flag := all.Lookup(name); flag != nil {
			s.AddFlag(flag)
		}
	}
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
	steps := newProgress(errs, f.quiet)
	job.Options.Step = steps.say
	p, err := plan.Sheets(job.Options, want.Wish())
	if err != nil {
		steps.end()
		return job.blame(set, err)
	}
	steps.say("laying out")
	files, err := f.written(p, want, job.reads)
	if err == nil {
		err = place(files)
	}
	steps.end()
	if err != nil || f.quiet {
		return err
	}
	return nil
}

// wanted reads the flags that say which sheets are wanted.
func (f *sheetFlags) wanted(set *pflag.FlagSet) (o sheet.Options, err error) {
	o = sheet.Options{Steps: f.steps, Cells: f.cards, Enlarge: f.enlarge, Finer: f.finer, Mirror: f.mirror}
	if f.sheets != "" {
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
	if f.overlap != "" {
		if o.Overlap, _, err = grid.ParseLength(f.overlap); err != nil {
			return o, wrongFlag("overlap", err)
		}
	}
	return o, nil
}

// written lays the sheets out and says what goes into which file.
func (f *sheetFlags) written(p *plan.SheetPlan, want sheet.Options, reads []string) ([]output, error) {
	pages, err := sheet.Pages(p, want)
	if err != nil {
		return nil, err
	}
	title := p.Name + ": transfer sheets"
	if !f.svg() {
		var b bytes.Buffer
		if err := sheet.PDF(&b, title, "tonewright "+version, pages); err != nil {
			return nil, err
		}
		return []output{{f.file, b.Bytes()}}, nil
	}
	var files []output
	for i, page := range pages {
		var b bytes.Buffer
		if err := sheet.SVG(&b, title, page); err != nil {
			return nil, err
		}
		files = append(files, output{f.name(i, len(pages)), b.Bytes()})
	}
	return files, nil
}

func (f *sheetFlags) svg() bool { return strings.EqualFold(filepath.Ext(f.file), ".svg") }

// name returns the file of page i of n: a single page keeps the name as given.
func (f *sheetFlags) name(i, n int) string {
	if n == 1 {
		return f.file
	}
	end := filepath.Ext(f.file)
	return fmt.Sprintf("%s-%d%s", strings.TrimSuffix(f.file, end), i+1, end)
}
