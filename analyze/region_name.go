package analyze

import "fmt"

// describe counts and names the regions.
func describe(p *Picture, of []uint8) []Region {
	regions := make([]Region, 0)
	for _, n := range of {
		for int(n) >= len(regions) {
			regions = append(regions, Region{Name: fmt.Sprintf("area %d", len(regions)+1)})
		}
	}
	count(regions, of)
	return regions
}
