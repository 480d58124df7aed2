package export

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/report"

	ics "github.com/arran4/golang-ical" // independent of the one that writes
	"pgregory.net/rapid"
)

// quote is an invented next step.
func quote() report.FollowUp {
	return report.FollowUp{
		ID: "v1", Revision: 4, Saved: time.Date(2026, 12, 1, 16, 5, 0, 0, time.FixedZone("", 3600)),
		Customer: "Brook Farm; Sons, Ltd", Contact: "M. Brook", Place: "Mill Lane 3, Orvenby", Shown: "1 December 2026, with Demo 45",
		Outcome: assess.Quote, Because: "the owner decides", Step: "Send the quote.", Owner: "J. Weaver", Due: time.Date(2026, 12, 8, 0, 0, 0, 0, time.UTC),
	}
}

func calendarOf(t testing.TB, list ...report.FollowUp) []byte {
	t.Helper()
	data, err := Calendar(list)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// read is the calendar as the independent library sees it.
func read(t interface{ Fatal(...any) }, data []byte) *ics.Calendar {
	cal, err := ics.ParseCalendar(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err, string(data))
	}
	return cal
}

func valueOf(e *ics.VEvent, p ics.ComponentProperty) string {
	if prop := e.GetProperty(p); prop != nil {
		return prop.Value
	}
	return ""
}

// What an independent library reads back. 16:05 one hour east of Greenwich is
// 15:05 UTC; a whole day ends where the next begins (RFC 5545, 3.6.1).
func TestAnotherLibraryReadsTheSame(t *testing.T) {
	cal := read(t, calendarOf(t, quote()))
	if len(cal.Events()) != 1 {
		t.Fatalf("%d events", len(cal.Events()))
	}
	e := cal.Events()[0]
	for p, want := range map[ics.ComponentProperty]string{
		ics.ComponentPropertyUniqueId: "v1-next@cutbrief", ics.ComponentPropertySequence: "4", ics.ComponentPropertyDtstamp: "20261201T150500Z",
		ics.ComponentPropertyDtStart: "20261208", ics.ComponentPropertyDtEnd: "20261209", ics.ComponentPropertySummary: "Send the quote – Brook Farm; Sons, Ltd",
		ics.ComponentPropertyLocation: "Mill Lane 3, Orvenby",
	} {
		if got := valueOf(e, p); got != want {
			t.Errorf("%s: %q, want %q", p, got, want)
		}
	}
	if start, err := e.GetAllDayStartAt(); err != nil || start.Format("2006-01-02") != "2026-12-08" {
		t.Errorf("starts %v, %v", start, err)
	}
	want := "Shown: 1 December 2026, with Demo 45\nBy: J. Weaver\nContact: M. Brook\nOutcome: quote\nBecause: the owner decides"
	if got := valueOf(e, ics.ComponentPropertyDescription); got != want {
		t.Errorf("described as %q", got)
	}
}

// A second import updates: the identifier stays, the sequence grows.
func TestSecondImportUpdates(t *testing.T) {
	later := quote()
	later.Revision, later.Due, later.Step = 5, later.Due.Add(48*time.Hour), "Call"
	a, b := read(t, calendarOf(t, quote())).Events()[0], read(t, calendarOf(t, later)).Events()[0]
	if valueOf(a, ics.ComponentPropertyUniqueId) != valueOf(b, ics.ComponentPropertyUniqueId) || valueOf(a, ics.ComponentPropertySequence) >= valueOf(b, ics.ComponentPropertySequence) {
		t.Error("the later event does not replace the earlier one")
	}
	if !bytes.Equal(calendarOf(t, quote()), calendarOf(t, quote())) {
		t.Error("the same record gives other bytes")
	}
}

// The clock is never asked: a record without the time of its saving takes the
// day of the demonstration, or that of the step.
func TestStampIsTheRecords(t *testing.T) {
	f := quote()
	f.Saved, f.Held = time.Time{}, time.Date(2026, 12, 1, 0, 0, 0, 0, time.UTC)
	if got := valueOf(read(t, calendarOf(t, f)).Events()[0], ics.ComponentPropertyDtstamp); got != "20261201T000000Z" {
		t.Errorf("%q", got)
	}
	f.Held = time.Time{}
	if got := valueOf(read(t, calendarOf(t, f)).Events()[0], ics.ComponentPropertyDtstamp); got != "20261208T000000Z" {
		t.Errorf("%q", got)
	}
}

func TestWhatIsMissingIsNamed(t *testing.T) {
	for want, change := range map[error]func(*report.FollowUp){
		ErrNoStep: func(f *report.FollowUp) { f.Step = "" },
		ErrNoDate: func(f *report.FollowUp) { f.Due = time.Time{} },
		ErrNoID:   func(f *report.FollowUp) { f.ID = "" },
	} {
		f := quote()
		change(&f)
		if _, err := Calendar([]report.FollowUp{f}); !errors.Is(err, want) {
			t.Errorf("%v, want %v", err, want)
		}
	}
}

// Whatever the texts hold, nothing breaks out of its line: one event stays one
// event with the texts it was given, each line ends in CR LF and has at most 75
// bytes of whole characters (RFC 5545, 3.1).
func TestTextsCannotBreakOut(t *testing.T) {
	hostile := []string{
		"a\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nUID:x", "a\nATTENDEE:mailto:x@example.org", "BEGIN:VALARM", `a\nb\,c\;d\\`, `"quoted";x=1:y`, "a;b,c:d",
		strings.Repeat("ü", 200), strings.Repeat("株", 100), strings.Repeat("word ", 60), "\x00\x07\x1b[31m", "\u2028\u0085", " lead", "",
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.SampledFrom(hostile), rapid.String())
		f := quote()
		f.Customer, f.Contact, f.Place, f.Owner, f.Because = text.Draw(t, "customer"), text.Draw(t, "contact"), text.Draw(t, "place"), text.Draw(t, "owner"), text.Draw(t, "because")
		f.Step, f.ID = "s"+text.Draw(t, "step"), "v"+text.Draw(t, "id")
		data, err := Calendar([]report.FollowUp{f})
		if err != nil {
			t.Fatal(err)
		}
		lines, begun := strings.SplitAfter(string(data), "\r\n"), 0
		for i, l := range lines[:len(lines)-1] {
			if l == "BEGIN:VEVENT\r\n" { // a line that goes on begins with a space
				begun++
			}
			body := strings.TrimSuffix(l, "\r\n")
			if len(body) > 75 || strings.ContainsAny(body, "\r\n\x00\x1b\x07") {
				t.Errorf("line %d: %q", i, l)
			}
		}
		cal := read(t, data)
		if n := strings.Count(string(data), "\r\nBEGIN:VEVENT\r\n"); len(cal.Events()) != 1 || n != 1 || len(cal.Components) != 1 {
			t.Fatalf("%d events, %d parts", n, len(cal.Components))
		}
		e := cal.Events()[0]
		if len(e.Components) != 0 || valueOf(e, ics.ComponentPropertyAttendee) != "" {
			t.Error("something broke out of its line")
		}
	})
}

func ExampleCalendar() {
	f := report.FollowUp{ID: "v1", Revision: 2, Saved: time.Date(2026, 12, 1, 15, 5, 0, 0, time.UTC), Customer: "Brook Farm", Shown: "1 December 2026",
		Step: "Call, then send the quote", Due: time.Date(2026, 12, 8, 0, 0, 0, 0, time.UTC)}
	data, err := Calendar([]report.FollowUp{f})
	fmt.Print(strings.ReplaceAll(string(data), "\r\n", "\n"), err)
	// Output:
	// BEGIN:VCALENDAR
	// METHOD:PUBLISH
	// PRODID:-//cutbrief//follow-up//EN
	// VERSION:2.0
	// BEGIN:VEVENT
	// DESCRIPTION:Shown: 1 December 2026
	// DTEND;VALUE=DATE:20261209
	// DTSTAMP:20261201T150500Z
	// DTSTART;VALUE=DATE:20261208
	// LAST-MODIFIED:20261201T150500Z
	// SEQUENCE:2
	// SUMMARY:Call\, then send the quote – Brook Farm
	// TRANSP:TRANSPARENT
	// UID:v1-next@cutbrief
	// END:VEVENT
	// END:VCALENDAR
	// <nil>
}

// RFC 5545, 3.3.4: a date has eight digits. The day after the last one that can
// be written is left out; without an end such an event lasts its one day
// (3.6.1).
func TestTheLastDayThatCanBeWritten(t *testing.T) {
	f := quote()
	f.Due = time.Date(9999, 12, 31, 0, 0, 0, 0, time.UTC)
	data := string(calendarOf(t, f))
	if !strings.Contains(data, "DTSTART;VALUE=DATE:99991231\r\n") || strings.Contains(data, "DTEND") {
		t.Error(data)
	}
}
