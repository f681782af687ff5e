package tube

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"tonewright/analyze/colour"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hill is a reflectance with a smooth rise and a hump, known at any wavelength.
func hill(nm float64) float64 {
	return 0.1 + 0.5/(1+math.Exp(-(nm-560)/25)) + 0.2*math.Exp(-(nm-450)*(nm-450)/2/900)
}

// tableOf writes two samples, the second half the first, from-to in steps.
func tableOf(from, to, step float64, delimiter, point, heading string, scale float64) string {
	var head, one, two []string
	for nm := from; nm <= to; nm += step {
		head = append(head, fmt.Sprintf(heading, nm))
		one = append(one, strings.Replace(fmt.Sprintf("%.6f", scale*hill(nm)), ".", point, 1))
		two = append(two, strings.Replace(fmt.Sprintf("%.6f", scale*hill(nm)/2), ".", point, 1))
	}
	row := func(name string, cells []string) string {
		return name + delimiter + strings.Join(cells, delimiter) + "\n"
	}
	return row("Sample", head) + row("masstone", one) + row("tint 1:4", two)
}

// headingAndSecond is a table of the second sample alone, over a wider range.
func headingAndSecond() string {
	rows := strings.SplitAfter(tableOf(390, 710, 10, ",", ".", "R%.0f", 1), "\n")
	return rows[0] + rows[2]
}

// turned writes the same with a wavelength a row.
func turned(from, to, step float64, delimiter, point, heading string, scale float64) string {
	text := "nm" + delimiter + "masstone" + delimiter + "tint 1:4\n"
	for nm := from; nm <= to; nm += step {
		text += fmt.Sprintf(heading, nm)
		for _, r := range []float64{hill(nm), hill(nm) / 2} {
			text += delimiter + strings.Replace(fmt.Sprintf("%.6f", scale*r), ".", point, 1)
		}
		text += "\n"
	}
	return text
}

const cgatsHead = "CGATS.17\nORIGINATOR \"a meter\"\nNUMBER_OF_FIELDS 33\nBEGIN_DATA_FORMAT\nSAMPLE_ID SAMPLE_NAME"

func cgatsOf() string {
	head, one, two := cgatsHead, `1 "masstone"`, `2 "tint 1:4"`
	for nm := 400.0; nm <= 700; nm += 10 {
		head += fmt.Sprintf(" SPECTRAL_NM%.0f", nm)
		one += fmt.Sprintf(" %.6f", hill(nm))
		two += fmt.Sprintf("\t%.6f", hill(nm)/2)
	}
	return head + "\nEND_DATA_FORMAT\nNUMBER_OF_SETS 2\nBEGIN_DATA\n" + one + "\n" + two + "\nEND_DATA\n"
}

// Every layout says the same, to what its steps can carry of a curve known exactly.
func TestReadEveryLayout(t *testing.T) {
	other := "CGATS.17\nNUMBER_OF_FIELDS 2\nBEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L\nEND_DATA_FORMAT\nNUMBER_OF_SETS 1\nBEGIN_DATA\nX 50\nEND_DATA\n"
	for _, c := range []struct {
		name, text string
		within     float64
		notes      []string
	}{
		{"comma", tableOf(400, 700, 10, ",", ".", "%.0f", 1), 1e-6, []string{"The reflectances were read as shares of 1."}},
		{"tab, percent, dressed", tableOf(400, 700, 10, "\t", ".", "R%.0f[%%]", 100), 1e-6, []string{"The reflectances were read as percent."}},
		{"semicolon, decimal comma", tableOf(380, 730, 10, ";", ",", "%.0f nm", 100), 1e-6, nil},
		{"decimal wavelengths", tableOf(380, 730, 10, ";", ",", "%.1f", 1), 1e-6, nil},
		{"with metadata, a mark and Windows line ends", "\xef\xbb\xbfMeter,model 5\r\nGeometry,\"d/8, shine out\"\r\n\r\n" + strings.ReplaceAll(tableOf(400, 700, 10, ",", ".", "nm_%.0f", 1), "\n", "\r\n"), 1e-6, nil},
		{"a dot before", tableOf(400, 700, 10, ",", ".", "Refl. %.0f nm", 1), 1e-6, nil},
		{"figures above that only look like wavelengths", "counts," + strings.Repeat("301,250,", 10) + "\n" + turned(400, 700, 10, ",", ".", "%.0f", 1), 1e-6, nil},
		{"a sample a table", strings.Join(strings.SplitAfter(tableOf(400, 700, 10, ",", ".", "%.0f", 1), "\n")[:2], "") + "\n" + headingAndSecond(), 1e-6, nil},
		{"steps of 20", tableOf(400, 700, 20, ",", ".", "%.0f", 1), 3e-3, nil},
		{"steps of 5", tableOf(380, 780, 5, ",", ".", "%.0f", 1), 3e-3, nil},
		{"steps of 3", tableOf(380, 780, 3, ",", ".", "%.0f", 1), 3e-3, nil},
		{"steps of 1", tableOf(360, 740, 1, ",", ".", "%.0f", 1), 3e-3, nil},
		{"between the tens", tableOf(395, 705, 10, ",", ".", "%.0f", 1), 1e-3, nil},
		{"one step short", tableOf(410, 690, 10, ",", ".", "%.0f", 1), 4e-2, []string{"The reflectances were read as shares of 1.", "Below 410 nm, the reflectance there was kept.", "Above 690 nm, the reflectance there was kept."}},
		{"a wavelength a row", turned(380, 730, 10, ",", ".", "%.0f", 1), 1e-6, nil},
		{"a wavelength a row, tab, comma", "from the meter\n\n" + turned(400, 700, 10, "\t", ",", "%.0f nm", 100), 1e-6, nil},
		{"cgats", cgatsOf(), 1e-6, nil},
		{"cgats after another table", other + cgatsOf(), 1e-6, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			samples, err := Read("x.csv", []byte(c.text))
			require.NoError(t, err)
			require.Len(t, samples, 2)
			for i, name := range []string{"masstone", "tint 1:4"} {
				s, err := Find(samples, strings.ToUpper(name))
				require.NoError(t, err)
				assert.Equal(t, name, s.Name)
				for b, r := range s.R {
					assert.InDelta(t, hill(400+10*float64(b))/float64(i+1), r, c.within, "%d nm", 400+10*b)
				}
				if c.notes != nil {
					assert.Equal(t, c.notes, s.Notes)
				}
			}
		})
	}
}

func TestReadDownwards(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(turned(400, 700, 10, ",", ".", "%.0f", 1)), "\n")
	text := lines[0]
	for i := len(lines) - 1; i > 0; i-- {
		text += "\n" + lines[i]
	}
	samples, err := Read("x.csv", []byte(text))
	require.NoError(t, err)
	assert.InDelta(t, hill(400), samples[0].R[0], 1e-6)
}

func TestReadSaysWhatIsWrong(t *testing.T) {
	good := tableOf(400, 700, 10, ",", ".", "%.0f", 1)
	gap := strings.Replace(tableOf(400, 700, 10, ",", ".", "%.0f", 1), "450,", "457,", 1)
	for _, c := range []struct{ name, text, want string }{
		{"nothing", "", "x.csv: has no row or column of wavelengths; export the spectra with 400 to 700 nm as headings"},
		{"few wavelengths", tableOf(400, 700, 25, ",", ".", "%.0f", 1), "x.csv: has 13 wavelengths in a row; 16 or more are needed"},
		{"a gap", gap, `x.csv:2: "masstone" has a gap from 440 to 457 nm`},
		{"wide steps", tableOf(300, 780, 30, ",", ".", "%.0f", 1), `has a gap from 300 to 330 nm; export it in even steps of at most 20 nm`},
		{"a short range", tableOf(420, 700, 10, ",", ".", "%.0f", 1), `x.csv:2: "masstone" covers 420 to 700 nm; it must cover 400 to 700 but for one step`},
		{"a word", strings.Replace(good, "0.1", "n/a", 1), `x.csv:2: column 2 (400) is "n/a`},
		{"an empty cell", "x,400" + "," + strings.Join(headings(410, 700), ",") + "\na,1,," + strings.Repeat("1,", 28) + "1", `x.csv:2: column 3 (410) is empty`},
		{"decimal commas between commas", strings.Replace(strings.Replace(good, "masstone,0.", "masstone,0,", 1), ",0.", ",0,", -1), `x.csv:2: 63 columns under 32 headings; are the decimals commas? export with semicolons`},
		{"one cell too many", strings.Replace(good, "\ntint", ",0.5\ntint", 1), `x.csv:2: 33 columns under 32 headings`},
		{"a column too many", strings.Replace(turned(400, 700, 10, ",", ".", "%.0f", 1), "\n420,", "\n420,0.5,", 1), `x.csv:4: 4 columns under 3 headings; are the decimals commas?`},
		{"headings with decimal commas between commas", "x" + strings.ReplaceAll(good[strings.Index(good, ","):strings.Index(good, "\n")], "0,", "0,0,") + ",0\na" + strings.Repeat(",1", 62), `x.csv:1: column 3 is headed "0", which is no wavelength`},
		{"a wavelength below nothing", strings.Replace(good, ",400", ",-400", 1), `x.csv:1: column 2 is headed "-400", which is no wavelength; export the spectra with 400 to 700 nm as headings`},
		{"a wavelength without end", strings.Replace(tableOf(400, 700, 10, ",", ".", "%.0f nm", 1), "700 nm", "1e9 nm", 1), `x.csv:1: column 32 is headed "1e9 nm", which is no wavelength`},
		{"a wavelength that is none", strings.Replace(tableOf(400, 700, 10, ",", ".", "R%.0f[%%]", 1), "R400[", "RNaN[", 1), `x.csv:1: column 2 is headed "RNaN[%]", which is no wavelength`},
		{"a wavelength below nothing, in a column", strings.Replace(turned(400, 700, 10, ",", ".", "%.0f nm", 1), "400 nm", "-400 nm", 1), `x.csv:2: the first column holds "-400 nm", which is no wavelength`},
		{"a wavelength that is none, at a column's end", strings.Replace(turned(400, 700, 10, ",", ".", "%.0f", 1), "\n700,", "\nNaN,", 1), `x.csv:32: the first column holds "NaN", which is no wavelength`},
		{"a wavelength twice", strings.Replace(good, ",410", ",400", 1), `x.csv:1: 400 nm stands twice; export each wavelength once, in order`},
		{"wavelengths out of order", strings.Replace(good, ",410,420", ",420,410", 1), `x.csv:1: 410 nm comes after 420 nm; export each wavelength once, in order`},
		{"a wavelength twice, in a column", strings.Replace(turned(400, 700, 10, ",", ".", "%.0f", 1), "\n410,", "\n400,", 1), `x.csv:3: 400 nm stands twice; export each wavelength once, in order`},
		{"a wavelength twice, late in a column", strings.Replace(turned(400, 700, 10, ",", ".", "%.0f", 1), "\n700,", "\n690,", 1), `x.csv:32: 690 nm stands twice`},
		{"every wavelength twice, in a column", "nm,a\n" + strings.ReplaceAll(strings.Join(headings(400, 700), "\n")+"\n", "0\n", "0,1\n400,1\n"), `x.csv:2: in the column that begins here, 400 nm stands twice`},
		{"cgats with a wavelength twice", strings.Replace(cgatsOf(), "NM410", "NM400", 1), `x.csv:8: of the fields, 400 nm stands twice`},
		{"cgats with a wavelength that is none", strings.Replace(cgatsOf(), "NM400", "NM-400", 1), `x.csv:8: column 3 is headed "SPECTRAL_NM-400", which is no wavelength`},
		{"a number of another kind", strings.Replace(good, "0.1", "0x1p-2", 1), `is "0x1p-2`},
		{"a number with a line in it", strings.Replace(good, "0.1", "1_0", 1), `is "1_0`},
		{"a long word", strings.Replace(good, "0.1", strings.Repeat("n", 1000), 1), `is "` + strings.Repeat("n", 60) + `", where a number is wanted`},
		{"below nothing", strings.Replace(good, "0.1", "-0.1", 1), `x.csv:2: "masstone" reflects -0.1`},
		{"above all", strings.Replace(tableOf(400, 700, 10, ",", ".", "%.0f", 100), ",1", ",9991", 1), `which is outside 0 to 120 %`},
		{"not finite", strings.Replace(good, "0.1", "Inf", 1), "where a number is wanted"},
		{"no samples", strings.Split(good, "\n")[0], "x.csv: has wavelengths but no samples"},
		{"broken off", strings.Replace(turned(380, 730, 10, ",", ".", "%.0f", 1), "\n700,", "\n7oo,", 1), "x.csv:34: the first column should go on from 690"},
		{"UTF-16", "\xff\xfea\x00", "x.csv: is written in UTF-16; save it as UTF-8"},
		{"cgats cut short", strings.TrimSuffix(cgatsOf(), "END_DATA\n"), "it was cut short"},
		{"cgats with a set missing", strings.Replace(cgatsOf(), "NUMBER_OF_SETS 2", "NUMBER_OF_SETS 3", 1), "NUMBER_OF_SETS is 3, but there are 2"},
		{"cgats with a field missing", strings.Replace(cgatsOf(), "NUMBER_OF_FIELDS 33", "NUMBER_OF_FIELDS 34", 1), "NUMBER_OF_FIELDS is 34, but 33 fields are named"},
		{"cgats with a bare name", strings.Replace(cgatsOf(), `"masstone"`, "my masstone", 1), "x.csv:9: has 34 values where 33 fields are named; put names with blanks in quotes"},
		{"cgats without spectra", "BEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L\nEND_DATA_FORMAT\nBEGIN_DATA\n1 50\nEND_DATA", "x.csv: has no spectra: no fields such as SPECTRAL_NM400"},
		{"cgats with a strange count", "NUMBER_OF_FIELDS x\nBEGIN_DATA_FORMAT\n", `x.csv:1: NUMBER_OF_FIELDS is "x", which is no count`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Read("x.csv", []byte(c.text))
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.want)
			assert.NotContains(t, err.Error(), "\n", "one sentence")
		})
	}
}

// Wavelengths that are not reckoned with are passed over, in a row and in a column: an
// instrument for ultraviolet begins at 190 nm.
func TestReadPassesOverUltraviolet(t *testing.T) {
	for _, text := range []string{tableOf(190, 750, 10, ",", ".", "%.0f", 1), turned(190, 750, 10, ",", ".", "%.0f", 1)} {
		samples, err := Read("x.csv", []byte(text))
		require.NoError(t, err)
		require.Len(t, samples, 2)
		assert.Equal(t, "masstone", samples[0].Name)
		assert.InDelta(t, hill(400), samples[0].R[0], 1e-6)
	}
}

// A delimiter at the end of each line is no column.
func TestReadPassesOverEmptyCells(t *testing.T) {
	for _, text := range []string{tableOf(400, 700, 10, ",", ".", "%.0f", 1), turned(400, 700, 10, ",", ".", "%.0f", 1)} {
		samples, err := Read("x.csv", []byte(strings.ReplaceAll(text, "\n", ",,\n")))
		require.NoError(t, err)
		assert.Len(t, samples, 2)
	}
}

// A name that steers a terminal, turns the writing or has no end is shown plainly, and
// found by what it is called in the file.
func TestReadNamesPlainly(t *testing.T) {
	for name, want := range map[string]string{
		"mass\x1b[2Jtone":              "mass?[2Jtone",
		"mass\u202etone":               "mass?tone",
		strings.Repeat("é", 61):        strings.Repeat("é", 60),
		"\"mass\u200b, \"\"tone\"\"\"": `mass?, "tone"`,
	} {
		samples, err := Read("x.csv", []byte(strings.Replace(tableOf(400, 700, 10, ",", ".", "%.0f", 1), "masstone", name, 1)))
		require.NoError(t, err)
		assert.Equal(t, want, samples[0].Name)
		if !strings.Contains(name, `"`) {
			_, err = Find(samples, name)
			assert.NoError(t, err)
		}
	}
}

// Large files are read at once: a long cell is not looked at, and a row costs few pieces
// of memory. Matching every cell against a pattern, three times a row, cost 181 pieces.
// 4 MiB of rows take 0.3 s, 4 MiB of one letter 0.1 s.
func TestReadKeepsPace(t *testing.T) {
	_, ok := wavelengthOf("400" + strings.Repeat(" ", longestCell))
	assert.False(t, ok)
	const rows = 1000
	text := []byte("x," + strings.Join(headings(400, 700), ",") + "\n" + strings.Repeat("a"+strings.Repeat(",0.123456", 31)+"\n", rows))
	pieces := testing.AllocsPerRun(3, func() { _, _ = Read("x.csv", text) }) / rows
	t.Logf("%.1f pieces of memory a row", pieces)
	assert.Less(t, pieces, 30.)
}

func headings(from, to int) (h []string) {
	for ; from <= to; from += 10 {
		h = append(h, fmt.Sprint(from))
	}
	return h
}

func TestFindSaysWhatIsThere(t *testing.T) {
	samples := []Sample{{Name: "a"}, {Name: "A"}, {Name: "b"}}
	_, err := Find(samples, "a")
	assert.EqualError(t, err, `2 samples are called "a"; give each its own name in the file`)
	_, err = Find(samples, "c")
	assert.EqualError(t, err, `no sample is called "c": the file has "a", "A", "b"`)
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(tableOf(400, 700, 10, ",", ".", "%.0f", 1)))
	f.Add([]byte(tableOf(380, 730, 10, ";", ",", "R%.0f[%%]", 100)))
	f.Add([]byte(turned(400, 700, 20, "\t", ".", "%.0f nm", 1)))
	f.Add([]byte(cgatsOf()))
	f.Fuzz(func(t *testing.T, data []byte) {
		samples, err := Read("x", data)
		if err != nil {
			assert.NotContains(t, err.Error(), "\n")
			return
		}
		assert.NotEmpty(t, samples)
		for _, s := range samples {
			for _, r := range s.R {
				assert.True(t, r >= 0 && r <= mostReflectance, "%v", r)
			}
			assert.Len(t, s.R, colour.Bands)
		}
	})
}
