// Days: which coats on which day, what must be dry, what comes after.

package plan

// Days is the schedule of the painting.
type Days struct {
	Start    string    `json:"start,omitempty"` // "2026-12-01"; "": days are counted, not dated
	AWeek    int       `json:"sessions_a_week"`
	Sessions []Session `json:"sessions"`
	After    []Event   `json:"after"` // oiling out, touch dry, varnishing
	Text     string    `json:"text"`
}

// Session is one day at the easel.
type Session struct {
	Number int      `json:"number"` // from 1
	Day    int      `json:"day"`    // from 1, the first session's
	Date   string   `json:"date,omitempty"`
	Coats  []string `json:"coats"`  // ids
	Dry    []string `json:"dry"`    // ids of coats that must be touch dry by now
	Reason string   `json:"reason"` // why not earlier: "waits for A.1 to dry"
	Piles  []Pile   `json:"piles"`  // what to lay out, in order on the palette

	Cautions []string `json:"cautions"` // keys of those the day's coats call for
}

// Event is something to do once the paint is dry, in a range of days.
type Event struct {
	Name string `json:"name"` // "varnish"
	Day  Span   `json:"day"`
	From string `json:"from,omitempty"` // dates
	To   string `json:"to,omitempty"`
	Text string `json:"text"`
}
