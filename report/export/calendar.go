package export

import (
	"bytes"
	"errors"

	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"cutbrief/assess/sanitize"
	"cutbrief/report"
	"cutbrief/rules/message"
)

// Reasons why a follow-up has no place in a calendar.
var (
	ErrNoStep = errors.New("no next step is recorded")
	ErrNoDate = errors.New("the next step has no date")
	ErrNoID   = errors.New("the visit has no identifier")
	errEmpty  = errors.New("a calendar holds one follow-up or more") // RFC 5545, 3.6
)

// ErrTwice means that two follow-ups are of one visit, and would be one entry.
var ErrTwice = errors.New("two follow-ups are of the same visit")

// CalendarError says which follow-up has no place in a calendar, counted from 0,
// and why. Other is the one of the same visit where that is why.
type CalendarError struct {
	Entry, Other int
	Err          error
}

// Error is the reason alone; who has the files names the one.
func (e *CalendarError) Error() string { return e.Err.Error() }

// Unwrap is the reason.
func (e *CalendarError) Unwrap() error { return e.Err }

// Hint is the command that corrects the visit of the follow-up, without its file.
func (e *CalendarError) Hint() message.ID {
	if errors.Is(e.Err, ErrNoID) {
		return "save the visit anew with: cutbrief interview {1}"
	}
	return "note it with: cutbrief record {1}"
}

// Calendar writes next steps as an iCalendar file (RFC 5545), for any calendar
// program: a whole day for each. It adds nothing to what the records say, and
// takes no time from the clock: the same records give the same bytes. The
// identifier of an event is the visit's, and its sequence the number of times the
// visit was saved, so that a second import moves the event instead of adding one
// (RFC 5545, 3.8.4.7 and 3.8.7.4). Every text is made safe once more, so that no
// control character reaches the file.
func Calendar(list []report.FollowUp) ([]byte, error) {
	out := []string{"BEGIN:VCALENDAR", "METHOD:PUBLISH", "PRODID:-//cutbrief//follow-up//EN", "VERSION:2.0"}
	seen := map[string]int{}
	for i := range list {
		if other, twice := seen[list[i].ID]; twice {
			return nil, &CalendarError{i, other, ErrTwice}
		}
		seen[list[i].ID] = i
		event, err := eventOf(&list[i])
		if err != nil {
			return nil, &CalendarError{Entry: i, Err: err}
		}
		out = append(out, event...)
	}
	if len(seen) == 0 {
		return nil, errEmpty
	}
	return fold(append(out, "END:VCALENDAR")), nil
}

// lastYear is the last that a date has digits for (RFC 5545, 3.3.4). An event
// without an end lasts its one day (3.6.1).
const lastYear = 9999

func eventOf(f *report.FollowUp) ([]string, error) {
	switch {
	case f.ID == "":
		return nil, ErrNoID
	case f.Step == "":
		return nil, ErrNoStep
	case f.Due.IsZero():
		return nil, ErrNoDate
	}
	e := []string{"BEGIN:VEVENT", "DESCRIPTION:" + calendarText(sanitize.Lines(description(f)))}
	if next := f.Due.AddDate(0, 0, 1); next.Year() <= lastYear {
		e = append(e, "DTEND;VALUE=DATE:"+next.Format(dateForm))
	}
	saved := stamp(f).Format(stampForm)
	e = append(e, "DTSTAMP:"+saved, "DTSTART;VALUE=DATE:"+f.Due.Format(dateForm), "LAST-MODIFIED:"+saved)
	if place := sanitize.Line(f.Place); place != "" {
		e = append(e, "LOCATION:"+calendarText(place))
	}
	return append(e, "SEQUENCE:"+strconv.Itoa(f.Revision), "SUMMARY:"+calendarText(sanitize.Line(summary(f))),
		"TRANSP:TRANSPARENT", // it blocks no meeting
		"UID:"+calendarText(sanitize.Line(f.ID)+"-next@cutbrief"), "END:VEVENT"), nil
}

// Dates and times as RFC 5545, 3.3.4 and 3.3.5, writes them.
const (
	dateForm  = "20060102"
	stampForm = "20060102T150405Z"
)

// calendarText is a text as RFC 5545, 3.3.11, writes it.
func calendarText(text string) string {
	return strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\n", `\n`).Replace(text)
}

// stamp is when the record was last saved; one that does not say so is as old as
// the demonstration, or else as its next step.
func stamp(f *report.FollowUp) time.Time {
	for _, t := range []time.Time{f.Saved, f.Held} {
		if !t.IsZero() {
			return t.UTC()
		}
	}
	return f.Due.UTC()
}

func summary(f *report.FollowUp) string {
	text := strings.TrimSuffix(f.Step, ".")
	if f.Customer != "" {
		text += " – " + f.Customer
	}
	if f.Demo {
		text += " (invented)"
	}
	return text
}

// description lists what whoever does the step has to know.
func description(f *report.FollowUp) string {
	lines := []string{"Shown: " + sanitize.Line(f.Shown)}
	for _, l := range []report.Line{{Label: "By", Value: f.Owner}, {Label: "Contact", Value: f.Contact}, {Label: "Outcome", Value: string(f.Outcome)}, {Label: "Because", Value: f.Because}} {
		if l.Value != "" {
			lines = append(lines, l.Label+": "+sanitize.Line(l.Value))
		}
	}
	return strings.Join(lines, "\n")
}

// foldAt is the longest line in bytes, without its end (RFC 5545, 3.1).
const foldAt = 75

// fold ends lines and breaks long ones as the standard asks: the rest goes to the
// next line behind a space, and no character is taken apart.
func fold(lines []string) []byte {
	var out bytes.Buffer
	for _, text := range lines {
		for room := foldAt; len(text) > room; room = foldAt - 1 {
			cut := room
			for cut > 1 && !utf8.RuneStart(text[cut]) {
				cut--
			}
			out.WriteString(text[:cut] + "\r\n ")
			text = text[cut:]
		}
		out.WriteString(text + "\r\n")
	}
	return out.Bytes()
}
