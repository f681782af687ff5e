package plan

import (
	"tonewright/analyze"
	"tonewright/grid"
)

// FoundPlan is what is found in a photo before anything is chosen: its panel, its grid
// and its regions.
type FoundPlan struct {
	Width, Height grid.Millimetres // of the panel
	Unit          grid.Unit        // the painter's, of the panel
	Cell          grid.Millimetres // side of a grid cell
	CellUnit      grid.Unit        // the painter's, of the cell
	Columns, Rows int              // of the grid
	Warnings      []string         // of the photo
	Regions       []FoundRegion    // laid one over the other in this order they give the parting back
}

// FoundRegion is a region as it was found.
// The first region's outline is the whole panel; what the others leave is its own.
type FoundRegion struct {
	Name    string
	Where   string         // cells as short text: "C3:F7, G4"
	Share   float64        // of the panel, 0-1
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
	cells := cellsOf(layout, picture.Width, picture.Height, len(parting.Regions), parting.Of)
	found := FoundPlan{
		Width: layout.Width, Height: layout.Height, Unit: layout.Unit,
		Cell: layout.Cell, CellUnit: opt.Cell.Unit, Columns: layout.Columns, Rows: layout.Rows, Warnings: photo.Warnings,
	}
	if found.CellUnit == "" {
		found.CellUnit = grid.Inch
	}
	for i, r := range parting.Regions {
		found.Regions = append(found.Regions, FoundRegion{
			Name: r.Name, Where: grid.Spans(cells[i]), Share: Round(float64(r.Pixels)/float64(len(parting.Of)), 4),
		})
	}
	return found, nil
}
