package report

import (
	"bytes"
	"encoding/json"
	"flag"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/report/plan"
)

var update = flag.Bool("update", false, "write the golden files anew")

var makeDemo = sync.OnceValues(func() (*plan.Plan, error) {
	return plan.Make(plan.Options{Photo: "../testdata/kettle.jpg", Version: "test"})
})

// demoPlan is the plan of the demo photo, made once.
func demoPlan(t *testing.T) *plan.Plan {
	p, err := makeDemo()
	require.NoError(t, err)
	return p
}

// blocksPlan is the plan of four flat blocks of colour, 480 × 360 pixels, with
// two of them named.
func blocksPlan(t *testing.T, first, second string) *plan.Plan {
	m := image.NewRGBA(image.Rect(0, 0, 480, 360))
	blocks := []color.RGBA{{0x2c, 0x1e, 0x18, 255}, {0xb8, 0x60, 0x30, 255}, {0xd8, 0xb0, 0x28, 255}, {0xe8, 0xe6, 0xe0, 255}}
	for y := range 360 {
		for x := range 480 {
			m.SetRGBA(x, y, blocks[x/240+2*(y/180)])
		}
	}
	file := filepath.Join(t.TempDir(), "blocks.png")
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, m))
	require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
	p, err := plan.Make(plan.Options{Photo: file, Version: "test", Regions: []plan.RegionWish{{Name: first, Cells: "A1:F4"}, {Name: second, Cells: "G1:L4"}}})
	require.NoError(t, err)
	return p
}

// The plan as data and the page without its images are as they were last looked
// at and found right; -update writes them anew.
func TestGolden(t *testing.T) {
	p := blocksPlan(t, "dark corner", "orange corner")
	var data, page bytes.Buffer
	require.NoError(t, JSON(&data, p))
	require.NoError(t, pageTemplate.Execute(&page, newPage(p, draw(p))))
	for name, got := range map[string]string{"blocks.json": data.String(), "blocks.html": page.String()} {
		file := filepath.Join("testdata", name+".golden")
		if *update {
			require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.Equal(t, string(want), got, name)
	}
}

// The same photo twice gives the same bytes.
func TestSameBytes(t *testing.T) {
	var one, two bytes.Buffer
	require.NoError(t, HTML(&one, blocksPlan(t, "a", "b")))
	require.NoError(t, HTML(&two, blocksPlan(t, "a", "b")))
	assert.True(t, bytes.Equal(one.Bytes(), two.Bytes()))
}

// The page is one file: it points at nothing outside, and no name breaks it.
func TestPageIsClosed(t *testing.T) {
	hostile := `<script>alert(1)</script>"'&<img:0>` + strings.Repeat("x", 500)
	var out bytes.Buffer
	require.NoError(t, HTML(&out, blocksPlan(t, hostile, `</style><a href="https://example.org">`)))
	page := out.String()
	assert.NotContains(t, page, "ZgotmplZ")
	assert.NotContains(t, page, "<script")
	assert.NotContains(t, page, "<img:")
	assert.NotContains(t, page, `<a href="http`)
	assert.Contains(t, page, "&lt;script&gt;alert(1)")
	assert.NotRegexp(t, `url\([^#]|@import|<link|<iframe`, page)
	for _, m := range regexp.MustCompile(`(?:src|href)="([^"]{1,40})`).FindAllStringSubmatch(page, -1) {
		assert.True(t, strings.HasPrefix(m[1], "data:image/") || strings.HasPrefix(m[1], "#"), m[1])
	}
	for _, m := range regexp.MustCompile(`style="[^"]*"`).FindAllString(page, -1) {
		assert.Regexp(t, `^style="background:#[0-9a-f]{6};color:#[0-9a-f]{6}"$`, m)
	}
}

// The exported plan has the keys other programs read, and no null.
func TestJSONKeys(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, JSON(&out, blocksPlan(t, "a", "b")))
	assert.NotContains(t, out.String(), "null")
	var p map[string]any
	require.NoError(t, json.Unmarshal(out.Bytes(), &p))
	at := func(v any, path ...any) any {
		for _, step := range path {
			switch step := step.(type) {
			case string:
				require.Contains(t, v, step)
				v = v.(map[string]any)[step]
			case int:
				v = v.([]any)[step]
			}
		}
		return v
	}
	for _, path := range []string{
		"tool", "version", "photo.file", "photo.width", "photo.height", "photo.profile", "photo.orientation",
		"panel.width_mm", "panel.height_mm", "panel.ground", "panel.crop.x", "panel.crop.y", "panel.crop.width", "panel.crop.height",
		"grid.cell_mm", "grid.columns", "grid.rows", "grid.scale",
		"value_key.mode", "value_key.photo_min", "value_key.photo_max", "value_key.paint_min", "value_key.paint_max",
	} {
		var steps []any
		for _, s := range strings.Split(path, ".") {
			steps = append(steps, s)
		}
		at(p, steps...)
	}
	region := at(p, "regions", 0)
	for _, key := range []string{"name", "cells", "share", "role"} {
		at(region, key)
	}
	c := at(region, "colours", 0)
	for _, key := range []string{"id", "share", "lab", "aim_lab", "munsell", "name", "srgb", "alternatives"} {
		at(c, key)
	}
	assert.Len(t, at(c, "lab"), 3)
	for _, key := range []string{"lab", "munsell", "delta_e", "value_shift", "note"} {
		at(c, "recipe", key)
	}
	for _, key := range []string{"paint", "name", "parts"} {
		at(c, "recipe", "parts", 0, key)
	}
	for _, key := range []string{"kind", "text", "where"} {
		at(p, "warnings", 0, key)
	}
}
