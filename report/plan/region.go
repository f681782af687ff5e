package plan

import (
	"errors"
	"fmt"
	"image"
	"math"
	"strings"

	"tonewright/analyze"
	"tonewright/grid"
)

// RegionWish is a region as the painter asks for it. Where it lies is said by one of
// Cells, Outline and Mask.
type RegionWish struct {
	Name    string
	Cells   string         // "C3:F7, G4"
	Outline [][]grid.Point // rings on the panel; what is inside an odd number of them is in
	Mask    string         // an image file of the photo's proportion, light where the region is

	Role    string   // one of Roles; "": support
	Palette []string // ids of owned paints; none: the whole box
	NoWhite bool     // the palette's mixes go without the box's white
	Aim     string   // one of Aims; "": photo, but value for a region with a Wish and no Palette
	Wish    Wish     // what palettes to propose; the first is taken where Palette is empty
	Shift   float64  // Munsell value steps the region is lightened by, -4 to 4
}

// ParseRegion reads "kettle=C3:F7,G4".
func ParseRegion(text string) (RegionWish, error) {
	name, cells, found := strings.Cut(text, "=")
	name, cells = strings.TrimSpace(name), strings.TrimSpace(cells)
	switch {
	case !found:
		return RegionWish{}, fmt.Errorf("region %q needs a name and cells: write it like kettle=C3:F7,G4", text)
	case name == "":
		return RegionWish{}, fmt.Errorf("region %q has no name: write it like kettle=C3:F7,G4", text)
	case cells == "":
		return RegionWish{}, fmt.Errorf("region %q has no cells: write it like %s=C3:F7,G4", text, name)
	}
	return RegionWish{Name: name, Cells: cells}, nil
}

// areas turns the painter's regions into areas of the picture that photo.Picture will
// give of crop. The photo is not decoded for it: a mistake in the regions is said at
// once, and what is quick to find before any mask is read. A UsageError is a mistake in
// opt; any other error is a mask's.
func areas(opt Options, photo *analyze.Photo, g grid.Grid, crop image.Rectangle) ([]analyze.Area, error) {
	if n := len(opt.Regions); n > MostRegions {
		return nil, Misused(fmt.Errorf("%d regions are too many: name at most %d", n, MostRegions))
	}
	size, limits := photo.WorkingSize(crop, 0), analyze.Limits{Megapixels: opt.Megapixels}
	result := make([]analyze.Area, len(opt.Regions))
	seen := map[string]bool{}
	for i, r := range opt.Regions {
		if err := CheckRegionName(r.Name); err != nil {
			return nil, Misused(err)
		}
		key := strings.ToLower(r.Name)
		if seen[key] {
			return nil, Misused(fmt.Errorf("region %q is named twice: give each region a name of its own", r.Name))
		}
		seen[key] = true
		var err error
		if result[i], err = areaOf(r, g, size); err != nil {
			return nil, Misused(RegionError{r.Name, err})
		}
		if r.Mask == "" {
			continue
		}
		if _, err = analyze.OpenMask(r.Mask, photo, limits); err != nil {
			return nil, RegionError{r.Name, err}
		}
	}
	for i, r := range opt.Regions {
		if r.Mask == "" {
			continue
		}
		var err error
		if result[i].Mask, err = analyze.ReadMask(r.Mask, photo, crop, size.X, size.Y, limits); err != nil {
			return nil, RegionError{r.Name, err}
		}
	}
	return result, nil
}

// areaOf turns a region's cells or outline into an area of a picture of the given size.
// A mask is still to be read.
func areaOf(r RegionWish, g grid.Grid, size image.Point) (analyze.Area, error) {
	area := analyze.Area{Name: r.Name}
	switch where := r.whereby(); len(where) {
	case 0:
		return area, errors.New("where it lies is not said; give its cells, its outline or a mask")
	case 1:
	default:
		return area, fmt.Errorf("where it lies is said by its %s; keep one of them", strings.Join(where, " and its "))
	}
	if r.Cells != "" {
		cells, err := g.Cells(r.Cells)
		if err != nil {
			return area, err
		}
		for _, c := range cells {
			area.Rects = append(area.Rects, pixels(g, c, size.X, size.Y))
		}
	}
	if err := checkOutline(r.Outline, g); err != nil {
		return area, err
	}
	for _, ring := range r.Outline {
		area.Outline = append(area.Outline, onPicture(ring, g, size))
	}
	return area, nil
}

// whereby lists by what the painter says where a region lies.
func (r RegionWish) whereby() []string {
	var by []string
	if r.Cells != "" {
		by = append(by, "cells")
	}
	if len(r.Outline) > 0 {
		by = append(by, "outline")
	}
	if r.Mask != "" {
		by = append(by, "mask")
	}
	return by
}

// checkOutline tells what is wrong with an outline on a panel.
func checkOutline(rings [][]grid.Point, g grid.Grid) error {
	onPanel := len(rings) == 0
	for _, ring := range rings {
		if len(ring) < 3 {
			return fmt.Errorf("a ring of its outline has too few points, %d; give three or more", len(ring))
		}
		low, high := ring[0], ring[0]
		for _, p := range ring {
			for _, m := range [2]grid.Millimetres{p.X, p.Y} {
				if math.IsNaN(float64(m)) || math.IsInf(float64(m), 0) {
					return errors.New("a point of its outline is not a number; give its distance from the panel's left and from its top")
				}
			}
			low, high = grid.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}, grid.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
		}
		if low.X < min(high.X, g.Width) && low.Y < min(high.Y, g.Height) && high.X > 0 && high.Y > 0 {
			onPanel = true
		}
	}
	if !onPanel {
		return fmt.Errorf("its outline holds nothing of the panel of %s; measure its points from the panel's top left corner", g.Unit.Size(g.Width, g.Height))
	}
	return nil
}

// onPicture turns a ring on the panel into one on a picture of it.
func onPicture(ring []grid.Point, g grid.Grid, size image.Point) []analyze.Place {
	places := make([]analyze.Place, len(ring))
	for i, p := range ring {
		places[i] = analyze.Place{X: float64(p.X/g.Width) * float64(size.X), Y: float64(p.Y/g.Height) * float64(size.Y)}
	}
	return places
}

// onPanel turns a ring on a picture into one on the panel it shows.
func onPanel(ring []analyze.Place, g grid.Grid, size image.Point) []grid.Point {
	points := make([]grid.Point, len(ring))
	for i, p := range ring {
		points[i] = grid.Point{X: grid.Millimetres(p.X/float64(size.X)) * g.Width, Y: grid.Millimetres(p.Y/float64(size.Y)) * g.Height}
	}
	return points
}

// pixels returns the part of a w × h picture that cell c covers; neighbours share
// no pixel and leave none out.
func pixels(g grid.Grid, c grid.Cell, w, h int) image.Rectangle {
	b := g.Box(c)
	at := func(m, side grid.Millimetres, n int) int {
		return min(n, int(math.Round(float64(m/side)*float64(n))))
	}
	return image.Rect(at(b.X, g.Width, w), at(b.Y, g.Height, h),
		at(b.X+b.Width, g.Width, w), at(b.Y+b.Height, g.Height, h))
}
