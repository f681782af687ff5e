package answer

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// Rounds is the log of a painting: the piles that were mixed and measured. It is a
// text file of one line a round with tabs between its columns, for the eye, for a
// spreadsheet, and to be read back.
type Rounds struct{ list []round }

// round is one line of the log.
type round struct {
	date     string // YYYY-MM-DD
	aimed    string // the plan's tag or the colour, as typed
	aim      colour.Lab
	photo    string     // its file name
	pile     match.Pile // none where none was told
	measured colour.Lab
	spread   float64
	deltaE   float64
	advice   string
	then     match.Pile // the pile if the advice is taken
}

// The two lines that a log begins with.
const (
	logMark    = "# tonewright: piles mixed and measured, one line a round, the last at the bottom"
	logColumns = "date\taim\taim Lab\tphoto\tpile\tmeasured Lab\tspread\tCIEDE2000\tadvice\tpile with the advice taken"
)

const (
	noPile      = "-"
	largestLog  = 1 << 20 // bytes; thousands of rounds
	mostSpread  = 200     // CIEDE2000; over any there is
	logOpenText = "is no log of rounds, and is left as it is; choose another file with --log"
)

// ReadRounds reads a log; where there is no such file, it is an empty one. Paints are
// looked up among the owned ones and in the library.
// An error says the line. A file that is not a log is an error too.
func ReadRounds(file string, owned []paint.Paint) (*Rounds, error) {
	f, err := os.Open(file)
	if errors.Is(err, fs.ErrNotExist) {
		return &Rounds{}, nil
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
	if len(lines) < 2 || lines[0] != logMark || lines[1] != logColumns {
		return nil, fmt.Errorf("%s: %s", file, logOpenText)
	}
	log := &Rounds{}
	for i, line := range lines[2:] {
		if strings.TrimSpace(line) == "" {
			continue
		}
		r, err := parseRound(line, owned)
		if err != nil {
			return nil, fmt.Errorf("%s:%d: %w; mend the line or take it out", file, i+3, err)
		}
		log.list = append(log.list, r)
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

func parsePile(text string, owned []paint.Paint) (match.Pile, error) {
	if text == noPile {
		return match.Pile{}, nil
	}
	return match.ParsePile(owned, text)
}

// parseLab reads "52.1 -3 18.25".
func parseLab(text string) (c colour.Lab, err error) {
	fields := strings.Fields(text)
	if len(fields) != 3 {
		return c, fmt.Errorf("%q is not three numbers L a b", text)
	}
	return colour.Parse("lab(" + strings.Join(fields, ", ") + ")")
}

func parseDistance(text string) (float64, error) {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v >= 0 && v <= mostSpread) {
		return 0, fmt.Errorf("%q is no number from 0 to %d", text, mostSpread)
	}
	return v, nil
}

// Text returns the log as it is written.
func (l *Rounds) Text() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s\n%s\n", logMark, logColumns)
	for _, r := range l.list {
		columns := []string{r.date, inColumn(r.aimed), labText(r.aim), inColumn(r.photo), pileText(r.pile), labText(r.measured),
			fmt.Sprintf("%.1f", r.spread), fmt.Sprintf("%.1f", r.deltaE), inColumn(r.advice), pileText(r.then)}
		fmt.Fprintln(&b, strings.Join(columns, "\t"))
	}
	return b.Bytes()
}

// inColumn keeps what a name may hold from breaking up the line.
func inColumn(text string) string {
	return strings.Join(strings.Fields(strings.ToValidUTF8(text, "?")), " ")
}

func labText(c colour.Lab) string {
	return fmt.Sprintf("%g %g %g", plan.Round(c.L, 2), plan.Round(c.A, 2), plan.Round(c.B, 2))
}

func pileText(p match.Pile) string {
	if len(p.Paints) == 0 {
		return noPile
	}
	return p.String()
}

// add puts a round at the bottom. Where it is the last one for its aim measured from
// the same photo once more, it takes the place of that.
func (l *Rounds) add(r round) { l.list = append(l.before(r), r) }

// before returns the rounds that a round comes after: all but itself.
func (l *Rounds) before(r round) []round {
	i := lastOf(l.list, r.aim)
	if i < 0 || l.list[i].photo != inColumn(r.photo) || labText(l.list[i].measured) != labText(r.measured) {
		return slices.Clone(l.list)
	}
	return slices.Delete(slices.Clone(l.list), i, i+1)
}

// lastOf returns the place of the last round for an aim; -1 if none. It goes by the
// colour: a plan that was made anew may give its tag to another.
func lastOf(list []round, aim colour.Lab) int {
	for i := len(list) - 1; i >= 0; i-- {
		if labText(list[i].aim) == labText(aim) {
			return i
		}
	}
	return -1
}

// countOf returns how many rounds an aim has had.
func countOf(list []round, aim colour.Lab) (n int) {
	for _, r := range list {
		if labText(r.aim) == labText(aim) {
			n++
		}
	}
	return n
}

// learnable returns the rounds whose piles are known: what tubes are learned from.
func learnable(list []round) (rounds []match.Round) {
	for _, r := range list {
		if len(r.pile.Paints) > 0 {
			rounds = append(rounds, match.Round{Pile: r.pile, Measured: r.measured, Spread: r.spread})
		}
	}
	return rounds
}
