package answer

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
	"tonewright/match/tube"
	"tonewright/report/plan"
)

// fitSpectra fits a tube to a file of spectra.
func fitSpectra(opt TubeOptions, like, named paint.Paint, data []byte) (*OwnTube, error) {
	if len(data) > mostText {
		return nil, fmt.Errorf("%s: is over %d MiB, which is no file of spectra; give one with only this tube's samples", opt.File, mostText>>20)
	}
	samples, err := tube.Read(opt.File, data)
	if err != nil {
		return nil, err
	}
	if err := spectraOnly(opt); err != nil {
		return nil, plan.Misused(err)
	}
	g := gathering{samples: samples}
	m, white, err := g.measured(opt)
	if err != nil {
		return nil, plan.Misused(err)
	}
	f, err := tube.Fit(like, white, m)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", opt.File, err)
	}
	if f.Unlike != "" && !opt.Anyway {
		return nil, fmt.Errorf("%s: this is hardly %s: it %s; %s", opt.File, like.Name, f.Unlike, whatElse(like, f.Reads))
	}
	f.Notes = append(f.Notes, g.notes...)
	a := answerOf(opt, like, named, "spectra: "+strings.Join(g.used, ", "), f)
	if f.Unlike != "" {
		a.Warnings = append(a.Warnings, fmt.Sprintf("This is hardly %s: it %s, and reads like %s; the label was taken to be right, as you said.", like.Name, f.Unlike, f.Reads.Name))
	}
	return a, nil
}

// spectraOnly refuses what is only for a photo.
func spectraOnly(opt TubeOptions) error {
	switch {
	case opt.Card != "":
		return fmt.Errorf("--card: %s holds spectra, which need no card; leave it out", opt.File)
	case opt.CardIs != "":
		return fmt.Errorf("--card-is: %s holds spectra, which need no card; leave it out", opt.File)
	case opt.Finish != "":
		return fmt.Errorf("--finish: %s holds spectra, for which --shine says how the surface was measured; leave it out", opt.File)
	}
	return nil
}

// whatElse says what to do about a tube that is hardly of the paint it is said to be.
func whatElse(like, reads paint.Paint) string {
	if reads.ID == like.ID {
		return "check the parts of the tint, or say --anyway if they and the label are right"
	}
	return fmt.Sprintf("it reads like %s; say --paint %s, or --anyway if the label is right", reads.Name, reads.ID)
}

// gathering picks samples by name, and keeps which were used and what was noted of them.
type gathering struct {
	samples     []tube.Sample
	used, notes []string
	as          []string // the flag of each that was used
}

// pick returns the reflectance of a sample; one that is used already is an error, since
// it would be weighed twice or stand for two things.
func (g *gathering) pick(flag, name string) (colour.Spectrum, error) {
	s, err := tube.Find(g.samples, name)
	if err != nil {
		return s.R, fmt.Errorf("%s: %w", flag, err)
	}
	if i := slices.Index(g.used, s.Name); i >= 0 {
		return s.R, fmt.Errorf("%s: %q is given already, as %s; each sample is wanted once", flag, s.Name, g.as[i])
	}
	g.used, g.as = append(g.used, s.Name), append(g.as, flag)
	for _, note := range s.Notes {
		if !slices.Contains(g.notes, note) {
			g.notes = append(g.notes, note)
		}
	}
	return s.R, nil
}

// measured gathers what the options name.
func (g *gathering) measured(opt TubeOptions) (m tube.Measured, white paint.Paint, err error) {
	switch opt.Shine {
	case "", "excluded":
		m.Surface = tube.ShineOut
	case "included":
		m.Surface = tube.ShineIn
	default:
		return m, white, fmt.Errorf("--shine %q is not known: write excluded or included, as the instrument was set", opt.Shine)
	}
	name := opt.Masstone
	if name == "" {
		name = "masstone"
	}
	if m.Masstone, err = g.pick("--masstone", name); err != nil {
		return m, white, err
	}
	if m.Tints, err = g.tints(opt.Tints); err != nil {
		return m, white, err
	}
	if m.Films, err = g.films(opt); err != nil {
		return m, white, err
	}
	m.White, white, err = g.white(opt.White)
	return m, white, err
}

// ratioAtEnd finds the parts in a sample's name: "tint 1:4".
var ratioAtEnd = regexp.MustCompile(`\d+(?:\.\d+)?:\d+(?:\.\d+)?$`)

// tints gathers the tints named; none named are those called "tint 1:4" and the like.
func (g *gathering) tints(named []string) (tints []tube.Tint, err error) {
	if len(named) == 0 {
		for _, s := range g.samples {
			if strings.HasPrefix(strings.ToLower(s.Name), "tint") && ratioAtEnd.MatchString(s.Name) {
				named = append(named, s.Name)
			}
		}
	}
	if len(named) > mostTints {
		return nil, fmt.Errorf("--tint: %d tints are more than the %d that can be fitted at once; name the best few", len(named), mostTints)
	}
	for _, text := range named {
		t, err := g.tint(text)
		if err != nil {
			return nil, err
		}
		tints = append(tints, t)
	}
	return tints, nil
}

// mostTints is the most tints of one tube. Ours: far over any chart; a fit to 30 takes 0.1 s.
const mostTints = 30

// tint picks the tint that "SAMPLE=1:4" names; a sample's name may say its parts too.
func (g *gathering) tint(text string) (t tube.Tint, err error) {
	name, ratio, err := cutTint(text)
	if err != nil {
		return t, err
	}
	whose := ""
	if ratio == "" {
		ratio, whose = ratioAtEnd.FindString(name), fmt.Sprintf("sample %q: ", name)
	}
	if ratio == "" {
		return t, fmt.Errorf("--tint %q: its parts are missing; write it as %q", text, text+"=1:4")
	}
	if t.Paint, t.White, err = parseRatio(ratio); err != nil {
		return t, fmt.Errorf("--tint: %s%w", whose, err)
	}
	t.R, err = g.pick("--tint", name)
	return t, err
}

// films gathers films over black and over white, in pairs, and the grounds under them.
func (g *gathering) films(opt TubeOptions) (films []tube.Film, err error) {
	black, white := opt.OverBlack, opt.OverWhite
	if len(black) != len(white) {
		return nil, fmt.Errorf("--over-black is given %d times and --over-white %d times; each film needs both", len(black), len(white))
	}
	if len(black) == 0 && opt.BareBlack+opt.BareWhite != "" {
		return nil, errors.New("--bare-black and --bare-white are what lies under a film; say with --over-black and --over-white which that is")
	}
	films = make([]tube.Film, len(black))
	for i := range films {
		if films[i].OverBlack, err = g.pick("--over-black", black[i]); err != nil {
			return nil, err
		}
		if films[i].OverWhite, err = g.pick("--over-white", white[i]); err != nil {
			return nil, err
		}
	}
	bareBlack, err := g.ground("--bare-black", opt.BareBlack)
	if err != nil {
		return nil, err
	}
	bareWhite, err := g.ground("--bare-white", opt.BareWhite)
	for i := range films {
		films[i].Black, films[i].White = bareBlack, bareWhite
	}
	return films, err
}

// ground picks a bare ground under the films; none named is the zero one.
func (g *gathering) ground(flag, name string) (r colour.Spectrum, err error) {
	if name == "" {
		return r, nil
	}
	return g.pick(flag, name)
}

// white returns a sample of the white, where the name is one, and the library white it
// is, titanium white unless it is called otherwise.
func (g *gathering) white(name string) (*colour.Spectrum, paint.Paint, error) {
	known, notKnown := whiteNamed(name)
	if _, err := tube.Find(g.samples, name); name == "" || err != nil {
		if notKnown != nil {
			return nil, known, fmt.Errorf("--white: %w; of the file's samples %v", notKnown, err)
		}
		return nil, known, nil
	}
	r, err := g.pick("--white", name)
	if notKnown != nil {
		known, _ = whiteNamed("")
		g.notes = append(g.notes, fmt.Sprintf("%q was taken to be titanium white.", name))
	}
	return &r, known, err
}
