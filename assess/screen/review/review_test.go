package review

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/assess/review"
	"cutbrief/assess/screen/screentest"
	"cutbrief/rules/system"

	tea "github.com/charmbracelet/bubbletea"
)

var today = time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)

// driver sends keys to the review. What waits for the inbox is run when
// something is there.
type driver struct {
	screentest.Driver
	m *Model
}

// folder reads a made folder: first what the files say, then judged.
type folder struct {
	names []string
	fail  error
}

func (f folder) read(_ context.Context, remembered bool, emit func([]*review.Row)) (review.Totals, error) {
	criteria := review.NewCriteria(system.Demo(), today)
	totals := review.Totals{Files: len(f.names) + 1, Unread: 1}
	for _, name := range f.names {
		v, _ := casebook.DemoVisit(name)
		row := criteria.Judge(name+".json", v)
		if remembered {
			row.Rep = "as it was"
		}
		emit([]*review.Row{&row})
	}
	torn := review.Row{Path: "torn.json", Why: "the file ends too early", Flags: review.FlagSet(0).With(review.Damaged)}
	emit([]*review.Row{&torn})
	return totals, f.fail
}

func load(path string) (*assess.Visit, []byte, error) {
	v, ok := casebook.DemoVisit(strings.TrimSuffix(path, ".json"))
	if !ok {
		return nil, []byte("{\"torn\x1b[31m"), errors.New("torn")
	}
	data, err := v.Encode()
	return v, data, err
}

func start(t testing.TB, read Reader, width, height int) *driver {
	o := Options{Dir: "visits", Range: system.Demo(), Today: today, Read: read, Load: load,
		Page: func(path string, _ *assess.Visit) (string, error) { return path + ".pdf", nil }}
	m := newModel(context.Background(), o)
	d := &driver{Driver: screentest.Driver{T: t, Model: m.window}, m: m}
	t.Cleanup(d.m.stop)
	d.m.inbox = make(chan tea.Msg, 1000)
	d.m.next = d.next
	d.Resize(width, height)
	return d
}

// open reads the six invented visits and one torn file to the end.
func open(t testing.TB, width, height int) *driver {
	d := start(t, folder{names: casebook.DemoVisits()}.read, width, height)
	d.Run(d.m.read(looking))
	d.drain()
	return d
}

// next takes what is in the inbox and does not wait.
func (d *driver) next() tea.Msg {
	select {
	case msg := <-d.m.inbox:
		return msg
	default:
		return nil
	}
}

// drain takes what is left in the inbox.
func (d *driver) drain() {
	for len(d.m.inbox) > 0 {
		d.Send(<-d.m.inbox)
	}
}

func (d *driver) keys(keys ...string) *driver {
	d.Keys(keys...)
	return d
}

func TestTheListShowsEveryFile(t *testing.T) {
	d := open(t, 120, 40)
	d.Sees("7 files, 1 unreadable", "7 shown, by date", "Stenby Farm Machinery", "Wenlock Forged", "damaged: torn.json", "demo-45", "DATE COMPANY REP")
}

func TestFilterSortGroup(t *testing.T) {
	d := open(t, 120, 40)
	d.keys("/", "runa").Sees("Filter: runa", "Stenby")
	d.SeesNot("Ansel")
	d.keys("<enter>").Sees("3 shown", "· runa")
	d.keys("<esc>").Sees("7 shown")
	d.keys("/", "verdict = firm", "<enter>").Sees("4 shown")
	d.keys("/", "<ctrl+u>", "zzz").Sees("No row fits the filter")
	d.keys("<backspace>", "<backspace>", "<backspace>", "<esc>", "s").Sees("7 shown, by company")
	d.keys("b").Sees("grouped by rep", "Runa Feltham · 3 files", "Tobias Marrin · 3 files", "not known · 1 file")
	d.keys("f").Sees("flags != ?", "damaged: torn.json")
	d.keys("f", "d").Sees("due <= today")
}

func TestOneVisitInDetail(t *testing.T) {
	d := open(t, 100, 30)
	d.keys("/", "farm", "<enter>", "<enter>").Sees("Review · Stenby Farm Machinery Repair · brief", "RECOMMENDED SYSTEM")
	d.keys("<tab>").Sees("· why", "[recommendation]")
	d.keys("<tab>").Sees("· file", `"format": "cutbrief-visit"`)
	d.keys("<tab>").Sees("· flags", "Nothing needs a second look")
	d.keys("p").Sees("· flags", "the page is in farm-repair.json.pdf")
	d.keys("<esc>").Sees("1 shown")
}

// A file that cannot be read opens with the reason and its bytes, made safe.
func TestADamagedFileInDetail(t *testing.T) {
	d := open(t, 80, 24)
	d.keys("/", "torn", "<enter>", "<enter>").Sees("damaged file", "the file ends too early", "Rule: the file is not the whole")
	d.keys("<tab>").Sees("cannot be read as a visit")
	d.keys("p")
	d.Sees("no page can be made of this file")
	d.keys("<tab>", "<tab>").Sees(`{"torn`)
	if strings.Contains(d.m.window.View(), "\x1b[31m") {
		t.Error("an escape of the file reaches the terminal")
	}
}

// Of a file that gives no bytes, such as a pipe, that is said.
func TestAFileWithoutBytesInDetail(t *testing.T) {
	d := open(t, 80, 24)
	d.m.Load = func(string) (*assess.Visit, []byte, error) { return nil, nil, errors.New("no regular file") }
	d.keys("/", "torn", "<enter>", "<enter>", "<tab>", "<tab>", "<tab>").Sees("· file", "nothing of this file to show")
}

// While files are read, rows are there, keys answer, and reading can be stopped.
func TestKeysAnswerWhileReading(t *testing.T) {
	d := start(t, folder{}.read, 100, 24)
	first := review.Row{Path: "farm-repair.json", Company: "Stenby", Stage: review.Judged}
	d.Send(d.m.gotRows(looking, &first))
	d.Sees("1 file found", "Stenby", "░")
	d.keys("/", "sten").Sees("Filter: sten")
	d.keys("<enter>", "<enter>").Sees("RECOMMENDED SYSTEM")
	d.keys("<esc>", "<esc>", "<esc>").Sees("stopped at 1 file")
	d.Send(d.m.gotRows(looking, &review.Row{Path: "late.json"})) // was on its way
	d.Sees("stopped at 1 file", "1 shown")
}

func TestReadingThatFailsSaysWhy(t *testing.T) {
	d := start(t, folder{fail: errors.New("the share went away")}.read, 80, 24)
	d.Run(d.m.read(looking))
	d.drain()
	d.keys("/", "zzz", "<esc>")
	if d.m.fault.String() != "the share went away" {
		t.Errorf("fault %q", d.m.fault.String())
	}
}

func TestLeaving(t *testing.T) {
	for _, key := range []string{"q", "<ctrl+c>"} {
		if d := open(t, 80, 24); !d.keys(key).Quit || d.m.ctx.Err() == nil {
			t.Errorf("%s does not leave", key)
		}
	}
}

// The list opens at its top, and stays with the row once the manager has moved.
func TestTheFocusStays(t *testing.T) {
	d := open(t, 80, 24)
	if d.m.at != 0 {
		t.Errorf("opens at %d", d.m.at)
	}
	d.keys("<down>")
	focus := func() string { return d.m.rows.Path(d.m.place()) }
	path := focus()
	if d.keys("s", "b"); focus() != path {
		t.Errorf("the focus went from %s to %s", path, focus())
	}
}

// No line is wider than the window and no view higher, at any usual size, in
// every state.
func TestEverySizeHolds(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 12}, {20, 5}, {1, 1}} {
		d := open(t, size[0], size[1])
		check := func(what string) {
			t.Log(size, what)
			screentest.Inside(t, d.View(), size[0], size[1])
		}
		check("list")
		d.keys("b")
		check("groups")
		d.keys("<end>", "/", strings.Repeat("wide words ", 12))
		check("filter")
		d.keys("<esc>", "<home>", "<enter>")
		check("detail")
		for range 3 {
			d.keys("<tab>", "<end>")
			check("detail")
		}
	}
}

// BenchmarkKey is a key and the view after it, with 100,000 rows.
func BenchmarkKey(b *testing.B) {
	d := start(b, folder{}.read, 120, 40)
	rows := make([]*review.Row, 100000)
	for i := range rows {
		rows[i] = &review.Row{Path: fmt.Sprintf("%06d.json", i), Company: fmt.Sprintf("Company %d", i), Date: "2026-11-25", Verdict: review.Open, Stage: review.Judged}
	}
	d.Send(d.m.gotRows(looking, rows...))
	for b.Loop() {
		d.m.window.Update(screentest.Key("<down>"))
		d.m.window.View()
	}
}

// BenchmarkKeyWhileLoading is a key, after it a handful of rows that came meanwhile
// and the view, with 100,000 rows there.
func BenchmarkKeyWhileLoading(b *testing.B) {
	d := start(b, folder{}.read, 120, 40)
	rows := make([]*review.Row, 100000)
	for i := range rows {
		rows[i] = &review.Row{Path: fmt.Sprintf("%06d.json", i), Company: fmt.Sprintf("Company %d", i), Date: "2026-11-25", Verdict: review.Open, Stage: review.Judged}
	}
	d.Send(d.m.gotRows(looking, rows...))
	const handful = 512
	for i := 0; b.Loop(); i++ {
		d.m.window.Update(screentest.Key("<down>"))
		from := i * handful % (len(rows) - handful)
		d.m.window.Update(d.m.gotRows(looking, rows[from:from+handful]...))
		d.m.window.View()
	}
}
