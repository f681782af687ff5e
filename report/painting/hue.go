package painting

import (
	"fmt"
	"regexp"
	"strings"
)

var hueForm = regexp.MustCompile(`^(?:(?:10|[0-9])(?:\.[0-9]+)? ?)?(?:r|yr|y|gy|g|bg|b|pb|p|rp)$|^(?:red|orange|yellow|yellow-green|green|blue-green|blue|violet-blue|purple|red-purple)$`)

// checkHue tells what is wrong with a hue in Munsell words.
func checkHue(text string) error {
	if !hueForm.MatchString(strings.ToLower(strings.TrimSpace(text))) {
		return fmt.Errorf("hue %q: not a hue; write a step and letters, such as 5YR or 7.5 BG, or a word such as orange", text)
	}
	return nil
}
