// A page written as SVG.

package sheet

import (
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"io"
	"strconv"
	"strings"

	"tonewright/grid"
)

// SVG writes page i as a file of the page's size, one unit to the millimetre. The same
// book gives the same bytes.
func SVG(w io.Writer, book Book, i int) error {
	p := book.Pages[i]
	var c svgCanvas
	fmt.Fprintf(&c.b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %[1]s %[2]s" font-family="%s, 'Liberation Sans', Arial, Helvetica, sans-serif" stroke-linecap="round" stroke-linejoin="round">`+"\n",
		mm(p.Width), mm(p.Height), fontName)
	fmt.Fprintf(&c.b, "<title>%s</title>\n", escaped(book.Title))
	paper := Gray(255)
	frame(Pen{}, grid.Box{Width: p.Width, Height: p.Height}, &paper).on(&c)
	for _, m := range p.Marks {
		m.on(&c)
	}
	c.b.WriteString("</svg>\n")
	_, err := io.WriteString(w, c.b.String())
	return err
}

// svgCanvas collects the marks as text.
type svgCanvas struct {
	b     strings.Builder
	clips int
}

func (c *svgCanvas) path(p Path) {
	c.b.WriteString(`<path d="`)
	for _, run := range p.Runs {
		for i, at := range run {
			c.b.WriteByte("ML"[min(i, 1)])
			c.b.WriteString(mm(at.X) + " " + mm(at.Y))
		}
		if p.Closed {
			c.b.WriteByte('Z')
		}
	}
	fill := "none"
	if p.Fill != nil {
		fill = p.Fill.hex() + `" fill-rule="evenodd`
	}
	fmt.Fprintf(&c.b, `" fill="%s"`, fill)
	if p.Pen.Width > 0 {
		fmt.Fprintf(&c.b, ` stroke="%s" stroke-width="%s"`, p.Pen.Gray.hex(), mm(p.Pen.Width))
	}
	if p.Pen.Dash > 0 {
		fmt.Fprintf(&c.b, ` stroke-dasharray="%s"`, mm(p.Pen.Dash))
	}
	c.b.WriteString("/>\n")
}

func (c *svgCanvas) text(t Text) {
	fmt.Fprintf(&c.b, `<text x="%s" y="%s" font-size="%s" fill="%s"`, mm(t.At.X), mm(t.At.Y), mm(t.Size), t.Gray.hex())
	if t.Bold {
		c.b.WriteString(` font-weight="bold"`)
	}
	if t.Align != Left {
		fmt.Fprintf(&c.b, ` text-anchor="%s"`, [...]string{Centre: "middle", Right: "end"}[t.Align])
	}
	fmt.Fprintf(&c.b, ">%s</text>\n", escaped(printable(t.Words, t.Bold)))
}

func (c *svgCanvas) image(i Image) {
	fmt.Fprintf(&c.b, `<image x="%s" y="%s" width="%s" height="%s" preserveAspectRatio="none" href="data:image/jpeg;base64,%s"/>`+"\n",
		mm(i.Box.X), mm(i.Box.Y), mm(i.Box.Width), mm(i.Box.Height), base64.StdEncoding.EncodeToString(i.JPEG))
}

func (c *svgCanvas) clip(k Clip) {
	c.clips++
	fmt.Fprintf(&c.b, `<clipPath id="c%d"><rect x="%s" y="%s" width="%s" height="%s"/></clipPath><g clip-path="url(#c%[1]d)">`+"\n",
		c.clips, mm(k.Box.X), mm(k.Box.Y), mm(k.Box.Width), mm(k.Box.Height))
	for _, m := range k.Marks {
		m.on(c)
	}
	c.b.WriteString("</g>\n")
}

// mm prints a length to a thousandth of a millimetre.
func mm(m grid.Millimetres) string {
	text := strconv.FormatFloat(float64(m), 'f', 3, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

// hex returns the gray as a colour of SVG.
func (g Gray) hex() string { return fmt.Sprintf("#%02[1]x%02[1]x%02[1]x", uint8(g)) }

// escaped returns words as XML text.
func escaped(words string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(words)) // a builder takes all
	return b.String()
}
