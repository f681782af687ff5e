package plan

import (
	"image"

	"tonewright/analyze"
	"tonewright/grid"
)

// outlineShare is how far the outlines of found regions may stray from their borders, of
// the panel's long side: 1 mm on a panel of 12 in, about a pencil's line. Ours: on the
// demo and five photographs 0.2 to 0.8 % of the pixels change their region by it and a
// region has 29 to 86 points; with half of it 0.03 to 0.3 % and 76 to 225, too many to
// edit by hand.
const outlineShare = 1.0 / 300

// FoundPlan is what is found in a photo before anything is chosen: its panel, its grid
// and its regions.
type FoundPlan struct {
	Width, Height grid.Millimetres // of the panel
	Unit          grid.Unit        // the painter's, of the panel
	Cell          grid.Millimetres // side of a grid cell
	CellUnit      grid.Unit        // the painter's, of the cell
	Columns, Rows int              // of the grid
	Warnings      []string         // of the photo
	Regions       []FoundRegion    // the largest first, but none before one that it lies inside of
}

// FoundRegion is a region as it was found. Outlines are laid one over the other: the
// first region's is the whole panel, and none has the holes that later ones fill.
type FoundRegion struct {
	Name    string
	Where   string         // cells as short text: "C3:F7, G4"
	Share   float64        // of the panel, 0-1, of what is seen of it
	Outline [][]grid.Point // rings on the panel; what is inside an odd number of them is in
}

// Found opens the photo, lays the grid on it and finds its regions, as Make does where
// none are named; opt.Regions is not looked at.
// A UsageError is a mistake in opt; any other error is the photo's.
func Found(opt Options) (FoundPlan, error) {
	opt = opt.withDefaults()
	opt.Step("reading the photo")
	photo, layout, crop, err := open(opt)
	if err != nil {
		return FoundPlan{}, err
	}
	picture, err := photo.Picture(crop, 0, opt.Ground.Lab)
	if err != nil {
		return FoundPlan{}, err
	}
	opt.Step("finding regions")
	parting := analyze.Regions(picture, nil)
	found := FoundPlan{
		Width: layout.Width, Height: layout.Height, Unit: layout.Unit,
		Cell: layout.Cell, CellUnit: opt.Cell.Unit, Columns: layout.Columns, Rows: layout.Rows, Warnings: photo.Warnings,
		Regions: foundRegions(parting, layout, image.Pt(picture.Width, picture.Height)),
	}
	if found.CellUnit == "" {
		found.CellUnit = grid.Inch
	}
	return found, nil
}

// foundRegions describes the regions of a picture of the given size, in the order of
// their layers.
func foundRegions(parting analyze.Parting, g grid.Grid, size image.Point) []FoundRegion {
	cells := cellsOf(g, size.X, size.Y, len(parting.Regions), parting.Of)
	var regions []FoundRegion
	for _, layer := range analyze.Layers(parting, size.X, size.Y, outlineShare*float64(max(size.X, size.Y))) {
		r := parting.Regions[layer.Region]
		found := FoundRegion{Name: r.Name, Where: grid.Spans(cells[layer.Region]), Share: Round(float64(r.Pixels)/float64(len(parting.Of)), 4)}
		for _, ring := range layer.Rings {
			found.Outline = append(found.Outline, onPanel(ring, g, size))
		}
		regions = append(regions, found)
	}
	return regions
}
