// Package report writes a plan down: as one HTML file and as JSON. It computes
// nothing about colour or paint; it only words, draws and lays out.
package report

import (
	"bytes"
	"embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
	"strconv"

	"tonewright/report/plan"
)

//go:embed html
var files embed.FS

var (
	pageTemplate = template.Must(template.New("page.html").ParseFS(files, "html/*.html"))
	pageCSS      = mustRead("html/page.css") + mustRead("html/section.css") + mustRead("html/harmony.css") + mustRead("html/drawing.css") + mustRead("html/work.css")
	printCSS     = mustRead("html/print.css") // last: it undoes rules of the screen
)

func mustRead(name string) string {
	text, err := files.ReadFile(name)
	if err != nil {
		panic(err)
	}
	return string(text)
}

// HTML writes the plan as one page that needs nothing else: no network, no script.
// Names from the painter or the file reach it as text only.
func HTML(w io.Writer, p *plan.Plan) error {
	art := draw(p)
	var page bytes.Buffer
	if err := pageTemplate.Execute(&page, newPage(p, art)); err != nil {
		return fmt.Errorf("report: %w", err)
	}
	return fill(w, page.Bytes(), art.files)
}

// picture is an encoded image and its media type.
type picture struct {
	media string
	data  []byte
}

// The template carries only a mark where an image goes, and fill streams the
// images in: html/template takes 30 ms to escape 2 MB. A mark holds < and >,
// which text from outside can never bring into the page.
const (
	markStart = "<img:"
	markEnd   = ">"
)

// image returns the attribute attr with the mark of image n in it.
func (a *art) image(attr string, n int) template.HTMLAttr {
	return template.HTMLAttr(attr + `="` + markStart + strconv.Itoa(n) + markEnd + `"`)
}

// fill copies the page with every mark replaced by its image as a data URI.
func fill(w io.Writer, page []byte, pictures []picture) error {
	for {
		before, rest, found := bytes.Cut(page, []byte(markStart))
		if _, err := w.Write(before); err != nil {
			return err
		}
		if !found {
			return nil
		}
		number, after, _ := bytes.Cut(rest, []byte(markEnd))
		n, err := strconv.Atoi(string(number))
		if err != nil || n < 0 || n >= len(pictures) {
			return fmt.Errorf("report: no image %q", number)
		}
		if err := writeDataURI(w, pictures[n]); err != nil {
			return err
		}
		page = after
	}
}

func writeDataURI(w io.Writer, p picture) error {
	if _, err := io.WriteString(w, "data:"+p.media+";base64,"); err != nil {
		return err
	}
	e := base64.NewEncoder(base64.StdEncoding, w)
	if _, err := e.Write(p.data); err != nil {
		return err
	}
	return e.Close()
}
