package report

import (
	"encoding/base64"
	"encoding/xml"
	"io"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// element is a part of a page, or a text where it has no name.
type element struct {
	name, text string
	attributes map[string]string
	within     *element
	parts      []*element
}

// parsePage reads a page of ours, which closes what it opens but for HTML's empty elements.
func parsePage(t *testing.T, page string) *element {
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	root := &element{name: "page"}
	at := root
	for {
		token, err := d.Token()
		if err == io.EOF {
			return root
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			e := &element{name: token.Name.Local, attributes: map[string]string{}, within: at}
			for _, a := range token.Attr {
				e.attributes[a.Name.Local] = a.Value
			}
			at.parts = append(at.parts, e)
			at = e
		case xml.EndElement:
			at = at.within
		case xml.CharData:
			at.parts = append(at.parts, &element{text: string(token), within: at})
		}
	}
}

// all returns the parts of e at any depth, itself among them, that are so.
func (e *element) all(is func(*element) bool) (list []*element) {
	if is(e) {
		list = append(list, e)
	}
	for _, part := range e.parts {
		list = append(list, part.all(is)...)
	}
	return list
}

// words returns all text in e, its blanks made single.
func (e *element) words() string {
	var b strings.Builder
	for _, part := range e.all(func(p *element) bool { return p.name == "" }) {
		b.WriteString(part.text)
		b.WriteByte(' ')
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

func (e *element) hasClass(class string) bool {
	for _, c := range strings.Fields(e.attributes["class"]) {
		if c == class {
			return true
		}
	}
	return false
}

// closest returns the nearest element around e, or e itself, that is so; nil for none.
func (e *element) closest(is func(*element) bool) *element {
	for ; e != nil; e = e.within {
		if is(e) {
			return e
		}
	}
	return nil
}

func named(name string) func(*element) bool {
	return func(e *element) bool { return e.name == name }
}

func isTag(e *element) bool { return e.hasClass("tag") || e.hasClass("tagmark") }

// rule is a style rule; media is "" where it holds always.
type rule struct {
	media, selector string
	set             map[string]string
}

var (
	comments = regexp.MustCompile(`(?s)/\*.*?\*/`)
	oneRule  = regexp.MustCompile(`(?s)([^{}]+)\{([^{}]*)\}`)
)

// rulesOf reads the page's style; its media blocks are one deep.
func rulesOf(root *element) (rules []rule) {
	var css strings.Builder
	for _, style := range root.all(named("style")) {
		for _, part := range style.parts {
			css.WriteString(part.text)
		}
	}
	rest := comments.ReplaceAllString(css.String(), "")
	for rest != "" {
		at := strings.Index(rest, "@media")
		if at < 0 {
			return append(rules, plainRules("", rest)...)
		}
		rules = append(rules, plainRules("", rest[:at])...)
		open := at + strings.Index(rest[at:], "{")
		depth, end := 1, open+1
		for ; depth > 0 && end < len(rest); end++ {
			switch rest[end] {
			case '{':
				depth++
			case '}':
				depth--
			}
		}
		rules = append(rules, plainRules(strings.TrimSpace(rest[at+len("@media"):open]), rest[open+1:end-1])...)
		rest = rest[end:]
	}
	return rules
}

func plainRules(media, css string) (rules []rule) {
	for _, m := range oneRule.FindAllStringSubmatch(css, -1) {
		r := rule{media, strings.TrimSpace(m[1]), map[string]string{}}
		for _, d := range strings.Split(m[2], ";") {
			if name, value, found := strings.Cut(d, ":"); found {
				r.set[strings.TrimSpace(name)] = strings.TrimSpace(value)
			}
		}
		rules = append(rules, r)
	}
	return rules
}

// imageData returns the bytes of an element's embedded image and its media type; "" where it has none.
func (e *element) imageData(t *testing.T) (media string, data []byte) {
	source := e.attributes["src"]
	if source == "" {
		source = e.attributes["href"]
	}
	head, code, found := strings.Cut(source, ";base64,")
	if !found {
		return "", nil
	}
	data, err := base64.StdEncoding.DecodeString(code)
	require.NoError(t, err)
	return strings.TrimPrefix(head, "data:"), data
}
