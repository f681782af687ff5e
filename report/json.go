package report

import (
	"encoding/json"
	"io"

	"tonewright/report/plan"
)

// JSON writes the plan for other programs to read, indented by one space.
func JSON(w io.Writer, p *plan.Plan) error {
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	e.SetEscapeHTML(false)
	return e.Encode(p)
}
