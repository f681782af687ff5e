package answer

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/match/tube"
	"tonewright/report/plan"
)

// OwnTube is the painter's own tube of a paint, as fitted.
type OwnTube struct {
	Made
	ID       string      `json:"paint"`
	Name     string      `json:"name"`
	Like     string      `json:"like"` // the library paint it is a tube of
	LikeName string      `json:"like_name"`
	Source   string      `json:"source"`
	Masstone TubeLook    `json:"masstone"`
	Tint     TubeLook    `json:"tint"`               // one part to four of the white
	Close    bool        `json:"close"`              // thick and in white, to the typical tube
	Words    string      `json:"words"`              // beside the typical tube: "covers less and tints stronger"
	Strength float64     `json:"strength,omitempty"` // tinting strength, times the typical tube's; left out for a white
	Scatter  float64     `json:"scatter"`            // throwing back light, likewise
	Contrast [2]float64  `json:"contrast"`           // luminance of one coat over black by that over white: its own, the typical tube's
	Checked  bool        `json:"checked"`            // Error means something: more was measured than nearly any tube would meet
	Error    float64     `json:"error"`              // mean CIEDE2000 of Samples
	Worst    float64     `json:"worst"`
	Samples  []TubeMiss  `json:"samples"`
	Notes    []string    `json:"notes"`    // what was taken as known
	Warnings []string    `json:"warnings"` // what is wrong with what was read
	K        []float64   `json:"k"`
	S        []float64   `json:"s"`
	KeptIn   string      `json:"kept_in,omitempty"` // the box file, if one was named
	BoxText  []byte      `json:"-"`                 // what to write to it
	Paint    paint.Paint `json:"-"`
}

// TubeLook is a colour of the tube beside the typical tube's.
type TubeLook struct {
	Own         Look    `json:"own"`
	Typical     Look    `json:"typical"`
	Apart       float64 `json:"apart"`       // CIEDE2000
	Close       bool    `json:"close"`       // hard to tell across a palette
	ValueShift  float64 `json:"value_shift"` // Munsell steps; positive is lighter than typical
	ChromaShift float64 `json:"chroma_shift"`
	Words       string  `json:"words"` // what differs, in figures; hue too
}

// notSeen is the CIEDE2000 under which two colours side by side look the same. Ours,
// as in match.Difference.
const notSeen = 1

// tubeLook puts a colour of the tube beside the typical tube's.
func tubeLook(own, typical colour.Lab, apart float64) TubeLook {
	d := match.Differ(own, typical)
	apart = plan.Round(apart, 2)
	words := d.Shifts
	if apart < notSeen {
		words = "the same to the eye"
	}
	return TubeLook{look(own), look(typical), apart, apart <= match.Close, plan.Round(d.Value, 1), plan.Round(d.Chroma, 1), words}
}

// TubeMiss is how far a sample is from what the tube gives.
type TubeMiss struct {
	Sample string  `json:"sample"`
	DeltaE float64 `json:"delta_e"`
}

// TubeOptions asks for a tube; the zero value of each field but the first two is the
// good default.
type TubeOptions struct {
	File  string // spectra, or a photo of painted swatches
	Paint string // the library paint it is a tube of
	Name  string // "": that paint's own
	Box   string // "": kept nowhere; else the box file that it is to be kept in

	Masstone  string   // a sample's name, or a rectangle of the photo
	Tints     []string // "SAMPLE=1:4" or "RECT=1:4"
	White     string   // a library white or, of spectra, a sample of the white alone
	OverBlack []string // samples of films, in pairs with OverWhite
	OverWhite []string
	BareBlack string // a sample of the bare black under the films; "": a usual chart's
	BareWhite string // likewise of the white
	Shine     string // of the measuring: "" or excluded, included
	Anyway    bool   // keep a tube that is hardly of that paint

	Card   string // the rectangle of a card in the photo
	CardIs string // "" or gray, white, or a colour
	Finish string // of the swatches: "" or gloss, satin, matt

	Version string
}

// TubeFor fits a tube.
// A plan.UsageError is a mistake in opt; any other error is the file's.
func TubeFor(opt TubeOptions) (*OwnTube, error) {
	like, err := paint.Find(nil, opt.Paint)
	if err != nil {
		return nil, plan.Misused(fmt.Errorf("--paint: %w", err))
	}
	named, err := paint.OwnTube(like, opt.Name)
	if err != nil {
		return nil, plan.Misused(fmt.Errorf("--name: %w", err))
	}
	data, err := paint.ReadRegular(opt.File, mostText)
	if err != nil {
		return nil, err
	}
	if len(data) == 0 {
		return nil, fmt.Errorf("%s: is empty; export the spectra again, or copy the photo again from the camera", opt.File)
	}
	fit := fitPhoto
	if isText(data) {
		fit = fitSpectra
	}
	a, err := fit(opt, like, named, data)
	if err != nil || opt.Box == "" {
		return a, err
	}
	return a, a.keep(opt.Box)
}

// keep puts the tube into the text of a box file.
func (a *OwnTube) keep(box string) error {
	text, fresh, err := paint.KeepTube(box, a.Paint)
	if err != nil {
		return err
	}
	if fresh {
		a.Warnings = append(a.Warnings, fmt.Sprintf("%s is new and holds this tube alone; add your other paints to its list.", box))
	}
	a.KeptIn, a.BoxText = box, text
	return nil
}

// mostText is the most bytes of a file of spectra that are read: thousands of samples.
const mostText = 4 << 20

// isText tells spectra from a photo: every photo file has control characters early on,
// which text has not; text in UTF-16 has zeros too, and its mark. A JPEG is one however
// early it is cut off.
func isText(data []byte) bool {
	if bytes.HasPrefix(data, []byte(jpegMark)) {
		return false
	}
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) {
		return true
	}
	return !bytes.ContainsFunc(data[:min(len(data), 512)], func(r rune) bool { return r < '\t' })
}

// What every JPEG and every PNG begins with.
const (
	jpegMark = "\xff\xd8"
	pngMark  = "\x89PNG"
)

// answerOf puts what was fitted into words.
func answerOf(opt TubeOptions, like, named paint.Paint, source string, f tube.Fitted) *OwnTube {
	own := f.Paint
	own.ID, own.Name, own.Fit.Source = named.ID, named.Name, source
	a := &OwnTube{
		Made: made(opt.Version), ID: own.ID, Name: own.Name, Like: like.ID, LikeName: like.Name, Source: source,
		Masstone: tubeLook(f.Masstone, f.Typical[0], f.MasstoneAway),
		Tint:     tubeLook(f.Tint, f.Typical[1], f.TintAway),
		Strength: plan.Round(f.Strength, 2), Scatter: plan.Round(f.Scatter, 2), Checked: f.Checked, Error: plan.Round(f.Mean, 2), Worst: plan.Round(f.Worst, 2),
		Samples: []TubeMiss{}, Notes: append([]string{}, f.Notes...), Warnings: []string{},
		K: own.K[:], S: own.S[:], Paint: own,
	}
	a.Close = a.Masstone.Close && a.Tint.Close
	a.Contrast = [2]float64{plan.Round(paint.ContrastRatio(&own.K, &own.S), 2), plan.Round(paint.ContrastRatio(&like.K, &like.S), 2)}
	a.Words = tubeWords(a.Contrast, a.Strength)
	for _, m := range f.Misses {
		a.Samples = append(a.Samples, TubeMiss{m.What, plan.Round(m.DeltaE, 2)})
	}
	return a
}

// How much a tube must differ from the typical one to be worth a word. Ours: a
// twentieth is what a palette knife errs by, and 0.02 of contrast is no brushstroke.
const (
	contrastWord = 0.02
	strengthWord = 0.05
)

// tubeWords says how a tube covers and tints beside the typical one; of a white, whose
// strength is 0, only how it covers.
func tubeWords(contrast [2]float64, strength float64) string {
	word := func(apart, worth float64, more, less, same string) string {
		switch {
		case apart > worth:
			return more
		case apart < -worth:
			return less
		}
		return same
	}
	if strength == 0 {
		return word(contrast[0]-contrast[1], contrastWord, "covers more", "covers less", "covers just as well")
	}
	return word(contrast[0]-contrast[1], contrastWord, "covers more", "covers less", "covers as well") + " and " +
		word(strength-1, strengthWord, "tints stronger", "tints weaker", "tints as strongly")
}

// whiteNamed returns a library white; "" is titanium white.
func whiteNamed(name string) (paint.Paint, error) {
	if name == "" {
		name = "titanium-white"
	}
	white, err := paint.Find(nil, name)
	if err == nil && !white.White() {
		err = fmt.Errorf("%s is no white; say which white the tints were made with, such as titanium-white", white.Name)
	}
	return white, err
}

// cutTint splits "NAME=1:4" at its last "="; without one the ratio is "".
func cutTint(text string) (name, ratio string, err error) {
	name = strings.TrimSpace(text)
	if before, after, found := cutLast(text, "="); found {
		name, ratio = strings.TrimSpace(before), strings.TrimSpace(after)
	}
	if name == "" {
		return "", "", fmt.Errorf("--tint %q does not say which tint; write it as SAMPLE=1:4, or in a photo as x,y,w,h=1:4", text)
	}
	return name, ratio, nil
}

// parseRatio reads "1:4", parts of paint to parts of white, such as a tint may have.
func parseRatio(text string) (part, white float64, err error) {
	before, after, found := strings.Cut(text, ":")
	part, bad := parseParts(before)
	white, worse := parseParts(after)
	if !found || bad != nil || worse != nil {
		return 0, 0, fmt.Errorf("%q is no ratio of paint to white; write it as 1:4", text)
	}
	return part, white, tube.CheckParts(part, white)
}

// parseParts reads a figure of digits, a sign and a point: no NaN, no other notation.
func parseParts(text string) (float64, error) {
	text = strings.TrimSpace(text)
	if strings.Trim(text, "0123456789+-.") != "" {
		return 0, strconv.ErrSyntax
	}
	return strconv.ParseFloat(text, 64)
}
