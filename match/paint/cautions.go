// What a painter should be told of a paint's hazards, in plain words.

package paint

import "slices"

// Caution is one thing to take care of.
type Caution struct {
	Key    string // stable: a hazard of the facts, or the thing itself: "rags"
	Kind   string // one of the kinds below
	Short  string // for the point of use
	Text   string // in full; says what it gives way to
	Source string // of what it says; "from memory" where so
}

// Kinds of cautions.
const (
	OfPigment = "pigment"
	OfMedium  = "medium" // oils, resins and solvents
	OfStudio  = "studio" // whatever the paint
	OfLight   = "lightfastness"
)

// Defers is how the text of every hazard ends. A program knows neither the tube nor the
// room.
const Defers = " The label, the safety data sheet and local rules come before this."

// careSource is said of what to do about a hazard, where the named sources say what
// the hazard is.
const careSource = "; the care is common practice"

// hazards has what to tell for each hazard key of the facts, the gravest first. Ours:
// the order, by what dust or a little swallowed can do; and the words, which keep
// to paint out of a tube: the sources speak of powders, and of workplaces.
var hazards = []Caution{
	{Key: "lead", Short: "lead: gloves, no sanding, no spraying, wash hands",
		Text:   "Lead pigment: poisonous if swallowed or breathed as dust, and it builds up in the body; it harms blood, nerves, kidneys, and unborn children. Wear gloves, never sand or spray it, and keep it from children, pets and food. Its sale is restricted in places.",
		Source: "ILO/WHO safety card 0052 (lead); EU REACH annex XVII, entry 16 (lead carbonates)" + careSource},
	{Key: "cadmium", Short: "cadmium: no sanding, no spraying, wash hands",
		Text:   "Cadmium pigment: may cause cancer if its dust or spray is breathed, and over time harms kidneys, bones and lungs; lasting harm to life in water. Do not sand or spray it, wash hands before eating, let no rinsings reach the drain.",
		Source: "ILO/WHO safety card 0404 (cadmium sulphide); IARC volume 100C (group 1); that EU rules class pigments with zinc or selenium less strictly is from memory and changes nothing here" + careSource},
	{Key: "manganese", Short: "manganese: no dry sanding, no spraying",
		Text:   "Manganese pigment: its dust, breathed over a long time, can harm lungs and nerves. Do not sand or spray it, and do not eat, drink or smoke while using it.",
		Source: "ILO/WHO safety card 0175 (manganese dioxide), effects of long exposure from memory" + careSource},
	{Key: "cobalt", Short: "cobalt: keep off skin, no sanding, no spraying",
		Text:   "Cobalt pigment: can make skin allergic, and its dust the airways. Keep it off the skin, do not sand or spray it.",
		Source: "cobalt pigments in a museum's materials database (CAMEO); IARC volume 131: painting with them is an exposure to cobalt, cobalt compounds of low solubility not classifiable (group 3)" + careSource},
	{Key: "nickel", Short: "nickel: keep off skin, no sanding, no spraying",
		Text:   "Nickel pigment: the nickel is bound, yet who is allergic to nickel should keep it off the skin, and nickel compounds as a class can cause cancer if breathed. Do not sand or spray it.",
		Source: "IARC volume 100C (nickel compounds, group 1); OECD SIDS report on Pigment Yellow 53 (2002): no uptake found in rats; other nickel pigments and skin allergy from memory" + careSource},
	{Key: "antimony", Short: "antimony: no sanding, no spraying",
		Text:   "Antimony pigment: the antimony is bound, yet its dust is not for breathing. Do not sand or spray it.",
		Source: "OECD SIDS report on Pigment Yellow 53 (2002): antimony is in it pentavalent; IARC volume 131: that not classifiable (group 3), trivalent antimony probably a cause of cancer" + careSource},
	{Key: "vanadium", Short: "vanadium: no sanding, no spraying",
		Text:   "Vanadium pigment: much of its dust harmed the lungs of rats. Do not sand or spray it.",
		Source: "ECHA registration dossier of bismuth vanadate, a 90-day study of breathed dust (1994), its findings from a data sheet" + careSource},
	{Key: "soot", Short: "carbon black: no dry sanding, no spraying",
		Text:   "Carbon black: its dust, breathed, is possibly a cause of cancer: shown in animals, not in people. In oil it is bound. Do not sand or spray it.",
		Source: "IARC volume 93 (group 2B), by its summary of 2007" + careSource},
	{Key: "zinc", Short: "zinc: nothing down the drain; not in under-layers",
		Text:   "Zinc white: very poisonous to life in water, so no rinsings down the drain. Its film turns brittle, and layers over it may crack or come away: keep it out of under-layers.",
		Source: "water: EU classification of zinc oxide, from memory; film: Pratali 2013 and a national heritage agency's atlas of paint damage" + careSource},
	{Key: "cyanide", Short: "Prussian blue: no acid, no strong heat",
		Text:   "Prussian blue: never burn it, heat it strongly or let it meet strong acid, which can free poisonous cyanide gas. At room temperature the cyanide is tightly bound.",
		Source: "general chemistry, from memory, and encyclopaedias" + careSource},
	{Key: "diarylide", Short: "diarylide yellow: do not heat or burn",
		Text:   "Diarylide yellow: do not burn it or heat it strongly; above some 200 °C it gives off harmful amines.",
		Source: "an encyclopaedia on diarylide pigments; facts of Pigment Yellow 83, from memory" + careSource},
}

// fadings has what to tell of a paint of each lightfastness class; none of class I.
// Source: [ASTMD4302] classes I and II are the ones for artists' paints; [ASTMD4303]
// classes are given to tints.
var fadings = [...]Caution{
	2: {Key: "fades-thin", Short: "fades in pale tints and thin glazes",
		Text: "Lightfastness II: lasting as an ordinary mix; the palest tints and thin glazes fade sooner. Take a paint of class I for those."},
	3: {Key: "fades", Short: "fades, tints and glazes first",
		Text: "Fades: lightfastness is rated under the two classes meant for lasting work, and tints go first. Keep it for studies, or take a lasting paint of like colour."},
}

// FadingSource is where the lightfastness classes and what they mean come from.
const FadingSource = "ASTM D4302 and D4303: classes rated on tints with white, from memory; most classes of pigments from memory too"

// FadingDefers is how the text about a class ends.
const FadingDefers = " Tubes differ: the class on the label comes before this."

// LightClass returns the ASTM lightfastness class, 1 (excellent) to 5 (very poor).
func (f Facts) LightClass() int { return 1 + slices.Index(lasting, f.Lightfastness) }

// Hazards returns every caution for a pigment's hazard, the gravest first.
func Hazards() []Caution {
	all := slices.Clone(hazards)
	for i := range all {
		all[i].Kind = OfPigment
		all[i].Text += Defers
	}
	return all
}

// Fadings returns the cautions for lightfastness, the worse first.
func Fadings() []Caution { return []Caution{*fading(3), *fading(2)} }

// fading returns the caution for a class; nil for class 1.
func fading(class int) *Caution {
	if class < 2 {
		return nil
	}
	c := fadings[min(class, len(fadings)-1)]
	c.Kind, c.Source = OfLight, FadingSource
	c.Text += FadingDefers
	return &c
}

// Cautions returns what to tell the painter of this paint, the gravest first, how it
// lasts in light at the end; none when nothing beyond the usual care is known.
func (p Paint) Cautions() []Caution {
	var told []Caution
	for _, c := range Hazards() {
		if slices.Contains(p.Facts.Hazards, c.Key) {
			told = append(told, c)
		}
	}
	if c := fading(p.Facts.LightClass()); c != nil {
		told = append(told, *c)
	}
	return told
}
