package report

import (
	"encoding/json"
	"io"
)

// JSON writes a plan or an answer for other programs to read, indented by one space.
func JSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}
