package report

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/report/plan"
)

// hardPlan is a worked plan whose words need escaping, folding and cleaning.
func hardPlan(t *testing.T) *plan.Plan {
	p := workedPlan(t)
	p.Name = "Kettle; copper, \\brass\\ \"and\" tin: один медный чайник, 銅のやかん、" + strings.Repeat("é", 90) + "\r\nwith \x07bell\xff\xfe"
	p.Regions = slices.Clone(p.Regions)
	p.Regions[0].Name = "🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖🫖"
	return p
}

func calendarOf(t *testing.T, p *plan.Plan) string {
	var b bytes.Buffer
	require.NoError(t, Calendar(&b, p))
	return b.String()
}

// The calendar keeps the rules of RFC 5545 that a reader may forgive.
func TestCalendarIsStrict(t *testing.T) {
	for _, p := range []*plan.Plan{workedPlan(t), hardPlan(t)} {
		text := calendarOf(t, p)
		require.True(t, utf8.ValidString(text), "3.1.4: UTF-8")
		assert.Equal(t, strings.Count(text, "\n"), strings.Count(text, "\r\n"), "3.1: lines end in CRLF")
		assert.Equal(t, strings.Count(text, "\r"), strings.Count(text, "\r\n"), "no CR by itself")
		require.True(t, strings.HasSuffix(text, "\r\n"))
		for _, line := range strings.Split(text, "\r\n") {
			assert.LessOrEqual(t, len(line), 75, "3.1: octets of a line: %q", line)
			assert.True(t, utf8.ValidString(line), "3.1: a character is not folded apart: %q", line)
			assert.NotRegexp(t, `[\x00-\x08\x0b-\x1f\x7f]`, line, "control characters")
		}
		checkComponents(t, strings.Split(strings.TrimSuffix(unfold(text), "\r\n"), "\r\n"), len(p.Days.Sessions)+len(p.Days.After))
	}
}

func unfold(text string) string { return strings.ReplaceAll(text, "\r\n ", "") }

// checkComponents checks unfolded lines: 3.4, 3.6 and 3.6.1, what has to be there and once.
func checkComponents(t *testing.T, lines []string, events int) {
	assert.Equal(t, "BEGIN:VCALENDAR", lines[0])
	assert.Equal(t, "END:VCALENDAR", lines[len(lines)-1])
	within, seen, n := "VCALENDAR", map[string]int{}, 0
	uids := map[string]bool{}
	for _, line := range lines[1 : len(lines)-1] {
		name, value, found := strings.Cut(line, ":")
		require.True(t, found, line)
		switch name {
		case "BEGIN":
			require.Equal(t, "VCALENDAR", within)
			if n == 0 {
				assert.Equal(t, 1, seen["VERSION"], "3.7.4")
				assert.Equal(t, 1, seen["PRODID"], "3.7.3")
			}
			within, seen = value, map[string]int{}
			n++
		case "END":
			require.Equal(t, within, value)
			for _, must := range []string{"UID", "DTSTAMP", "DTSTART;VALUE=DATE", "DTEND;VALUE=DATE", "SUMMARY"} {
				assert.Equal(t, 1, seen[must], "%s of an event", must)
			}
			within = "VCALENDAR"
		case "UID":
			assert.False(t, uids[value], "3.8.4.7: %s twice", value)
			uids[value] = true
		case "DTSTAMP":
			assert.Regexp(t, `^\d{8}T\d{6}Z$`, value, "3.8.7.2: in UTC")
		case "DTSTART;VALUE=DATE", "DTEND;VALUE=DATE":
			assert.Regexp(t, `^\d{8}$`, value, "3.3.4")
		case "SUMMARY", "DESCRIPTION", "NAME":
			assert.NotRegexp(t, `(?:^|[^\\])(?:\\\\)*[,;]`, value, "3.3.11: escaped")
			assert.NotRegexp(t, `(?:^|[^\\])(?:\\\\)*\\[^\\;,nN]`, value, "3.3.11: nothing else is escaped")
		}
		seen[name]++
	}
	assert.Equal(t, events, n)
}

// Debian's python3-icalendar, which shares nothing with the library that writes, reads
// the same events back, text for text.
func TestCalendarReadBack(t *testing.T) {
	const python = "/usr/bin/python3"
	if err := exec.Command(python, "-c", "import icalendar").Run(); err != nil {
		if os.Getenv("TONEWRIGHT_BROWSER") == "required" {
			t.Fatal("no python3-icalendar: apt-get install python3-icalendar")
		}
		t.Skip("no python3-icalendar here: the calendar is not read back by another parser")
	}
	for _, p := range []*plan.Plan{workedPlan(t), hardPlan(t)} {
		read := exec.Command(python, "-c", `
import sys, json, datetime, icalendar
cal = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
assert not cal.errors, cal.errors
out = {"name": str(cal["NAME"]), "events": []}
for e in cal.walk("VEVENT"):
    assert not e.errors, e.errors
    day = e["DTSTART"].dt
    assert type(day) is datetime.date, day
    assert e["DTEND"].dt - day == datetime.timedelta(days=1), e["DTEND"]
    out["events"].append({"date": day.isoformat(), "summary": str(e["SUMMARY"]), "text": str(e.get("DESCRIPTION", "")), "stamp": e["DTSTAMP"].dt.isoformat()})
json.dump(out, sys.stdout)`)
		read.Stdin = strings.NewReader(calendarOf(t, p))
		out, err := read.Output()
		if exit := (&exec.ExitError{}); errors.As(err, &exit) {
			t.Fatal(string(exit.Stderr))
		}
		require.NoError(t, err)
		var got struct {
			Name   string
			Events []struct{ Date, Summary, Text, Stamp string }
		}
		require.NoError(t, json.Unmarshal(out, &got))
		name := strings.NewReplacer("\r", "", "\x07", "", "\xff", "", "\xfe", "").Replace(p.Name)
		assert.Equal(t, name, got.Name)
		require.Len(t, got.Events, len(p.Days.Sessions)+len(p.Days.After))
		for i, s := range p.Days.Sessions {
			e := got.Events[i]
			assert.Equal(t, s.Date, e.Date)
			assert.Equal(t, "2026-11-30T00:00:00+00:00", e.Stamp)
			assert.True(t, strings.HasPrefix(e.Summary, name+": "), e.Summary)
			assert.Contains(t, e.Summary, coatNamerOf(p).passes(s.Coats, 1))
			for _, pile := range s.Piles {
				assert.Contains(t, e.Text, "\n"+pile.ID+": "+partsText(pile.Parts)+"; 1.2 ml")
			}
		}
		last := got.Events[len(got.Events)-1]
		assert.Equal(t, "2027-06-17", last.Date)
		assert.Equal(t, name+": varnish, 17 Jun 2027 to 17 Dec 2027", last.Summary)
		assert.Equal(t, p.Days.After[1].Text, last.Text)
	}
}

// Summaries and descriptions in full, of a session that waits.
func TestCalendarWords(t *testing.T) {
	p := workedPlan(t)
	p.Name, p.Regions = "Copper kettle", slices.Clone(p.Regions)
	p.Regions[0].Name = "wall"
	p.Days.Sessions = p.Days.Sessions[:1]
	s := &p.Days.Sessions[0]
	s.Coats, s.Dry, s.Reason, s.Piles = []string{"A.1", "B.1", "A.2"}, []string{"B.1"}, "waits for B.1 to dry", s.Piles[:1]
	text := unfold(calendarOf(t, p))
	assert.Contains(t, text, `SUMMARY:Copper kettle: block-in of wall\, B\; next pass of wall`+"\r\n", "a name with a comma goes by its tag")
	assert.Contains(t, text, `DESCRIPTION:Check\nTry with a thumb that these are dry: B.\n\nLay out\nI1: `)
	assert.Contains(t, text, `\n\nPaint\nA.1 block-in of wall: A1\, A2\, A3\; with solvent 1:4\n`)
	assert.Contains(t, text, `\n\nCare\ncadmium: no dry sanding\, no spraying\; solvent: open a window.\n\n`)
	assert.Contains(t, text, `\; into A.1 while that is wet\n`)
	assert.Contains(t, text, `Waits for B.1 to dry.`+"\r\n")
}

// The same plan gives the same bytes, events of other paintings and starts other UIDs.
func TestCalendarIsStable(t *testing.T) {
	uids := func(p *plan.Plan) []string { return regexp.MustCompile(`UID:\S+`).FindAllString(calendarOf(t, p), -1) }
	p, other, later := workedPlan(t), workedPlan(t), workedPlan(t)
	assert.Equal(t, calendarOf(t, p), calendarOf(t, p))
	other.Name, later.Days.Start = "another", "2026-12-01"
	for _, uid := range uids(p) {
		assert.NotContains(t, uids(other), uid)
		assert.NotContains(t, uids(later), uid)
	}
}

// Without dates there is no calendar, and the error says what to give.
func TestCalendarNeedsDates(t *testing.T) {
	p := workedPlan(t)
	p.Days.Start = ""
	assert.ErrorContains(t, Calendar(&bytes.Buffer{}, p), "give the first session's, like 2026-12-01")
	p.Days.Start = "tomorrow"
	assert.ErrorContains(t, Calendar(&bytes.Buffer{}, p), `"tomorrow"`)
	p = workedPlan(t)
	p.Days.Sessions[1].Date = "2026-02-30"
	assert.ErrorContains(t, Calendar(&bytes.Buffer{}, p), `session 2 is on "2026-02-30"`)
}
