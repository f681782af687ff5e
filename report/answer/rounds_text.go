package answer

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"strconv"
	"strings"
	"time"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// The two lines that a log begins with.
const (
	logMark    = "# tonewright: piles mixed and measured, one line a round, the last at the bottom"
	logColumns = "date\taim\taim Lab\tphoto\tpile\tmeasured Lab\tspread\tCIEDE2000\tadvice\tpile with the advice taken"
)

const (
	noPile      = "-"
	largestLog  = 1 << 20 // bytes; thousands of rounds
	mostSpread  = 200     // CIEDE2000; over any there is
	mostLab     = 1000    // of |L|, |a| and |b|; past what the wrong card makes of a swatch
	logOpenText = "is no log of rounds, and is left as it is; choose another file with --log"
)

// ReadRounds reads a log; where there is no such file, it is an empty one. Paints are
// looked up among the owned ones and in the library.
// An error says the line. A file that is not a log is an error too.
func ReadRounds(file string, owned []paint.Paint) (*Rounds, error) {
	f, err := os.Open(file)
	if errors.Is(err, fs.ErrNotExist) {
		return &Rounds{owned: owned}, nil
	}
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be opened: %v", file, causeOf(err))
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, largestLog+1))
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be read: %v", file, causeOf(err))
	}
	if len(text) > largestLog {
		return nil, fmt.Errorf("%s: over 1 MiB %s", file, logOpenText)
	}
	return parseRounds(file, string(text), owned)
}

// causeOf returns the reason without the file name that os puts before it.
func causeOf(err error) error {
	if path, ok := errors.AsType[*fs.PathError](err); ok {
		return path.Err
	}
	return err
}

func parseRounds(file, text string, owned []paint.Paint) (*Rounds, error) {
	lines := strings.Split(strings.TrimPrefix(strings.ReplaceAll(text, "\r\n", "\n"), "\ufeff"), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " \t\r")
	}
	if len(lines) < 2 || lines[0] != logMark || lines[1] != logColumns {
		return nil, fmt.Errorf("%s: %s", file, logOpenText)
	}
	log := &Rounds{owned: owned}
	for i, line := range lines[2:] {
		switch {
		case line == "":
		case line[0] == '#':
			log.below = append(log.below, line)
		default:
			r, err := parseRound(line, owned)
			if err != nil {
				return nil, fmt.Errorf("%s:%d: %w; mend the line or take it out", file, i+3, err)
			}
			r.above, log.below = log.below, nil
			log.list = append(log.list, r)
		}
	}
	return log, nil
}

func parseRound(line string, owned []paint.Paint) (r round, err error) {
	fields := strings.Split(line, "\t")
	if want := strings.Count(logColumns, "\t") + 1; len(fields) != want {
		return r, fmt.Errorf("has %d columns, not %d with tabs between", len(fields), want)
	}
	r = round{date: fields[0], aimed: fields[1], photo: fields[3], advice: fields[8]}
	if _, err := time.Parse(time.DateOnly, r.date); err != nil {
		return r, fmt.Errorf("date %q is not written as 2026-11-25", r.date)
	}
	if r.aim, err = parseLab(fields[2]); err != nil {
		return r, fmt.Errorf("aim: %w", err)
	}
	if r.pile, err = parsePile(fields[4], owned); err != nil {
		return r, err
	}
	if r.measured, err = parseLab(fields[5]); err != nil {
		return r, fmt.Errorf("measured: %w", err)
	}
	if r.spread, err = parseDistance(fields[6]); err != nil {
		return r, fmt.Errorf("spread: %w", err)
	}
	if r.deltaE, err = parseDistance(fields[7]); err != nil {
		return r, fmt.Errorf("CIEDE2000: %w", err)
	}
	r.then, err = parsePile(fields[9], owned)
	return r, err
}

// parsePile reads a pile; one of a paint that is not known is kept as it is written.
func parsePile(text string, owned []paint.Paint) (loggedPile, error) {
	if text == noPile {
		return loggedPile{}, nil
	}
	p, err := match.ReadPile(owned, text)
	if errors.As(err, new(match.UnknownPaint)) {
		return loggedPile{unread: text}, nil
	}
	return loggedPile{Pile: p}, err
}

// parseLab reads "52.1 -3 18.25". A measurement by the wrong card may be no colour there is.
func parseLab(text string) (c colour.Lab, err error) {
	fields := strings.Fields(text)
	if len(fields) != 3 {
		return c, fmt.Errorf("%q is not three numbers L a b", text)
	}
	for i, to := range []*float64{&c.L, &c.A, &c.B} {
		*to, err = strconv.ParseFloat(fields[i], 64)
		if err != nil || !(math.Abs(*to) <= mostLab) {
			return colour.Lab{}, fmt.Errorf("%q is not three numbers L a b from -%d to %d", text, mostLab, mostLab)
		}
	}
	return c, nil
}

func parseDistance(text string) (float64, error) {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v >= 0 && v <= mostSpread) {
		return 0, fmt.Errorf("%q is no number from 0 to %d", text, mostSpread)
	}
	return v, nil
}

// Text returns the log as it is written to a file, after making sure that it is read
// back the same.
// It is an error if it would not be, or the log has grown past what is read.
func (l *Rounds) Text(file string) ([]byte, error) {
	text := l.text()
	if len(text) > largestLog {
		return nil, fmt.Errorf("%s: is full, at 1 MiB, and is left as it is; choose another file with --log", file)
	}
	again, err := parseRounds(file, string(text), l.owned)
	if err == nil && !bytes.Equal(again.text(), text) {
		err = errors.New("it would read otherwise than it is")
	}
	if err != nil {
		return nil, fmt.Errorf("%s: is left as it is, since the new round could not be read back: %w; check --card, --aim and --pile", file, err)
	}
	return text, nil
}

func (l *Rounds) text() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s\n%s\n", logMark, logColumns)
	for _, r := range l.list {
		writeLines(&b, r.above)
		columns := []string{r.date, inColumn(r.aimed), labText(r.aim), inColumn(r.photo), r.pile.String(), labText(r.measured),
			fmt.Sprintf("%.1f", r.spread), fmt.Sprintf("%.1f", r.deltaE), inColumn(r.advice), r.then.String()}
		fmt.Fprintln(&b, strings.Join(columns, "\t"))
	}
	writeLines(&b, l.below)
	return b.Bytes()
}

func writeLines(b *bytes.Buffer, lines []string) {
	for _, line := range lines {
		fmt.Fprintln(b, line)
	}
}

// inColumn keeps what a name may hold from breaking up the line.
func inColumn(text string) string {
	return strings.Join(strings.Fields(strings.ToValidUTF8(text, "?")), " ")
}

func labText(c colour.Lab) string {
	return fmt.Sprintf("%g %g %g", plan.Round(c.L, 2), plan.Round(c.A, 2), plan.Round(c.B, 2))
}

// String writes the pile as parsePile reads it.
func (p loggedPile) String() string {
	switch {
	case p.unread != "":
		return p.unread
	case len(p.Paints) == 0:
		return noPile
	}
	return p.Pile.String()
}
