package rehearse

import (
	"errors"
	"io"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// disk remembers what was saved, and fails when told to.
type disk struct {
	saved *assess.Visit
	saves int
	fail  error
}

func (d *disk) Save(v *assess.Visit) (string, error) {
	if d.fail != nil {
		return "", d.fail
	}
	d.saves++
	d.saved = v
	return "visit.json", nil
}

// shortPlan is an invented plan of two cuts: a timed one, 300 mm in 18 s, and a
// piece of the customer's own.
func shortPlan() report.Bench {
	return report.Bench{System: "Test 60", SystemID: "test-60", Style: unit.Metric, Steps: []report.Step{
		{ID: "everyday-straight", Row: report.Row{Cut: "Straight cut, timed", Piece: "6 mm mild steel"}, Metal: metal.MildSteel, Thickness: 6, Output: 60,
			Length: 300, Predicted: unit.Known(unit.Second(18)), Timed: true},
		{ID: "own-piece", Row: report.Row{Cut: "The customer's own piece", Piece: "8 mm mild steel"}, Metal: metal.MildSteel, Thickness: 8, Output: 60},
	}}
}

func newVisit() *assess.Visit { return assess.New("v", time.Date(2026, 12, 1, 9, 0, 0, 0, time.UTC)) }

// run gives the lines and returns what was said and saved.
func run(t *testing.T, v *assess.Visit, lines ...string) (string, RecordOutcome, *disk) {
	t.Helper()
	d := &disk{}
	var out strings.Builder
	end, err := Record(strings.NewReader(strings.Join(lines, "\n")+"\n"), &out, RecordOptions{Visit: v, Bench: shortPlan(), Date: "2026-12-01", Rep: "J. Weaver", Saver: d})
	if err != nil {
		t.Fatal(err)
	}
	return out.String(), end, d
}

// 300 mm in 24 s where 18 were predicted is too slow; in a cut of 200 mm 12 s
// are predicted, so 12.5 s is on the mark.
func TestWholeRecord(t *testing.T) {
	said, end, d := run(t, newVisit(),
		"good", "new tip", "200 mm", "12.5",
		"p", "their paint", // no time is asked of their own piece
		"Quicker than the saw.", "Dear", "see what gas costs", "",
		"quote", "the owner decides", "send the quote", "", "soon", "2026-12-08")
	if d.saved == nil || end.Path != "visit.json" || end.InputEnd || end.Unsaved != nil {
		t.Fatalf("%+v\n%s", end, said)
	}
	s := d.saved.Latest()
	c, own := s.Cuts[0], s.Cuts[1]
	if s.Date != "2026-12-01" || s.System != "test-60" || c.Result != assess.Good || c.Why != "new tip" || c.Length.Or(0) != 200 || c.Took.Or(0) != 12.5 || c.Predicted.Or(0) != 12 {
		t.Errorf("%+v", s)
	}
	if own.Result != assess.Poor || own.Why != "their paint" || own.Took.IsKnown() {
		t.Errorf("%+v", own)
	}
	if s.Words != "Quicker than the saw." || len(s.Objections) != 1 || s.Objections[0].Said != "Dear" || s.Objections[0].Answer != "see what gas costs" {
		t.Errorf("%+v", s)
	}
	if s.Outcome != assess.Quote || s.Because != "the owner decides" || s.Next != (assess.Next{Step: "send the quote", Owner: "J. Weaver", Date: "2026-12-08"}) {
		t.Errorf("%+v", s)
	}
	for _, want := range []string{"on the mark", `"soon" is not a date`, "1 of 2. Straight cut, timed: 6 mm mild steel"} {
		if !strings.Contains(said, want) {
			t.Errorf("does not say %q:\n%s", want, said)
		}
	}
}

// What is entered wrong is asked again, with what would be taken.
func TestMistakesAreAskedAgain(t *testing.T) {
	said, _, d := run(t, newVisit(), "great", "fair", "", "long", "300 mm", "0", "24", "not shown", "quit")
	if c := d.saved.Latest().Cuts; len(c) != 1 || c[0].Result != assess.Fair || c[0].Took.Or(0) != 24 {
		t.Errorf("%+v", c)
	}
	for _, want := range []string{`"great" is none of these: good, fair, poor, not shown.`, "too slow"} {
		if !strings.Contains(said, want) {
			t.Errorf("does not say %q:\n%s", want, said)
		}
	}
}

// Whatever was given is saved, by any way of leaving.
func TestLeavingSaves(t *testing.T) {
	all := []string{"good", "new tip", "", "12", "good", "", "Fine.", "Dear", "cheap", "", "order", "", "deliver", "", "2026-12-08"}
	for n := range len(all) {
		for _, by := range []string{"quit", ""} {
			v := newVisit()
			d := &disk{}
			var out strings.Builder
			in := strings.Join(all[:n], "\n")
			if n > 0 && by != "" {
				in += "\n"
			}
			end, err := Record(strings.NewReader(in+by), &out, RecordOptions{Visit: v, Bench: shortPlan(), Date: "2026-12-01", Saver: d})
			if err != nil || (n > 0) != (d.saved != nil) || (end.Path != "") != (n > 0) {
				t.Errorf("after %d lines and %q: %+v, %v", n, by, end, err)
			}
			if n == 0 && len(v.Demonstrations) != 0 {
				t.Error("an empty record is left")
			}
			if n > 6 && d.saved.Latest().Words != "Fine." {
				t.Errorf("after %d lines: %+v", n, d.saved.Latest())
			}
		}
	}
}

// typist gives one line at a time, and looks at what is saved before the next.
type typist struct {
	lines []string
	disk  *disk
	saves []int // so far, at each line
}

func (y *typist) Read(p []byte) (int, error) {
	if y.saves = append(y.saves, y.disk.saves); len(y.lines) == 0 {
		return 0, io.EOF
	}
	n := copy(p, y.lines[0]+"\n")
	y.lines = y.lines[1:]
	return n, nil
}

// Each line is saved before the next is asked for; the third and the tenth are
// empty and change nothing.
func TestEachLineIsSavedBeforeTheNext(t *testing.T) {
	d := &disk{}
	in := &typist{disk: d, lines: []string{"good", "new tip", "", "12", "good", "its edge", "Fine.", "Dear", "cheap", "", "order", "x", "deliver", "Jo", "2026-12-08"}}
	if _, err := Record(in, io.Discard, RecordOptions{Visit: newVisit(), Bench: shortPlan(), Date: "2026-12-01", Saver: d}); err != nil {
		t.Fatal(err)
	}
	for i := 1; i < len(in.saves); i++ {
		if empty := i == 3 || i == 10; !empty && in.saves[i] <= in.saves[i-1] {
			t.Errorf("line %d is not saved before the next: %v", i, in.saves)
		}
	}
}

// A second time everything stands there already, and Enter leaves it.
func TestEnterLeavesWhatStands(t *testing.T) {
	v := newVisit()
	run(t, v, "good", "new tip", "", "12", "not", "Fine.", "", "order", "", "deliver", "Jo", "2026-12-08")
	said, end, d := run(t, v, "", "", "", "", "", "", "", "", "", "", "", "")
	if d.saved != nil && len(v.Demonstrations) != 1 {
		t.Errorf("%+v %+v", end, v.Demonstrations)
	}
	for _, want := range []string{"[good]", "[new tip]", "[300 mm]", "[12 s]", "[Fine.]", "[order]", "[Jo]", "[2026-12-08]"} {
		if !strings.Contains(said, want) {
			t.Errorf("does not show %s:\n%s", want, said)
		}
	}
	s := v.Latest()
	if s.Next.Owner != "Jo" || s.Cuts[0].Took.Or(0) != 12 {
		t.Errorf("%+v", s)
	}
}

// What is typed cannot steer a terminal.
func TestTypedIsCleaned(t *testing.T) {
	_, _, d := run(t, newVisit(), "good", "\x1b[31mred\u202e", "quit")
	if why := d.saved.Latest().Cuts[0].Why; strings.ContainsAny(why, "\x1b\u202e") {
		t.Errorf("%q", why)
	}
}

func TestSaveThatFailsIsSaid(t *testing.T) {
	full := errors.New("disk full")
	end, err := Record(strings.NewReader("good\n"), &strings.Builder{}, RecordOptions{Visit: newVisit(), Bench: shortPlan(), Date: "2026-12-01", Saver: &disk{fail: full}})
	if err != nil || !errors.Is(end.Unsaved, full) {
		t.Errorf("%+v, %v", end, err)
	}
}

// A cut noted by mistake is taken out again by "not shown": it would else stand
// in the letter to the customer.
func TestNotShownTakesACutOut(t *testing.T) {
	v := newVisit()
	run(t, v, "good", "", "", "18", "good", "quit")
	if _, _, d := run(t, v, "not", "", "quit"); d.saved == nil {
		t.Fatal("nothing was saved")
	}
	if _, still := v.Demonstrations[0].Find("everyday-straight"); still || len(v.Demonstrations[0].Cuts) != 1 {
		t.Errorf("%+v", v.Demonstrations[0].Cuts)
	}
}

// A demonstration noted late stands in the order of the days: what follows is
// that of the last day. One that is left empty leaves the others alone.
func TestNotedLate(t *testing.T) {
	v := newVisit()
	v.DemonstrationOn("2026-12-03").Outcome = assess.Ordered
	run(t, v, "quit")
	if len(v.Demonstrations) != 1 || v.Demonstrations[0].Date != "2026-12-03" {
		t.Fatalf("%+v", v.Demonstrations)
	}
	run(t, v, "good", "", "", "18", "quit")
	if len(v.Demonstrations) != 2 || v.Latest().Outcome != assess.Ordered || v.Latest().Date != "2026-12-03" {
		t.Errorf("%+v", v.Demonstrations)
	}
}

// A no is asked after, in one of few words; another outcome takes the word away.
func TestWhatWeighedMost(t *testing.T) {
	v := newVisit()
	said, _, _ := run(t, v, "not", "not", "", "", "no", "money", "pr", "too dear now", "")
	if s := v.Latest(); s.Outcome != assess.No || s.Against != assess.AgainstPrice || s.Because != "too dear now" {
		t.Errorf("%+v\n%s", s, said)
	}
	if !strings.Contains(said, `"money" is none of these: price, habit, cut, site, elsewhere, later, other.`) {
		t.Errorf("said\n%s", said)
	}
	said, _, _ = run(t, v, "", "", "", "", "quote", "", "quit")
	if s := v.Latest(); s.Outcome != assess.Quote || s.Against != "" || strings.Contains(said, "weighed") {
		t.Errorf("%+v\n%s", s, said)
	}
}

// At the bench 1, 2 and 3 are good, fair and poor; here they are too.
func TestNumbersChoose(t *testing.T) {
	v := newVisit()
	said, _, _ := run(t, v, "2", "slow hand", "", "18", "4", "", "", "4", "7", "quit")
	if s := v.Latest(); len(s.Cuts) != 1 || s.Cuts[0].Result != assess.Fair || s.Outcome != assess.No || s.Against != assess.AgainstOther {
		t.Errorf("%+v\n%s", s, said)
	}
}

// A record is made in the language chosen, by its words or by ours; what is kept
// is the same. No text lacks its words.
func TestRecordInGerman(t *testing.T) {
	v, d := newVisit(), &disk{}
	words := catalog.Watched("de", func(id message.ID) { t.Errorf("no German words: %s", id) })
	lines := []string{"gut", "neue Spitze", "0", "dick", "2.0000", "200 mm", "12,5", "toll", "schlecht", "", "Schnell.", "Teuer", "Gas", "", "nein", "Geld", "preis", "zu teuer", "anrufen", "Jo", "bald", "2026-12-08"}
	var out strings.Builder
	end, err := Record(strings.NewReader(strings.Join(lines, "\n")+"\n"), &out, RecordOptions{Visit: v, Bench: shortPlan(), Date: "2026-12-01", Words: words, Saver: d})
	if err != nil || end.InputEnd {
		t.Fatalf("%+v, %v\n%s", end, err, &out)
	}
	s := v.Latest()
	if len(s.Cuts) != 2 || s.Cuts[0].Result != assess.Good || s.Cuts[1].Result != assess.Poor || s.Cuts[0].Took.Or(0) != 12.5 || s.Outcome != assess.No || s.Against != assess.AgainstPrice {
		t.Errorf("%+v\n%s", s, &out)
	}
	_, err = Record(strings.NewReader("ende\n"), &out, RecordOptions{Visit: v, Bench: shortPlan(), Date: "2026-12-01", Words: words, Saver: d})
	if err != nil || !strings.Contains(out.String(), "[gut]") {
		t.Errorf("%v\n%s", err, &out)
	}
}
