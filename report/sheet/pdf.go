// Pages written as PDF.

package sheet

import (
	"bytes"
	"fmt"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"tonewright/grid"
)

// PDF writes all pages as one file. The same book gives the same bytes.
func PDF(w io.Writer, book Book) error {
	f := fpdf.New("P", "mm", "A4", "")
	f.SetCatalogSort(true)
	fixed := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) // the file tells no day, and the library would put today's
	f.SetCreationDate(fixed)
	f.SetModificationDate(fixed)
	f.SetTitle(printable(book.Title, false), true)
	f.SetCreator(printable(book.Program, false), true)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.AddUTF8FontFromBytes(fontName, "", goregular.TTF)
	f.AddUTF8FontFromBytes(fontName, "B", gobold.TTF)
	f.SetLineCapStyle("round")
	f.SetLineJoinStyle("round")
	c := pdfCanvas{f: f}
	for _, p := range book.Pages {
		f.AddPageFormat("P", fpdf.SizeType{Wd: float64(p.Width), Ht: float64(p.Height)})
		for _, m := range p.Marks {
			m.on(&c)
		}
	}
	var b bytes.Buffer
	if err := f.Output(&b); err != nil {
		return fmt.Errorf("the sheets could not be written as PDF: %w", err)
	}
	pdf, err := unscaled(b.Bytes())
	if err != nil {
		return err
	}
	_, err = w.Write(pdf)
	return err
}

// pdfCanvas draws marks on the last page.
type pdfCanvas struct {
	f      *fpdf.Fpdf
	images int
}

func (c *pdfCanvas) path(p Path) {
	c.pen(p.Pen)
	for _, run := range p.Runs {
		for i, at := range run {
			if i == 0 {
				c.f.MoveTo(float64(at.X), float64(at.Y))
			} else {
				c.f.LineTo(float64(at.X), float64(at.Y))
			}
		}
		if p.Closed {
			c.f.ClosePath()
		}
	}
	style := "D"
	if p.Fill != nil {
		c.f.SetFillColor(int(*p.Fill), int(*p.Fill), int(*p.Fill))
		style = "DF*"
		if p.Pen.Width == 0 {
			style = "F*"
		}
	}
	c.f.DrawPath(style)
}

func (c *pdfCanvas) pen(p Pen) {
	c.f.SetLineWidth(float64(p.Width))
	c.f.SetDrawColor(int(p.Gray), int(p.Gray), int(p.Gray))
	var dash []float64
	if p.Dash > 0 {
		dash = []float64{float64(p.Dash), float64(p.Dash)}
	}
	c.f.SetDashPattern(dash, 0)
}

func (c *pdfCanvas) text(t Text) {
	style := ""
	if t.Bold {
		style = "B"
	}
	words := printable(t.Words, t.Bold)
	c.f.SetFont(fontName, style, float64(t.Size)/25.4*72)
	c.f.SetTextColor(int(t.Gray), int(t.Gray), int(t.Gray))
	c.f.Text(float64(t.left()), float64(t.At.Y), words)
}

// left returns where the text begins.
func (t Text) left() grid.Millimetres {
	switch t.Align {
	case Centre:
		return t.At.X - widthOf(t.Words, t.Size, t.Bold)/2
	case Right:
		return t.At.X - widthOf(t.Words, t.Size, t.Bold)
	}
	return t.At.X
}

func (c *pdfCanvas) image(i Image) {
	c.images++
	name := fmt.Sprint(c.images)
	jpeg := fpdf.ImageOptions{ImageType: "JPG"}
	c.f.RegisterImageOptionsReader(name, jpeg, bytes.NewReader(i.JPEG))
	c.f.ImageOptions(name, float64(i.Box.X), float64(i.Box.Y), float64(i.Box.Width), float64(i.Box.Height), false, jpeg, 0, "")
}

func (c *pdfCanvas) clip(k Clip) {
	c.f.ClipRect(float64(k.Box.X), float64(k.Box.Y), float64(k.Box.Width), float64(k.Box.Height), false)
	for _, m := range k.Marks {
		m.on(c)
	}
	c.f.ClipEnd()
}
