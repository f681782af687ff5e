module tonewright

go 1.26.0

require (
	codeberg.org/go-pdf/fpdf v0.12.0
	github.com/arran4/golang-ical v0.3.4
	github.com/chromedp/cdproto v0.159.0
	github.com/chromedp/chromedp v0.23.0
	github.com/disintegration/imaging v1.6.2
	github.com/gen2brain/heic v0.4.5
	github.com/kovidgoyal/imaging v1.9.0
	github.com/lucasb-eyer/go-colorful v1.4.1
	github.com/muesli/clusters v0.0.0-20200529215643-2700303c1762
	github.com/pelletier/go-toml/v2 v2.4.3
	github.com/rogpeppe/go-internal v1.16.0
	github.com/schollz/progressbar/v3 v3.19.1
	github.com/spf13/pflag v1.1.0
	github.com/stretchr/testify v1.12.1
	golang.org/x/image v0.47.0
	golang.org/x/term v0.44.0
)

require (
	github.com/ebitengine/purego v0.8.3 // indirect
	github.com/go-json-experiment/json v0.0.0-20260213210345-44df1a37e875 // indirect
	github.com/kovidgoyal/go-parallel v1.1.1 // indirect
	github.com/mitchellh/colorstring v0.0.0-20190213212951-d06e56a500db // indirect
	github.com/rivo/uniseg v0.4.7 // indirect
	github.com/tetratelabs/wazero v1.9.0 // indirect
	go.yaml.in/yaml/v3 v3.0.5 // indirect
	golang.org/x/sys v0.49.0 // indirect
	golang.org/x/tools v0.26.0 // indirect
)
