// Package painting reads and writes the painting file: what a painter wants of a
// picture, in TOML, to be planned from.
package painting

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"tonewright/match/paint"
	"tonewright/report/plan"
)

// Painting is what a painting file says.
type Painting struct {
	Options plan.Options // its files are named from where the program runs
	BoxFile string       // "": the paints are listed in the file, or the starter box's

	// Where results go, from where the program runs; "" where the file does not say.
	Out, JSON, Study, Calendar, Checklist string
	Quiet                                 bool

	file  string
	lines map[string]int // where the place of each region is said, by the region's name
	keys  map[string]int // where each key above the regions stands
}

// largest is the most bytes a painting file may have: far over what a hand writes.
const largest = 1 << 20

// Read reads a painting file. Paths in it start from its folder.
// An error names the file, the line where it is known, what is wrong and what to write
// instead; it is a plan.UsageError where the file was read and what it says is wrong.
func Read(file string) (Painting, error) { return read(file, nil) }

// ReadWithBox is Read with a box in place of the one that the file names or lists;
// BoxFile is still the file's own, which is not read.
func ReadWithBox(file string, box paint.Box) (Painting, error) { return read(file, &box) }

func read(file string, box *paint.Box) (Painting, error) {
	text, err := paint.ReadRegular(file, largest)
	if err != nil {
		return Painting{}, err
	}
	return parseText(file, text, box)
}

// parseText reads the text of a painting file; box nil takes its own.
func parseText(file string, text []byte, box *paint.Box) (Painting, error) {
	if len(text) > largest {
		return Painting{}, fmt.Errorf("%s: over 1 MiB is no painting file; give the TOML file that tonewright start writes", file)
	}
	text, err := paint.TOMLText(file, text)
	if err != nil {
		return Painting{}, err
	}
	tree, err := parse(file, text)
	if err != nil {
		return Painting{}, err
	}
	r := reading{folder: folderOf(file), given: box}
	r.file = file
	if err := r.all(tree); err != nil {
		return Painting{}, misused(file, err)
	}
	return r.Painting, nil
}

// Blame returns the error of a plan with the file and the line of the region or the key
// that it is about; other errors as they are.
func (p *Painting) Blame(err error) error {
	line := 0
	if wrong, ok := errors.AsType[plan.RegionError](err); ok {
		line = p.lines[strings.ToLower(wrong.Name)]
	}
	if wrong, ok := errors.AsType[plan.KeyError](err); ok {
		line = p.keys[wrong.Key]
	}
	if line == 0 {
		return err
	}
	misuse, misused := errors.AsType[plan.UsageError](err)
	if !misused {
		return fmt.Errorf("%s:%d: %w", p.file, line, err)
	}
	return plan.Misused(fmt.Errorf("%s:%d: %w", p.file, line, misuse.Unwrap()))
}

// folderOf returns the folder that a file's paths start from: that of the file itself,
// links to it followed, so that ".." leads where the system has it lead.
func folderOf(file string) string {
	if real, err := filepath.EvalSymlinks(file); err == nil {
		file = real
	}
	return filepath.Dir(file)
}
