package paint

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func keys(cautions []Caution) (keys []string) {
	for _, c := range cautions {
		keys = append(keys, c.Key)
	}
	return keys
}

// What each pigment is made of, by its Colour Index name: C.I. constitutions, from memory.
func TestPigmentsAreToldOfForWhatTheyHold(t *testing.T) {
	for id, want := range map[string][]string{
		"lead-white": {"lead"}, "zinc-white": {"zinc"}, "titanium-white": nil,
		"cadmium-yellow-lemon": {"cadmium"}, "cadmium-orange": {"cadmium"}, "cadmium-red-deep": {"cadmium"},
		"cadmium-green": {"cadmium"}, // a blend
		"cobalt-blue":   {"cobalt"}, "cerulean-blue": {"cobalt"}, "cobalt-violet": {"cobalt"},
		"cobalt-teal": {"cobalt", "nickel"}, "nickel-titanate-yellow": {"nickel", "antimony"}, "naples-yellow": {"antimony"},
		"nickel-azo-yellow": {"nickel"}, "sap-green": {"nickel"},
		"raw-umber": {"manganese"}, "burnt-umber": {"manganese"}, "manganese-violet": {"manganese"},
		"bismuth-yellow": {"vanadium"}, "prussian-blue": {"cyanide"}, "lamp-black": {"soot"}, "ivory-black": nil,
		"diarylide-yellow": {"diarylide"}, "viridian": nil, "yellow-ochre": nil, "phthalo-green-bs": nil,
		"alizarin-crimson": {"fades"}, "naphthol-red": {"fades-thin"},
	} {
		assert.Equal(t, want, keys(known(t, id).Cautions()), id)
	}
}

// The hazard column of the file of facts says in its own words what each line here has
// a key for.
func TestHazardsAgainstTheFacts(t *testing.T) {
	says := map[string]string{
		"lead": "lead compound", "cadmium": "Cd compound", "cobalt": "cobalt compound", "nickel": "nickel",
		"manganese": "manganese", "antimony": "antimony", "vanadium": "vanadium", "zinc": "Aquatic",
		"cyanide": "cyanide", "soot": "carbon black", "diarylide": "amines",
	}
	require.ElementsMatch(t, keys(Hazards()), keysOf(says))
	told := map[string]string{}
	for line := range strings.Lines(string(shared(t, "paint-facts.tsv"))) {
		if f := strings.Split(line, "\t"); f[0] != "PBr7" || strings.Contains(f[1], "umber") { // siennas have a line of their own
			told[f[0]] += f[10]
		}
	}
	for _, row := range rows(factTable, 9) {
		ci, variety, _ := strings.Cut(row[0], "/")
		if strings.Contains(row[8], "analogy with") || strings.HasSuffix(variety, "sienna") {
			continue
		}
		require.Contains(t, told, ci)
		for _, h := range Hazards() {
			assert.Equal(t, strings.Contains(told[ci], says[h.Key]), slices.Contains(strings.Split(row[7], ","), h.Key), "%s: %s", row[0], h.Key)
		}
	}
}

func keysOf(m map[string]string) (keys []string) {
	for k := range m {
		keys = append(keys, k)
	}
	return keys
}

// No hazard of the library is left without a caution, and no caution without a paint.
func TestEveryHazardIsToldOf(t *testing.T) {
	used := map[string]bool{}
	for _, p := range Library() {
		for _, h := range p.Facts.Hazards {
			used[h] = true
			assert.Contains(t, keys(p.Cautions()), h, p.ID)
		}
	}
	for _, c := range Hazards() {
		assert.True(t, used[c.Key], c.Key)
	}
	assert.Equal(t, []string{"lead", "cadmium"}, keys(Hazards())[:2], "the gravest first")
}

// promises are words that no caution may give: that anything does no harm.
var promises = regexp.MustCompile(`(?i)\b(safe|safely|harmless|non-?toxic|no risk|without risk|nothing to fear)\b`)

// Whatever a caution says gives way to the label, the safety data sheet and local rules;
// what is said of light, to the label.
func TestCautionsDefer(t *testing.T) {
	all := slices.Concat(Hazards(), StudioCautions(), Fadings())
	seen := map[string]bool{}
	for _, c := range all {
		assert.False(t, seen[c.Key], "%s twice", c.Key)
		seen[c.Key] = true
		assert.Contains(t, []string{OfPigment, OfMedium, OfStudio, OfLight}, c.Kind, c.Key)
		assert.NotEmpty(t, c.Source, c.Key)
		assert.Less(t, len(c.Short), 70, "%s: %s", c.Key, c.Short)
		assert.Contains(t, c.Text, "label", c.Key)
		if c.Kind != OfLight {
			assert.Contains(t, c.Text, "safety data sheet", c.Key)
			assert.Contains(t, c.Text, "local rules", c.Key)
		}
		for _, text := range []string{c.Text, c.Short} {
			assert.NotRegexp(t, promises, text, c.Key)
		}
	}
	assert.Regexp(t, promises, "quite safe in use", "the test can fail")
	for _, key := range []string{Rags, Solvents, "dust", "hands", "disposal", "children", "label"} {
		assert.True(t, seen[key], key)
	}
}

// Source: [ASTMD4302]: I and II are the classes for artists' paints.
func TestLightClasses(t *testing.T) {
	for class, want := range map[string][]string{"I": nil, "II": {"fades-thin"}, "III": {"fades"}, "IV": {"fades"}, "V": {"fades"}} {
		p := Paint{Facts: Facts{Lightfastness: class}}
		assert.Equal(t, want, keys(p.Cautions()), class)
	}
	assert.Equal(t, 3, known(t, "alizarin-crimson").Facts.LightClass())
}
