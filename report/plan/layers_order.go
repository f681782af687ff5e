// What lies behind what.

package plan

import "tonewright/analyze"

// behindOf returns the regions of a picture of width × height, what lies behind first.
// Those that the painter named lie in the order of the painting file, over what none
// covers; found ones as Found writes them: the largest first, but none before one that it
// lies inside of. That a large thing lies behind a small one is a guess, which the order
// in the file overrules.
func behindOf(parting analyze.Parting, named bool, width, height int) (order []int) {
	if !named {
		return analyze.Behind(parting, width, height)
	}
	for r, region := range parting.Regions {
		switch {
		case region.Pixels == 0:
		case region.Name == analyze.TheRest:
			order = append([]int{r}, order...)
		default:
			order = append(order, r)
		}
	}
	return order
}
