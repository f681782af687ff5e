package analyze

import "math"

// readCard reads the light off the card.
func (p *Photo) readCard(card Card, c sample) (lamp, CardReading, error) {
	if len(c.pixels) == 0 {
		return lamp{}, CardReading{}, p.errorf("the card is transparent in the photo; draw its rectangle elsewhere")
	}
	raw, known := middle(c.pixels), rgb(linearOf(card.Lab))
	l := lamp{gains: known.cones().over(raw.cones()), side: math.Sqrt(float64(c.rect.Dx() * c.rect.Dy()))}
	l.x, l.y = middleOf(c.rect)
	relight(c.pixels, l.gains.matrix())
	b := bodyOf(c.pixels)
	if err := p.checkCard(&b); err != nil {
		return lamp{}, CardReading{}, err
	}
	rest := known.cones().over(b.colour.cones()) // what glare had hidden
	relight(b.pixels, rest.matrix())
	b.colour = known
	for k := range 3 {
		l.gains[k] *= rest[k]
	}
	f := fieldOf(c.rect, b.pixels)
	if f.change >= clearSlope && f.change <= mostSlope && f.change >= slopeOverNoise*f.noise {
		l.slope = f.slope
	}
	r := CardReading{Gains: l.gains, Slope: f.change}
	r.Spread, _ = b.spread(c.rect)
	r.Warnings = append(b.warn("card", c.rect), warnCard(l.gains, raw)...)
	r.Useless = append(uselessCard(l.gains, raw), b.useless("card", c.rect)...)
	return l, r, nil
}

// checkCard refuses a card of which most is at an end of the photo's range.
func (p *Photo) checkCard(b *body) error {
	bottom, top := b.clipped()
	for k, channel := range channels {
		switch {
		case bottom[k] > 0.5:
			return p.errorf("the card is too dark to go by: its %s is at the bottom of the photo's range; photograph it again with more light", channel)
		case top[k] > 0.5:
			return p.errorf("the card is clipped: its %s is at the top of the photo's range, so how light it was is lost; photograph it again with less exposure", channel)
		}
	}
	return nil
}

var channels = [3]string{"red", "green", "blue"}
