package colour

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Sight is a painter's colour vision. Kind is "protan" (weak red cones), "deutan"
// (weak green), "tritan" (weak blue) or "full"; any other, such as that of the
// zero Sight, is full sight too. Severity runs from 0, as full sight, to 1, the
// one kind of cone is of no use; values outside are clamped.
type Sight struct {
	Kind     string
	Severity float64
}

// sightForm is a kind of sight, or the name of its lack or weakness, and a severity.
var sightForm = regexp.MustCompile(`^(?:(full)(?: sight)?|(?:(protan|deutan|tritan)|(prot|deuter|trit)an(?:opia|omaly))(?:[\s:]+` + digits + `)?)$`)

// sightKinds gives the kind by the stem of the names of its lack and weakness.
var sightKinds = map[string]string{"prot": "protan", "deuter": "deutan", "trit": "tritan"}

// ParseSight returns the sight written as a kind and a severity, "deutan 0.8" or
// "deutan:0.8", or "full". Deuteranopia and deuteranomaly mean deutan, and the
// other names alike; large and small letters are one.
// Severity is 1 where none is given, for an -anomaly too: the safe side, as what
// can be told apart at 1 can be at less.
// It is an error to write it otherwise or to go outside 0-1.
func ParseSight(text string) (Sight, error) {
	f := sightForm.FindStringSubmatch(strings.ToLower(strings.TrimSpace(text)))
	if f == nil {
		return Sight{}, fmt.Errorf("sight %q: not a sight; write full, protan, deutan or tritan, the last three with a severity if you know it, such as deutan 0.8", text)
	}
	if f[1] != "" {
		return Sight{Kind: "full"}, nil
	}
	s := Sight{Kind: f[2] + sightKinds[f[3]], Severity: 1}
	if f[4] != "" {
		s.Severity = toNumber(f[4])
	}
	if s.Severity > 1 {
		return Sight{}, fmt.Errorf("sight %q: severity out of range; it runs from 0, as full sight, to 1, such as deutan 0.8", text)
	}
	return s, nil
}

// String returns the sight as ParseSight reads it, "deutan 0.8" or "full sight".
func (s Sight) String() string {
	if s.Full() {
		return "full sight"
	}
	return s.Kind + " " + strconv.FormatFloat(s.Severity, 'f', -1, 64)
}

// Full tells whether this is full sight: See changes nothing.
func (s Sight) Full() bool { return sights[s.Kind] == nil || !(s.Severity > 0) }

// See returns the colour that looks to full sight as c does to s. It may lie
// outside sRGB. Grays stay as they are.
// Source: [Machado2009] to severity 0.9, weak cones; [Brettel1997] at 1, cones of no
// use, see newDichromat.
// Ours, between 0.9 and 1: straight from the one to the other, in light, so that a
// little more severity never leaps. The authors' matrices for 1 are left out: over a
// grid of sRGB they are nearest to what is now 0.93 to 0.94, 1.2 to 1.7 CIEDE2000 in
// the mean, and leave some of what a dichromat confuses apart.
func (s Sight) See(c Lab) Lab {
	if s.Full() {
		return c
	}
	xyz := c.XYZ()
	e := s.seer()
	seen := e.see([3]float64{xyz.X / 100, xyz.Y / 100, xyz.Z / 100})
	return XYZ{100 * seen[0], 100 * seen[1], 100 * seen[2]}.Lab()
}

// Apart returns the CIEDE2000 between two colours to s, never more than to full
// sight: who lacks a kind of cone, or has a weak one, is told no more by the others.
// Source: [Sharma2005], and as See.
// Ours, the bound: what is seen may turn two colours to where CIEDE2000 weighs them
// more, a cobalt blue and a pyrrole red from 48 to 54 to a deutan; that is a trait of
// the measure and no better sight.
func (s Sight) Apart(a, b Lab) float64 {
	full := DeltaE00(a, b)
	if s.Full() {
		return full
	}
	return min(full, DeltaE00(s.See(a), s.See(b)))
}
