package colour

import (
	_ "embed"
	"strconv"
	"strings"
	"sync"
)

// lampTable is the observer and the lamps by 5 nm, in the layout its first lines
// tell: at 10 nm the lines of F11 would fall between the samples and its white
// would be wrong.
// Source: [CIE15 lamps].
//
//go:embed lamps.txt
var lampTable string

// Lamp is a light that a painting may hang under. Key is that of the CIE
// illuminant, "A", "F11" or "B3", and Name says what it is to a painter.
type Lamp struct {
	Key, Name string

	weights [3]Spectrum // of X/Xn, Y/Yn, Z/Zn as adapted to D65; each adds up to 1
}

// lamps is filled on first use.
var lamps = sync.OnceValue(func() [3]Lamp {
	rows := lampRows()
	return [3]Lamp{
		{"A", "warm lamp", rows.adapted(0)},
		{"F11", "cool office lamp", rows.adapted(1)},
		{"B3", "white LED", rows.adapted(2)},
	}
})

// Lamps returns the lamps, always in one order: a warm lamp (illuminant A), a cool
// office lamp (FL11) and a white LED (LED-B3). The slice is the caller's own.
func Lamps() []Lamp {
	all := lamps()
	return all[:]
}

// Lab returns the look of reflectance r under l, to an eye that is used to l, as
// the Lab under D65 that looks the same; a flat reflectance looks neutral.
// The eye's getting used to l is taken as complete, by Bradford as for the
// Munsell look-up, so that two ways of adapting are not compared. Ours: D65 summed
// in the way of the lamps moves the chips of [CIE13.3] by at most 0.04 CIEDE2000
// against Spectrum.Lab, so that a shift from daylight is sure to about that.
// Source: [CIE15] 7.1 and 8.2.1; [Lam1985].
func (l *Lamp) Lab(r *Spectrum) Lab { return r.under(&l.weights) }

// lampRow is a line of lampTable.
type lampRow struct {
	nm       int
	observer [3]float64
	power    [3]float64 // of each lamp
}

type lampRowList []lampRow

// lampRows returns the lines of lampTable.
func lampRows() (rows lampRowList) {
	for line := range strings.Lines(lampTable) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		var n [7]float64
		for i, f := range strings.Fields(line) {
			v, err := strconv.ParseFloat(f, 64)
			if err != nil {
				panic("colour: lamps.txt: " + err.Error())
			}
			n[i] = v
		}
		rows = append(rows, lampRow{int(n[0]), [3]float64(n[1:4]), [3]float64(n[4:7])})
	}
	return rows
}

// weights returns the weights of X, Y and Z of one lamp on the bands, and its
// white; Y of the white is 1. The sum is over the 5 nm of the table, with the
// reflectance read between the bands by bandShares.
func (rows lampRowList) weights(lamp int) (w [3]Spectrum, lampWhite [3]float64) {
	sum := 0.0
	for _, r := range rows {
		sum += r.observer[1] * r.power[lamp]
	}
	for _, r := range rows {
		first, shares := bandShares(r.nm)
		for k, v := range r.observer {
			v *= r.power[lamp] / sum
			lampWhite[k] += v
			for i, s := range shares {
				w[k][first+i] += v * s
			}
		}
	}
	return w, lampWhite
}

// adapted returns the weights of X/Xn, Y/Yn and Z/Zn under D65 for an eye that
// has got used to the lamp.
func (rows lampRowList) adapted(lamp int) (w [3]Spectrum) {
	plain, lampWhite := rows.weights(lamp)
	m := adaptation(lampWhite, white)
	for k := range w {
		for i := range w[k] {
			for j := range plain {
				w[k][i] += m[k][j] * plain[j][i] / white[k]
			}
		}
	}
	return w
}

// bandShares returns the part that each of four bands, from first on, has in the
// reflectance at nm: a cubic through the four bands about it, a parabola in the
// outermost steps, and the end bands alone beyond them.
// Source: Lagrange's formula at the middle of a step, as [ASTME2022] uses it.
func bandShares(nm int) (first int, shares [4]float64) {
	at := (nm - 400) / 10
	switch between := nm%10 != 0; {
	case nm <= 400:
		return 0, [4]float64{1, 0, 0, 0}
	case nm >= 700:
		return Bands - 4, [4]float64{0, 0, 0, 1}
	case !between:
		first = min(at, Bands-4)
		shares[at-first] = 1
		return first, shares
	case at == 0:
		return 0, [4]float64{3. / 8, 6. / 8, -1. / 8, 0}
	case at == Bands-2:
		return Bands - 4, [4]float64{0, -1. / 8, 6. / 8, 3. / 8}
	}
	return at - 1, [4]float64{-1. / 16, 9. / 16, 9. / 16, -1. / 16}
}
