package painting

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/report/plan"
)

// Each wrong line is named, with what is allowed; line 1 is a good photo.
func TestReadSaysWhatIsWrong(t *testing.T) {
	region := "[[region]]\nname = \"jug\"\ncells = \"A1\"\n" // lines 2 to 4
	coat2 := "[[layer]]\nregion = \"jug\"\npass = \"glaze\"\n"
	coat := region + coat2 // lines 2 to 7
	for _, c := range []struct{ name, text, want string }{
		{"a misspelt key", `panle = "12x16in"`, `:2: panle is not a key here; did you mean panel? keys here are photo, name, panel, cell, `},
		{"a key unlike any", `zzzzzz = 1`, `:2: zzzzzz is not a key here; keys here are photo, name, `},
		{"a key in capitals", `Panel = "12x16in"`, `did you mean panel?`},
		{"an American key", `colors = 5`, `did you mean colours?`},
		{"a key of a region above", "ground = \"black\"\nrole = \"focal\"", `:3: role is not a key here; it stands under a [[region]]`},
		{"a key of the picture below", region + `ground = "black"`, `:5: ground is not a key in a region; it stands above the first [[region]]; keys in a region are name, cells, `},
		{"another table", "[[regions]]\nname = \"jug\"", `:2: regions is not a key here; did you mean region?`},
		{"a key that could steer", "\"a\\u001b[31m\" = 1", `:2: "a\x1b[31m" is not a key here`},
		{"a look-alike", "\"p\u0430nel\" = \"12x16in\"", `:2: "p\u0430nel" is not a key here; did you mean panel?`},
		{"an endless key", strings.Repeat("k", 100000) + " = 1", `\u2026" is not a key here; keys here are`},
		{"dots", "panel.width = 3", `:2: panel is a table; write it like panel = "12x16in"`},

		{"a number for text", "\npanel = 12", `:3: panel is a number; write it like panel = "12x16in"`},
		{"text for a number", `coat = "thin"`, `:2: coat is text; write it like coat = 1.0`},
		{"text for yes", `holds = "yes"`, `:2: holds is text; write it like holds = true`},
		{"a date", `name = 2026-01-01`, `:2: name is a date or a time; write it like name = `},
		{"no unit", `panel = "12x16"`, `:2: panel: "12x16" has no unit: end it with in, cm or mm`},
		{"a bad ground", `ground = "mauve"`, `:2: ground: ground "mauve" is not known: write white, gray, black, `},
		{"an endless ground", `ground = "` + strings.Repeat("é", 100000) + `"`, `…" has 100000 letters; at most 100`},
		{"a bad crop", `crop = "middle"`, `:2: crop: crop "middle" is not known`},
		{"a bad key of values", `key = "bright"`, `:2: key: "bright" is not known: write "fit" or "literal"`},
		{"a bad finish", `finish = "shiny"`, `:2: finish: `},
		{"not a number", `coat = nan`, `:2: coat: nan is out of range: 0.05 to 20`},
		{"no end", `coat = inf`, `:2: coat: inf is out of range: 0.05 to 20`},
		{"past all", `coat = 1e999`, `painting.toml:2:8: this number cannot be read, it is too large`},
		{"half a colour", `colours = 2.5`, `:2: colours: 2.5 is not a whole number from 1 to 24`},
		{"too many colours", `colours = 9_000_000_000_000_000_000`, `:2: colours: 9_000_000_000_000_000_000 is not a whole number from 1 to 24`},
		{"no colours", `colours = 0`, `:2: colours: 0 is not a whole number from 1 to 24`},
		{"no megapixels", `megapixels = 0`, `:2: megapixels: 0 is out of range: more than 0 and at most 10000`},
		{"no tubes", `tubes = -8`, `:2: tubes: -8 is not a whole number from 1 to 100`},
		{"no error", `within = 0.0`, `:2: within: 0.0 is out of range: 0.5 to 20`},
		{"no file", `out = ""`, `:2: out: names no file`},
		{"no PNG", `study = "study.jpg"`, `:2: study: "study.jpg": the study is written as PNG; give it a name that ends in .png`},
		{"no file's name", `out = "a\u0000"`, `:2: out: "a\x00" cannot be a file's name`},

		{"a bad sight", `sight = "blurred"`, `:2: sight: sight "blurred": not a sight; write full, protan, deutan or tritan`},
		{"a sight's number", `sight = 0.8`, `:2: sight is a number; write it like sight = "deutan 0.8"`},
		{"an unknown kind", `sight = {kind = "red"}`, `:2: sight: kind: sight "red": not a sight`},
		{"two severities", `sight = {kind = "deutan 0.8", severity = 1}`, `:2: sight: kind: "deutan 0.8" is more than a kind`},
		{"too severe", `sight = {kind = "deutan", severity = 1.1}`, `:2: sight: severity: 1.1 is out of range: 0 to 1`},
		{"no kind", `sight = {severity = 1}`, `:2: sight: has no kind; write it like {kind = "deutan", severity = 0.8}`},
		{"a key of sight", "[sight]\nkind = \"deutan\"\nsevere = 1", `:4: sight: severe is not a key of sight; did you mean severity? keys of sight are kind, severity`},

		{"an unknown paint", "paints = [\n\"viridian\",\n\"titanum white\"]", `:4: paints: unknown paint "titanum white"; did you mean "titanium-white"`},
		{"a paint twice", "paints = [\"viridian\",\n\"PG18\"]", `:3: paints: "PG18" is Viridian, which is listed already; leave it out`},
		{"a number of paints", `paints = [12]`, `:2: paints: a number stands in the list; write each paint's name in quotes`},
		{"no paints", `paints = []`, `:2: paints: lists none; write paints = ["titanium-white", `},
		{"one paint", `paints = "viridian"`, `:2: paints is text; write it like paints = ["titanium-white", "yellow-ochre"]`},
		{"a box and paints", "paints = [\"viridian\"]\nbox = \"a.toml\"", `:3: box and paints are both here; keep one`},
		{"no box", `box = "none.toml"`, `:2: box: `},

		{"a region in one line", `region = "jug=A1"`, `:2: region: is written as [[region]] on a line of its own`},
		{"one bracket", "[region]\nname = \"jug\"", `:2: region: is written as [[region]] on a line of its own`},
		{"no name", "[[region]]\ncells = \"A1\"", `:2: name: a region needs a name, like kettle`},
		{"a blank name", "[[region]]\nname = \" \"\ncells = \"A1\"", `:3: name: a region needs a name, like kettle`},
		{"the rest", "[[region]]\nname = \"The Rest\"\ncells = \"A1\"", `:3: name: region "The Rest": that name is kept for what no region covers`},
		{"a name that steers", "[[region]]\nname = \"a\\u202eb\"\ncells = \"A1\"", `:3: name: region "a\u202eb" has characters that cannot be printed`},
		{"a name twice", region + "[[region]]\nname = \"JUG\"\ncells = \"B1\"", `:6: name: "JUG" is the name of a region above already; give each its own`},
		{"nowhere", "[[region]]\nname = \"jug\"\nrole = \"focal\"", `:2: region "jug" is nowhere; say where it lies with cells`},
		{"two places", region + "outline = [[1, 1], [2, 1], [2, 2]]", `:5: outline: region "jug" has cells already; keep one of cells, outline and mask`},
		{"no cell", "[[region]]\nname = \"jug\"\ncells = \"C3:7F\"", `:4: cells: "7F" is not a cell: write column letters and a row number, like C3; write cells and ranges of them`},
		{"no cells", "[[region]]\nname = \"jug\"\ncells = \"\"", `:4: cells: "" is not a cell`},
		{"backwards", "[[region]]\nname = \"jug\"\ncells = \"C3:A1\"", `:4: cells: range C3:A1 runs backwards`},
		{"no role", region + `role = "main"`, `:5: role: "main" is not known: write "focal", "support" or "quiet"`},
		{"nearly a role", region + `role = "fokal"`, `:5: role: "fokal" is not known; did you mean "focal"?`},
		{"aim alone", region + `aim = "value"`, `:5: aim: "value" needs a palette, a scheme or a hue beside it`},
		{"no aim", region + `aim = "values"`, `:5: aim: "values" is not known; did you mean "value"?: write "photo" or "value"`},
		{"too light", region + `value_shift = 4.5`, `:5: value_shift: 4.5 is out of range: -4 to 4`},
		{"no hue", region + `hue = "beautiful"`, `:5: hue: hue "beautiful": not a hue`},
		{"no date", `start = "next week"`, `:2: start: "next week" is not a date; write year, month and day like 2026-12-01`},
		{"a day that is none", `start = "2026-02-30"`, `:2: start: "2026-02-30" is no day of the calendar: that month is shorter`},
		{"a month that is none", `start = "2026-13-01"`, `:2: start: "2026-13-01" is not a date`},
		{"the American order", `start = "12/01/2026"`, `:2: start: "12/01/2026" is not a date`},
		{"a day that is none, bare", `start = 2026-02-30`, `painting.toml:2:17: there is no such day; a date is written like 2026-12-01`},
		{"a digit short", `start = 2026-12-1`, `painting.toml:2:9: a date is written with all its digits, like 2026-12-01`},
		{"a year ago", `start = 1026-12-01`, `:2: start: "1026-12-01" is out of range: the year is 1900 to 2199`},
		{"a time", `start = 2026-12-01T10:00:00`, `:2: start: has a time in it; write the day alone, like 2026-12-01`},
		{"a time with its zone", `start = 2026-12-01T10:00:00Z`, `:2: start: has a time in it`},
		{"only a time", `start = 10:00:00`, `:2: start: has a time in it`},
		{"a start of numbers", `start = 20261201`, `:2: start is a number; write it like start = "2026-12-01"`},
		{"a date for a number", `sessions = 2026-12-01`, `:2: sessions is a date or a time; write it like sessions = 3`},
		{"eight days a week", `sessions = 8`, `:2: sessions: 8 is not a whole number from 1 to 7`},
		{"no piles", `piles = 0`, `:2: piles: 0 is not a whole number from 1 to 40`},
		{"all detail", `detail = 11`, `:2: detail: 11 is not a whole number from 1 to 10`},
		{"half a detail", `detail = 2.5`, `:2: detail: 2.5 is not a whole number`},
		{"no medium", `medium = "water 1:2"`, `:2: medium: unknown medium "water 1:2": write none, linseed, `},
		{"how much medium", `medium = "linseed"`, `:2: medium: medium "linseed": say how much, as in "linseed 1:10"`},
		{"a number of medium", `medium = 0.1`, `:2: medium is a number; write it like medium = "linseed 1:10"`},
		{"a film in coats", `film = 0.5`, `:2: film: 0.5 is out of range: 10 to 1000, in thousandths of a millimetre`},
		{"all wasted", `waste = 30`, `:2: waste: 30 is out of range: 0 to 2, as a share of what is painted`},
		{"Fahrenheit", `temperature = 68`, `:2: temperature: 68 is out of range: 0 to 45 °C`},
		{"a share of humidity", `humidity = 0.5`, `:2: humidity: 0.5 is out of range: 5 to 95 percent`},
		{"absorbent in words", `absorbent = "yes"`, `:2: absorbent is text; write it like absorbent = true`},
		{"no calendar", `ics = ""`, `:2: ics: names no file`},
		{"yes to a checklist", `checklist = true`, `:2: checklist is true or false; write it like checklist = "days.txt"`},

		{"how thick, with its unit", `coat = 50`, `:2: coat: 50 is out of range: 0.05 to 20 times an ordinary coat`},
		{"coats by their other name", region + "[[coat]]\nregion = \"jug\"", `:5: coat: is how thick a coat over the ground is, like coat = 1.0; the coats of a region are set as [[layer]]`},
		{"a coat in braces", `coat = {region = "jug"}`, `:2: coat: is how thick`},
		{"both of them", "coat = 1.0\n[[coat]]\nregion = \"jug\"", `painting.toml:3:3: coat is how thick a coat over the ground is, like coat = 1.0; the coats of a region are set as [[layer]]`},
		{"a layer in one bracket", region + "[layer]\nregion = \"jug\"", `:5: layer: is written as [[layer]] on a line of its own, with its keys on the lines below`},
		{"a layer's key misspelt", region + "[[layer]]\nregoin = \"jug\"", `:6: regoin is not a key in a layer; did you mean region? keys in a layer are region, pass, mix, medium, film, wet, after`},
		{"a layer's name", region + "[[layer]]\nname = \"jug\"", `:6: name is not a key in a layer; it stands above the first [[region]], or under a [[region]], where it says what is wanted of that region; keys in a layer are`},
		{"a layer of what", region + "[[layer]]\npass = \"glaze\"", `:5: this layer names no region; write region = "kettle" with the name of one`},
		{"a layer of none", region + "[[layer]]\npass = \"glaze\"\nregion = \"jugg\"", `:7: region: there is no region "jugg"; did you mean "jug"?; there are jug`},
		{"a layer of the rest", region + "[[layer]]\npass = \"glaze\"\nregion = \"the rest\"", `:7: region: there is no region "the rest"; there are jug`},
		{"a layer without regions", "[[layer]]\npass = \"glaze\"\nregion = \"jug\"", `:4: region: "jug" is the name of none: this file has no [[region]]`},
		{"a list of regions", region + "[[layer]]\npass = \"glaze\"\nregion = [\"jug\"]", `:7: region is a list; write it like region = "kettle"`},
		{"no pass", region + "[[layer]]\nregion = \"jug\"", `:5: this layer of "jug" has no pass; write pass = "block-in", "next pass" or "glaze"`},
		{"another pass", region + "[[layer]]\nregion = \"jug\"\npass = \"block in\"", `:7: pass: "block in" is not known; did you mean "block-in"?: write "block-in", "next pass" or "glaze"`},
		{"no mix", coat + `mix = "burnt umber two"`, `:8: mix: pile "burnt umber two": `},
		{"a mix not owned", coat + `mix = "cobalt-blue 1, viridian 2"`, `:8: mix: "cobalt-blue" is not in your box; nearest to its colour there are "ultramarine-blue", `},
		{"a mix without end", coat + `mix = "` + strings.Repeat("a", 1000) + `"`, `has 1000 letters; at most 400`},
		{"a mix of touches", coat + `mix = "viridian 1 touch"`, `:8: mix: pile "viridian 1 touch": has only touches`},
		{"a list of a mix", coat + `mix = ["viridian"]`, `:8: mix is a list; write it like mix = "ivory-black 1, burnt-umber 2"`},
		{"a layer's medium", coat + `medium = "sovent 1:4"`, `:8: medium: unknown medium "sovent 1:4"`},
		{"a layer's film", coat + `film = 100`, `:8: film: 100 is out of range: 0.05 to 20 times an ordinary coat`},
		{"a layer's after", coat + coat2 + `after = 0`, `:11: after: 0 is not a whole number from 1 to 366`},
		{"wet into none", coat + `wet = true`, `:8: wet: this is the first layer of "jug", there is none to paint into; take the line out`},
		{"after none", coat + `after = 7`, `:8: after: this is the first layer of "jug", there is none to wait for; take the line out`},
		{"too many layers", region + strings.Repeat("[[layer]]\nregion = \"jug\"\npass = \"glaze\"\n", 201), `:605: 201 layers are too many: set at most 200`},
		{"too many layers of one region", region + strings.Repeat("[[layer]]\nregion = \"jug\"\npass = \"glaze\"\n", 13), `:41: "jug" has more than 12 layers; take some out`},
		{"a key of all below a layer", coat + `ground = "black"`, `:8: ground is not a key in a layer; it stands above the first [[region]]`},
		{"a key of a region below a layer", coat + `role = "focal"`, `:8: role is not a key in a layer; it stands under a [[region]], where it says what is wanted of that region`},
		{"a key of a layer below a region", region + `pass = "glaze"`, `:5: pass is not a key in a region; it stands under a [[layer]], where it says how that coat is laid`},
		{"a key of two below a region", region + `film = 80`, `:5: film is not a key in a region; it stands above the first [[region]], or under a [[layer]], where it says how that coat is laid`},
		{"a layer's region in a region", region + `region = "jug"`, `:5: region is not a key in a region; it stands under a [[layer]]`},
		{"a key of a layer above", `wet = true`, `:2: wet is not a key here; it stands under a [[layer]]`},
		{"below a layer that comes first", "[[layer]]\nground = \"black\"\n" + region, `:3: ground is not a key in a layer; it stands above the first [[layer]]`},
		{"below a sight", "[sight]\nkind = \"deutan\"\nground = \"black\"", `:4: sight: ground is not a key of sight; it stands above [sight]`},

		{"left without its table", `viridian = "5 ml"`, `:2: viridian is not a key here; it stands below a line [left], where it says what is left in the tube`},
		{"below what is left", "[left]\nviridian = \"5 ml\"\nground = \"black\"", `:4: left: ground is no paint; it stands above [left]`},
		{"left of an unknown paint", "[left]\nvirridian = \"5 ml\"", `:3: left: unknown paint "virridian"; did you mean "viridian"`},
		{"left of a paint not owned", "[left]\ncobalt-blue = \"5 ml\"", `:3: left: "cobalt-blue" is Cobalt Blue, which is not in the box; add it to paints, or leave it out here`},
		{"left of a paint twice", "[left]\nviridian = \"5 ml\"\nPG18 = \"6 ml\"", `:4: left: "PG18" is Viridian, of which it is said already what is left`},
		{"left in drops", "[left]\nviridian = \"5 drops\"", `:3: left: viridian: "5 drops" is no amount of paint; write it like "37 ml" or "60 g"`},
		{"left without a unit", "[left]\nviridian = 5", `:3: left: viridian: "5" is no amount of paint`},
		{"some left", "[left]\nviridian = true", `:3: left: viridian is true or false; write it like titanium-white = "37 ml" or "60 g"`},
		{"a list of what is left", `left = ["5 ml"]`, `:2: left is a list; write it like left = {titanium-white = "37 ml"}`},

		{"too many regions", manyRegions(26), `:77: 26 regions are too many: name at most 25`},
		{"far too many", manyRegions(10000), `has more than 2500 keys up to here; that is no painting file`},
		{"keys without end", manyKeys(), `:2501: has more than 2500 keys up to here`},

		{"two points", "[[region]]\nname = \"jug\"\noutline = [[1, 1], [2, 2]]", `:4: outline: a ring has too few points, 2; it needs three or more`},
		{"no points", "[[region]]\nname = \"jug\"\noutline = []", `:4: outline: has no points; write three or more`},
		{"a bad point", "[[region]]\nname = \"jug\"\noutline = [\n[1, 1],\n[2, 2, 2],\n[1, 2]]", `:6: outline: a list of 3 is no point; write it like [1.5, 2]: from the left and from the top, in inches`},
		{"a point of text", "[[region]]\nname = \"jug\"\noutline = [[1, 1], [2, \"2\"], [1, 2]]", `:4: outline: text stands in a point`},
		{"not a point", "[[region]]\nname = \"jug\"\noutline = [[1, 1],\n[2, nan], [1, 2]]", `:5: outline: nan is off the panel`},
		{"left of the panel", "[[region]]\nname = \"jug\"\noutline = [[1, 1],\n[-2, 1], [1, 2]]", `:5: outline: -2 is off the panel`},
		{"a mixed list", "[[region]]\nname = \"jug\"\noutline = [[[1, 1], [2, 1], [2, 2]],\n3]", `stands among the rings`},

		{"a paint not owned", region + "palette = [\"yellow-ochre\",\n\"cobalt-blue\"]", `:6: palette: "cobalt-blue" is not in your box; nearest to its colour there are "ultramarine-blue", `},
		{"how to own it", region + "palette = [\"cobalt-blue\"]", `; to use it, add "cobalt-blue" to a list of yours, paints = [...], above the first [[region]]`},
		{"how to own it, with a list", "paints = [\"viridian\"]\n" + region + "palette = [\"cobalt-blue\"]", `nearest to its colour there are "viridian"; to use it, add "cobalt-blue" to paints on line 2`},
		{"a paint unheard of", region + "palette = [\"moon dust\"]", `:5: palette: unknown paint "moon dust"; did you mean `},
		{"the same paint", region + "palette = [\"viridian\", \"PG18\"]", `:5: palette: "PG18" is Viridian, which is listed already`},
		{"an empty palette", region + "palette = []", `:5: palette: names no paint but white; name 1 to 5 others`},
		{"only white", region + "palette = [\"titanium-white\"]", `:5: palette: names no paint but white`},
		{"six paints", region + "palette = [\"titanium-white\", \"viridian\", \"yellow-ochre\", \"burnt-umber\", \"burnt-sienna\", \"ivory-black\", \"pyrrole-red\"]", `:5: palette: "pyrrole-red" is one too many: a palette is 1 to 5 paints, beside white`},
		{"white and no white", region + "white = false\npalette = [\"titanium-white\", \"viridian\"]", `:5: white: is false, but titanium-white is in the palette`},

		{"no white and no palette", region + "white = false", `:5: white: is false, which needs a palette`},
		{"values of what", region + `aim = "value"`, `:5: aim: "value" needs a palette, a scheme or a hue`},

		{"no scheme", region + `scheme = "triad"`, `:5: scheme: "triad" is not known: write "monochrome", "analogous" or "quiet", or "complement of NAME" with another region's name`},
		{"nearly a scheme", region + `scheme = "analagous"`, `did you mean "analogous"?`},
		{"of what", region + `scheme = "complement"`, `:5: scheme: say of which region, like "complement of lemon"`},
		{"of nothing", region + `scheme = "complement of lemon"`, `:5: scheme: there is no region "lemon" to be the complement of; there are jug`},
		{"of nothing, in other letters", region + `scheme = "complement of İncir"`, `:5: scheme: there is no region "İncir" to be the complement of; there are jug`},
		{"of nothing, at length", region + `scheme = "complement of ` + strings.Repeat("n", 100) + `"`, `:5: scheme: there is no region "nnn`},
		{"of itself", region + `scheme = "complement of jug"`, `:5: scheme: "jug" is the complement of "jug": a circle`},
		{"a complement's hue", region + "[[region]]\nname = \"lid\"\ncells = \"B1\"\nscheme = \"complement of jug\"\nhue = \"5R\"", `:9: hue: a complement takes its hue from the other region`},
		{"a circle", region + "scheme = \"complement of lid\"\n[[region]]\nname = \"lid\"\ncells = \"B1\"\nscheme = \"complement of jug\"", `:5: scheme: "jug" is the complement of "lid", which is the complement of "jug": a circle`},

		{"no TOML", `panel 12x16in`, `painting.toml:2:7: a key is set with =`},
		{"a key twice", "panel = \"1x1in\"\npanel = \"1x1in\"", `painting.toml:3:1: panel is set twice; keep one of the two lines`},
		{"a region's key twice", region + "cells = \"B1\"", `painting.toml:5:1: cells is set twice`},
		{"quotes forgotten", `ground = black`, `painting.toml:2:10: what stands here is no value: text is written in straight quotes`},
		{"a word of a value's own", `ground = faded`, `painting.toml:2:10: what stands here is no value`},
		{"curly quotes", `ground = “black”`, `painting.toml:2:10: what stands here is no value`},
		{"an open quote", "ground = \"black\ncell = \"1in\"", `painting.toml:2:16: the quotes that are opened here are not closed`},
		{"an open list", "paints = [\"viridian\"\nground = \"black\"", `painting.toml:3:1: the list before this lacks a comma or its closing ]`},
		{"no comma", "paints = [\"viridian\" \"PG7\"]", `painting.toml:2:22: the list before this lacks a comma`},
		{"one closing bracket", "[[region]\nname = \"jug\"", `painting.toml:2:9: two brackets stand on each side, like [[region]]`},
		{"a decimal comma", `coat = 0,3`, `painting.toml:2:9: one value stands behind a key; decimals have a point`},
		{"no digit", `coat = .3`, `painting.toml:2:8: what stands here is no value`},
		{"a backslash", `photo2 = "C:\pictures"`, `painting.toml:2:13: in "double quotes" a backslash is written twice`},
		{"half a sight", `sight = {kind = "deutan" severity = 1}`, `painting.toml:2:26: what stands in { } is parted by commas`},
		{"one bracket and two", "[region]\nname = \"a\"\n" + region, `write [[region]] each time`},
		{"two brackets and one", "[layer]\nwet = true\n" + coat, `painting.toml:7:3: [[layer]] stands here, and elsewhere layer without its two brackets; write [[layer]] each time`},
		{"depth", "name = " + strings.Repeat("[", 200000), `painting.toml:2:`},
	} {
		t.Run(c.name, func(t *testing.T) {
			start := time.Now()
			_, err := Read(write(t, "photo = \"a.jpg\"\n"+c.text))
			require.Error(t, err)
			assert.Contains(t, err.Error(), "painting.toml:")
			assert.Contains(t, err.Error(), c.want)
			assert.NotContains(t, err.Error(), "\n", "one sentence")
			assert.Less(t, len(err.Error()), 1500)
			assert.Less(t, time.Since(start), 2*time.Second)
			_, usage := errors.AsType[plan.UsageError](err)
			assert.Equal(t, c.name != "no box", usage, "what the file says is wrong usage")
		})
	}
}

// manyKeys would keep the TOML reader busy for two minutes.
func manyKeys() string {
	var b strings.Builder
	for i := range 100000 {
		fmt.Fprintf(&b, "k%d=1\n", i)
	}
	return b.String()
}

func manyRegions(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "[[region]]\nname = \"r%d\"\ncells = \"A1\"\n", i)
	}
	return b.String()
}

// What cannot be read at all is said without a line.
func TestReadNoPaintingFile(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", `painting.toml: names no photo; write photo = "kettle.jpg"`},
		{"ground = \"black\"", `painting.toml: names no photo`},
		{"\xff\xfea\x00", `painting.toml: is written in UTF-16; save it as UTF-8`},
		{strings.Repeat("# note\n", 200000), `painting.toml: over 1 MiB is no painting file`},
		{"name = \"\xff\"", `painting.toml:1:`},
	} {
		_, err := Read(write(t, c.text))
		assert.ErrorContains(t, err, c.want)
	}
	_, err := Read(t.TempDir())
	assert.ErrorContains(t, err, "is a folder, a device or a pipe")
}

// A palette settles its region, so that another can be its complement, and it the other's.
func TestNoCircleWithAPalette(t *testing.T) {
	text := "photo = \"kettle.jpg\"\n[[region]]\nname = \"jug\"\ncells = \"A1\"\nscheme = \"complement of lid\"\npalette = [\"viridian\"]\n" +
		"[[region]]\nname = \"lid\"\ncells = \"B1\"\nscheme = \"complement of jug\"\n"
	_, err := parseText("painting.toml", []byte(text), nil)
	assert.NoError(t, err)
}
