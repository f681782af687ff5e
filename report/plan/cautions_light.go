// Paints that fade, where that matters, and what to take instead.

package plan

import (
	"fmt"
	"slices"
	"strings"

	"tonewright/match"
	"tonewright/match/paint"
)

// paleTint is the parts of white to one of a paint from which a tint is pale. Ours: a
// class is given to a tint of 40 % reflectance where the paint absorbs most ([ASTMD4303],
// from memory). By the library's optics, from 430 nm on, alizarin has 11 parts of white
// there and the paints of class II 14 to 31; so from 10 on a tint may be as pale as the
// one that was rated, or paler, and what little colour it has fades first.
const paleTint = 10

// worstClass is the class from which a paint is told of wherever it is used: classes I
// and II are those for artists' paints. Source: [ASTMD4302].
const worstClass = 3

// fadingCautions returns one caution for each weak paint: of class III or worse, and of
// class II where it is in a pale tint or a thin film. The worst come first.
func fadingCautions(uses []use, paints, box []paint.Paint) (list []Caution) {
	for class := 5; class >= 2; class-- {
		for _, p := range paints {
			if p.Facts.LightClass() == class {
				if c, told := fadingOf(p, class, uses, paints, box); told {
					list = append(list, c)
				}
			}
		}
	}
	return list
}

// fadingOf returns the caution for a paint of a class; told is false where it is used
// only where that class lasts.
func fadingOf(p paint.Paint, class int, uses []use, paints, box []paint.Paint) (c Caution, told bool) {
	white := func(id string) bool {
		return slices.ContainsFunc(paints, func(w paint.Paint) bool { return w.ID == id && w.White() })
	}
	own := func(id string) bool { return id == p.ID }
	isPale := func(u use) bool { return u.has(p.ID) && u.share(white) >= paleTint*u.share(own) }
	isThin := func(u use) bool { return u.has(p.ID) && u.thin }
	var pale, thin Caution
	pale.mark(uses, isPale)
	thin.mark(uses, isThin)

	c = cautionOf(paint.Caution{Key: "fades:" + p.ID, Kind: paint.OfLight, Source: paint.FadingSource})
	c.mark(uses, func(u use) bool { return isPale(u) || isThin(u) || class >= worstClass && u.has(p.ID) })
	c.Paints = append(c.Paints, p.Name)
	c.Instead = insteadOf(p, box, len(thin.Coats) > 0)
	c.Text = fadingText(p, class, pale.Colours, thin.Coats) + insteadText(c.Instead) + paint.FadingDefers
	where := " fades: "
	if class < worstClass {
		where = " fades in pale tints and thin films: "
	}
	c.Short = p.Name + where + insteadShort(c.Instead)
	return c, len(c.Colours) > 0
}

// fadingText says what the class means where the paint is used.
func fadingText(p paint.Paint, class int, pale, thin []string) string {
	text := fmt.Sprintf("%s has lightfastness %s, under the two classes meant for lasting work: it fades, in tints with white and in thin films first.", p.Name, p.Facts.Lightfastness)
	if class < worstClass {
		text = fmt.Sprintf("%s has lightfastness %s: it lasts as an ordinary mix, but not as well in a tint paler than the one that is rated, nor in a thin film.", p.Name, p.Facts.Lightfastness)
	}
	if len(pale) > 0 {
		text += fmt.Sprintf(" Here it is in a pale tint, with %d or more parts of white to one, in %s.", paleTint, strings.Join(pale, ", "))
	}
	if len(thin) > 0 {
		text += fmt.Sprintf(" Here it is in a thin film in %s.", strings.Join(thin, ", "))
	}
	return text
}

// insteadOf returns the lasting paint of the box most like a weak one, and that of the
// library where it is more alike.
func insteadOf(weak paint.Paint, box []paint.Paint, clear bool) []Other {
	others := []Other{}
	owned, has := match.LastingLike(weak, box, clear)
	if has {
		p := box[owned.Paint]
		others = append(others, Other{p.ID, p.Name, true, Round(owned.DeltaE, 1)})
	}
	library := paint.Library()
	if known, ok := match.LastingLike(weak, library, clear); ok && (!has || known.DeltaE < owned.DeltaE) {
		p := library[known.Paint]
		others = append(others, Other{p.ID, p.Name, false, Round(known.DeltaE, 1)})
	}
	return others
}

func insteadText(others []Other) string {
	if len(others) == 0 {
		return " No lasting paint is like it: use it strong and thick, or for studies."
	}
	var each []string
	for _, o := range others {
		name := o.Name
		if o.Owned {
			name += " from the box"
		}
		each = append(each, fmt.Sprintf("%s (%.1f CIEDE2000 from it)", name, o.DeltaE))
	}
	return " Lasting paints like it, of class I: " + match.Listed(each) + "."
}

func insteadShort(others []Other) string {
	if len(others) == 0 {
		return "keep it strong and thick"
	}
	return "take " + others[0].Name
}
