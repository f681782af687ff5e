package analyze

import (
	"fmt"
	"image"
	"math"
	"strconv"
	"strings"
)

// ParseRect returns the rectangle that text draws on an upright photo of width ×
// height pixels, as x,y,w,h from the top left: in percent of the photo, "40,30,10,8",
// decimals allowed, or in pixels, "1210px,830px,300px,200px" or "1210,830,300,200px".
// Both are rounded to whole pixels.
// It is an error if text is anything else, and if the rectangle is empty or leaves the photo.
func ParseRect(text string, width, height int) (image.Rectangle, error) {
	fields := strings.Split(text, ",")
	if len(fields) != 4 {
		return image.Rectangle{}, fmt.Errorf("rectangle %q: write four numbers, x,y,w,h, in percent of the photo such as 40,30,10,8 or in pixels such as 1210,830,300,200px", text)
	}
	inPixels := strings.HasSuffix(strings.TrimSpace(fields[3]), "px")
	var v [4]float64
	for i, f := range fields {
		n, err := rectNumber(f, inPixels)
		if err != nil {
			return image.Rectangle{}, fmt.Errorf("rectangle %q: %w", text, err)
		}
		v[i] = n
	}
	wide, high := float64(width), float64(height)
	if !inPixels {
		v = [4]float64{v[0] / 100 * wide, v[1] / 100 * high, v[2] / 100 * wide, v[3] / 100 * high}
	}
	const slack = 1e-6 // of a pixel: 33.3 + 66.7 percent may come out a bit over the whole
	if v[2] <= 0 || v[3] <= 0 || v[0] < 0 || v[1] < 0 || v[0]+v[2] > wide+slack || v[1]+v[3] > high+slack {
		return image.Rectangle{}, fmt.Errorf("rectangle %q is empty or leaves the photo, which has %d × %d pixels; keep x and y at 0 or more, w and h over 0, and x + w and y + h inside", text, width, height)
	}
	round := func(v float64) int { return int(math.Round(v)) }
	r := image.Rect(round(v[0]), round(v[1]), round(v[0]+v[2]), round(v[1]+v[3]))
	if r.Empty() {
		return image.Rectangle{}, fmt.Errorf("rectangle %q is less than a pixel of the photo, which has %d × %d; draw it larger", text, width, height)
	}
	return r, nil
}

// rectNumber reads one number of a rectangle. In pixels, px may follow each; a
// percent sign may follow otherwise.
func rectNumber(field string, inPixels bool) (float64, error) {
	unit, other := "%", "px"
	if inPixels {
		unit, other = "px", "%"
	}
	f := strings.TrimSpace(field)
	if strings.HasSuffix(f, other) {
		return 0, fmt.Errorf("%q is in another unit than the last number; write all four in percent, or all four in pixels", f)
	}
	n, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(f, unit)), 64)
	if err != nil || math.IsNaN(n) || math.IsInf(n, 0) {
		return 0, fmt.Errorf("%q is not a number; write x,y,w,h in percent such as 40,30,10,8 or in pixels such as 1210,830,300,200px", f)
	}
	return n, nil
}
