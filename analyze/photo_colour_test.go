package analyze

import "testing"

func TestX(t *testing.T) {
	for _, c := range [][2]string{
		{"colour/07_irises_painting_AdobeRGB.jpg", "colour/07_irises_EXPECTED_srgb.png"},
		{"colour/daisies_cmyk_icc.jpg", "colour/daisies_cmyk_icc_EXPECTED_srgb.png"},
		{"colour/fig_displayp3.jpg", "colour/fig_srgb.png"},
		{"colour/fig_adobergb.png", "colour/fig_srgb.png"},
		{"colour/fig.heic", "colour/fig_srgb.png"},
		{"colour/dandelions_16bit.png", "colour/dandelions_8bit.png"},
		{"colour/dandelions.webp", "colour/dandelions_8bit.png"},
	} {
		p, a := mustPicture(t, sharedPhoto(t, c[0]))
		q, b := mustPicture(t, sharedPhoto(t, c[1]))
		t.Logf("%s: %.3f levels; %s %v %s", c[0], levels(t, a, b), p.Profile, p.Warnings, q.Profile)
	}
}
