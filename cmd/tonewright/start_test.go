package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/match/paint"
	"tonewright/report/painting"
	"tonewright/report/plan"
)

// sameShare is how far a region's share of the panel may be from that found, since its
// outline goes to a ruler's marks. Ours: of the demo none is off by more than 0.0005.
const sameShare = 0.002

// A painting file that is planned from as it was written has the regions that were found.
func TestStartGivesTheRegionsBack(t *testing.T) {
	photo, err := filepath.Abs("../../testdata/kettle.jpg")
	require.NoError(t, err)
	opt := plan.Options{Photo: photo, Box: paint.StarterBox(), Colours: 1}
	found, err := plan.Found(opt)
	require.NoError(t, err)
	text, err := painting.Start{Photo: filepath.ToSlash(photo), Options: opt, Found: found}.Text()
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "painting.toml")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	read, err := painting.Read(file)
	require.NoError(t, err)
	read.Options.Colours = 1
	p, err := plan.Make(read.Options)
	require.NoError(t, err)
	require.Len(t, p.Regions, len(found.Regions))
	for i, r := range p.Regions {
		assert.Equal(t, found.Regions[i].Name, r.Name)
		assert.InDelta(t, found.Regions[i].Share, r.Share, sameShare, r.Name)
	}
}
