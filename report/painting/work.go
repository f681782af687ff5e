// The keys of how and when it is painted.

package painting

import (
	"errors"

	"github.com/pelletier/go-toml/v2/unstable"

	"tonewright/match/layer"
	"tonewright/report/plan"
)

// workKeys say what holds for every coat, and when there is time to paint.
func workKeys() []key[reading] {
	return []key[reading]{
		{"start", `"2026-12-01"`, readStart},
		{"sessions", "3", whole(plan.MostSessions, func(r *reading, n int) { r.Options.Work.Sessions = n })},
		{"piles", "10", whole(plan.MostPiles, func(r *reading, n int) { r.Options.Work.Piles = n })},
		{"medium", `"linseed 1:10"`, words(func(r *reading, text string) (err error) {
			r.Options.Work.Medium, err = layer.ParseMedium(text)
			return err
		})},
		{"film", "100", measured(plan.LeastFilm, plan.MostFilm, ", in thousandths of a millimetre", func(r *reading, n float64) { r.Options.Work.Film = n })},
		{"absorbent", "true", yesNo(func(r *reading, yes bool) { r.Options.Work.Absorbent = yes })},
		{"waste", "0.3", measured(0, plan.MostWaste, ", as a share of what is painted", func(r *reading, n float64) { r.Options.Work.Waste = &n })},
		{"temperature", "20", measured(plan.LeastCelsius, plan.MostCelsius, " °C", func(r *reading, n float64) { r.air().Celsius = n })},
		{"humidity", "50", measured(plan.LeastHumidity, plan.MostHumidity, " percent", func(r *reading, n float64) { r.air().Humidity = n })},
	}
}

// air returns the air that the painting dries in, to be set: what is not said of it is as
// indoors.
func (r *reading) air() *layer.Air {
	air := &r.Options.Work.Air
	if *air == (layer.Air{}) {
		*air = layer.Indoors
	}
	return air
}

// readStart reads a date, in quotes or as TOML's own.
func readStart(r *reading, v *value) (err error) {
	text := v.text
	switch v.kind {
	case unstable.LocalDate:
	case unstable.LocalDateTime, unstable.LocalTime, unstable.DateTime:
		return errors.New("has a time in it; write the day alone, like 2026-12-01")
	default:
		if text, err = v.asText(longestWord); err != nil {
			return err
		}
	}
	r.Options.Work.Start, err = plan.ParseDate(text)
	return err
}
