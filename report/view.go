// The ways to see the picture, and the style rules that switch between them without
// script.

package report

import (
	"fmt"
	"html/template"
	"strings"

	"tonewright/report/plan"
)

// view is one way to see the picture. ID is one of ours: it goes into the page's style.
type view struct {
	ID, Label, Name, Caption string // Label stands in its group, Name by itself
	First, Paper             bool   // shown when the page opens; printed
	GrayOf                   string // id of the image that it shows in gray; "": its own image, Href
	Href                     template.HTMLAttr
	Strokes                  []stroke // drawn over white in place of an image
	Numbers                  []label  // of strokes, all of one size
	Values                   []label
	Tags                     []tag
}

// viewGroup is a row of the switch.
type viewGroup struct {
	Name  string
	Views []view
}

// viewGroups lists the views whose pictures the plan has, in the order of the switch.
func viewGroups(p *plan.Plan, a *art) []viewGroup {
	groups := []viewGroup{photoViews(p, a), valueViews(p, a), studyViews(p, a), sightViews(p, a)}
	kept := []viewGroup{}
	for _, g := range groups {
		for i := range g.Views {
			if g.Views[i].Name == "" {
				g.Views[i].Name = g.Views[i].Label
			}
		}
		if len(g.Views) > 0 {
			kept = append(kept, g)
		}
	}
	return kept
}

func photoViews(p *plan.Plan, a *art) viewGroup {
	return viewGroup{"The photo", append([]view{
		{ID: "photo", Label: "Photo", Caption: "The photo as it goes onto the panel: draw from this one.", First: true, Paper: true, Href: a.image("href", a.photo)},
		{ID: "gray", Label: "Gray", Caption: "The photo's lightness alone: every place as the gray of its own value.", GrayOf: "i-photo"},
	}, drawingViews(p)...)}
}

func valueViews(p *plan.Plan, a *art) viewGroup {
	pics := &p.Pictures
	return viewGroup{"Values", []view{
		{ID: "five", Label: "5 values", Caption: valueCaption(p, pics.Values5), Href: a.image("href", a.five), Values: valueMarks(pics.Values5, pics.Photo)},
		{ID: "nine", Label: "9 values", Caption: valueCaption(p, pics.Values9), Paper: true, Href: a.image("href", a.nine), Values: valueMarks(pics.Values9, pics.Photo)},
	}}
}

// studyViews are the mixes as they are and as the painting will look.
func studyViews(p *plan.Plan, a *art) viewGroup {
	pics := &p.Pictures
	g := viewGroup{"The painting", []view{
		{ID: "mixes", Label: "Mixes", Caption: "Every place in the colour of its mix, as predicted, with its tag where there is room.", Paper: true, Href: a.image("href", a.mixes),
			Tags: tags(pics.Mixes, pics.Photo, func(i int) string { return pics.Colours[i].ID })},
	}}
	if pics.Study == nil {
		return g
	}
	g.Views = append(g.Views, view{ID: "study", Label: "Study", Paper: true, Href: a.image("href", a.study),
		Caption: "The painting before it is painted: each region in its own mixes, each place at its own value. Look for what jumps out and what stays back; where that is not as you meant it, change a palette and plan again."})
	if pics.OneCoat != nil {
		g.Views = append(g.Views, view{ID: "coat", Label: "One coat", Href: a.image("href", a.coat),
			Caption: fmt.Sprintf("The study painted in one coat over the %s ground. Where this is not as the study, the ground shows through: give it another coat, or take the mix that its row says carries.", p.Panel.Ground)})
	}
	g.Views = append(g.Views, view{ID: "studygray", Label: "In gray", Name: "Study in gray", GrayOf: "i-study",
		Caption: "The study's lightness alone. Squint: where two things melt into one here, colour alone keeps them apart in the painting."})
	return g
}

// sightViews are for a sight that is not full.
func sightViews(p *plan.Plan, a *art) viewGroup {
	g := viewGroup{Name: "Your sight"}
	if p.Pictures.PhotoSeen != nil {
		g.Views = append(g.Views, view{ID: "photoseen", Label: "Photo", Name: "Photo, your sight", Href: a.image("href", a.photoSeen),
			Caption: fmt.Sprintf("The photo as %s sees it. If this and the photo look alike to you, your sight is set right; show it to others who ask what you see.", p.Sight)})
	}
	if p.Pictures.StudySeen != nil {
		g.Views = append(g.Views, view{ID: "studyseen", Label: "Study", Name: "Study, your sight", Href: a.image("href", a.studySeen),
			Caption: fmt.Sprintf("The study as %s sees it: what of the painting reaches your own eyes.", p.Sight)})
	}
	if p.Pictures.Missed != nil && p.Pictures.Study != nil {
		g.Views = append(g.Views, view{ID: "missed", Label: "What you miss", Paper: true, Href: a.image("href", a.missed),
			Caption: "What others see in the study and you do not. Plain: hardly anything; dots: some of the colour; hatching: most of it. A heavy line is a border that is clear to others and hardly there for you. Where it is hatched, go by tags and values, not by eye."})
	}
	return g
}

// viewCSS returns the rules that show the chosen view and mark its button. They are
// made of the views' own ids, so that no list of them has to be kept in the style.
func viewCSS(groups []viewGroup) string {
	var shown, chosen, focused []string
	button := func(id string) {
		chosen = append(chosen, fmt.Sprintf("#%s:checked~.switch [for=%[1]s]", id))
		focused = append(focused, fmt.Sprintf("#%s:focus-visible~.switch [for=%[1]s]", id))
	}
	for _, g := range groups {
		for _, v := range g.Views {
			shown = append(shown, fmt.Sprintf("#v-%s:checked~.stage .%[1]s", v.ID))
			button("v-" + v.ID)
		}
	}
	button("show-grid")
	button("show-areas")
	return strings.Join(shown, ",") + "{display:block}\n" +
		strings.Join(chosen, ",") + "{background:var(--ink);color:var(--paper);border-color:var(--ink);font-weight:600}\n" +
		strings.Join(focused, ",") + "{outline:3px solid var(--mark);outline-offset:3px;z-index:1}\n"
}
