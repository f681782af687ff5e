package analyze

import (
	"image"
	"testing"

	"github.com/stretchr/testify/require"
)

// Percent and pixels, with and without their signs; figures worked out by hand.
func TestParseRect(t *testing.T) {
	for text, want := range map[string]image.Rectangle{
		"40,30,10,8":                    image.Rect(1600, 900, 2000, 1140),
		" 40 , 30 , 10 , 8 ":            image.Rect(1600, 900, 2000, 1140),
		"40%,30%,10%,8 %":               image.Rect(1600, 900, 2000, 1140),
		"0,0,100,100":                   image.Rect(0, 0, 4000, 3000),
		"33.3,0,66.7,100":               image.Rect(1332, 0, 4000, 3000),
		"12.5,0.1,0.05,0.05":            image.Rect(500, 3, 502, 5), // y 3 to 4.5
		"1210px,830px,300px,200px":      image.Rect(1210, 830, 1510, 1030),
		"1210,830,300,200px":            image.Rect(1210, 830, 1510, 1030),
		"3999px, 2999 px , 1 px, 1 px ": image.Rect(3999, 2999, 4000, 3000),
	} {
		got, err := ParseRect(text, 4000, 3000)
		require.NoError(t, err, text)
		require.Equal(t, want, got, text)
	}
}

// What is no rectangle on the photo is said, with what the photo's size is.
func TestParseRectErrors(t *testing.T) {
	for text, want := range map[string]string{
		"":                          "write four numbers, x,y,w,h",
		"1,2,3":                     "write four numbers",
		"1,2,3,4,5":                 "write four numbers",
		"a,2,3,4":                   `"a" is not a number`,
		"1,2,NaN,4":                 `"NaN" is not a number`,
		"1,2,Inf,4":                 `"Inf" is not a number`,
		"1e400,2,3,4":               "is not a number",
		"10px,20,30,40":             "in another unit",
		"10%,20,30,40px":            "in another unit",
		"40,30,0,8":                 "is empty or leaves the photo, which has 4000 × 3000 pixels",
		"40,30,-10,8":               "is empty or leaves the photo",
		"-1,30,10,8":                "is empty or leaves the photo",
		"95,30,10,8":                "is empty or leaves the photo",
		"40,95,10,8":                "is empty or leaves the photo",
		"3900,0,101,10px":           "is empty or leaves the photo",
		"1e300,0,10,10px":           "is empty or leaves the photo",
		"0,0,0.001,8":               "is less than a pixel of the photo, which has 4000 × 3000",
		"1210px,830px,300px,200 cm": "in another unit",
	} {
		_, err := ParseRect(text, 4000, 3000)
		require.ErrorContains(t, err, want, text)
		require.NotContains(t, err.Error(), "\n")
	}
}
