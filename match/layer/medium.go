// Mediums: their names, and how much of one goes into the paint.

package layer

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// What may be stirred into paint.
const (
	None      = "none"
	Linseed   = "linseed"
	StandOil  = "stand oil"
	Walnut    = "walnut"
	Safflower = "safflower" // or poppy, which dries alike
	Alkyd     = "alkyd"
	Solvent   = "solvent"
)

// Kinds lists every kind of medium, none first.
func Kinds() []string {
	return []string{None, Linseed, StandOil, Walnut, Safflower, Alkyd, Solvent}
}

// otherNames are what else painters call a kind.
var otherNames = map[string]string{
	"": None, "linseed oil": Linseed, "stand": StandOil, "walnut oil": Walnut, "safflower oil": Safflower,
	"poppy": Safflower, "poppy oil": Safflower, "alkyd medium": Alkyd, "alkyd resin": Alkyd,
}

// mostMedium is the most that is taken to be meant, by volume to one of paint; beyond it,
// there is hardly a paint left to call a coat.
const mostMedium = 20

// ParseMedium returns the medium that a text means: "none", or a kind and the parts of it
// and of paint by volume, "linseed 1:10" for 1 of linseed oil to 10 of paint. Any case,
// spaces or not; "" is none. The error says what would do.
func ParseMedium(text string) (Medium, error) {
	lower := strings.ToLower(strings.TrimSpace(text))
	at := strings.IndexFunc(lower, func(r rune) bool { return r >= '0' && r <= '9' || r == ':' || r == '.' || r == '-' || r == '+' })
	if at < 0 {
		at = len(lower)
	}
	name, parts := strings.Join(strings.Fields(lower[:at]), " "), lower[at:]
	kind := name
	if other, known := otherNames[name]; known {
		kind = other
	}
	switch {
	case !slices.Contains(Kinds(), kind) || name == "" && parts != "":
		return Medium{}, fmt.Errorf("unknown medium %q: write %s, and how much, as in \"linseed 1:10\"", text, strings.Join(Kinds(), ", "))
	case kind == None && parts != "":
		return Medium{}, fmt.Errorf("medium %q: none takes no parts; write \"none\", or what is stirred in, as in \"linseed 1:10\"", text)
	case kind == None:
		return Medium{Kind: None}, nil
	case parts == "":
		return Medium{}, fmt.Errorf("medium %q: say how much, as in \"%s 1:10\" for 1 part of it to 10 of paint by volume", text, kind)
	}
	share, ok := parseParts(parts)
	if !ok {
		return Medium{}, fmt.Errorf("medium %q: write parts of medium and of paint, each over 0 and at most %d of medium to 1 of paint, as in \"%s 1:10\"", text, mostMedium, kind)
	}
	return Medium{kind, share}, nil
}

// parseParts reads "1:10" as 0.1, over 0 and at most mostMedium.
func parseParts(text string) (share float64, ok bool) {
	of, to, _ := strings.Cut(text, ":")
	medium, err1 := strconv.ParseFloat(strings.TrimSpace(of), 64)
	paint, err2 := strconv.ParseFloat(strings.TrimSpace(to), 64)
	share = medium / paint
	return share, err1 == nil && err2 == nil && medium > 0 && paint > 0 && share > 1e-6 && share <= mostMedium
}

// String returns the medium as ParseMedium reads it, in the least whole parts there are up
// to 12 of medium: "none", "linseed 1:10", "solvent 3:2".
func (m Medium) String() string {
	if m.none() {
		return None
	}
	for of := 1.0; of <= 12; of++ {
		if to := math.Round(of / m.Parts); to > 0 && math.Abs(of/to/m.Parts-1) < 1e-9 {
			return fmt.Sprintf("%s %g:%g", m.Kind, of, to)
		}
	}
	if m.Parts > 1 {
		return fmt.Sprintf("%s %.3g:1", m.Kind, m.Parts)
	}
	return fmt.Sprintf("%s 1:%.3g", m.Kind, 1/m.Parts)
}

// words returns the medium as one says it: "1 part of linseed oil to 10 of paint".
func (m Medium) words() string {
	kind, parts, _ := strings.Cut(m.String(), ":")
	at := strings.LastIndex(kind, " ")
	name := kind[:at]
	if m.Kind == Linseed || m.Kind == Walnut || m.Kind == Safflower {
		name += " oil"
	}
	return fmt.Sprintf("%s of %s to %s of paint", quantity(kind[at+1:]), name, parts)
}

// quantity returns "1 part" or "3 parts".
func quantity(number string) string {
	if number == "1" {
		return "1 part"
	}
	return number + " parts"
}

// none tells whether nothing is stirred in.
func (m Medium) none() bool { return m.Kind == None || m.Kind == "" || m.Parts <= 0 }
