package rehearse

import (
	"context"
	"fmt"
	"os"
	"testing"
	"time"

	"cutbrief/assess/screen/screentest"
	"cutbrief/report"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"

	tea "github.com/charmbracelet/bubbletea"
)

const envRun = "CUTBRIEF_TEST_REHEARSE"

// runForTest is the rehearsal as a program.
func runForTest() int {
	out, err := Run(context.Background(), Options{Bench: bench(), Now: time.Now, Input: os.Stdin, Output: os.Stdout})
	fmt.Printf("noted %d, keep %v, %v\n", len(out.Cuts), out.Keep, err)
	return 0
}

// bench is an invented plan: a timed cut of 300 mm in 18 s, one that is not
// timed, and two short lists.
func bench() report.Bench {
	return report.Bench{
		Customer: "Brook Farm", System: "Test 60", SystemID: "test-60", Takes: "Takes about 20 min of the usual 30 min.", Style: unit.Metric,
		Steps: []report.Step{
			{ID: "everyday-straight", Row: report.Row{Cut: "Straight cut, timed", Piece: "6 mm mild steel", See: "the time"}, Metal: metal.MildSteel, Thickness: 6, Output: 60,
				Length: 300, Predicted: unit.Known(unit.Second(18)), Timed: true, Torch: []string{"60 A, stand-off 3–6 mm", "pull, lead 5–10°", "300 mm in 18 s"},
				Fails: "a worn tip", Avoid: "fit a new one", Bring: "watch"},
			{ID: "own-piece", Row: report.Row{Cut: "The customer's own piece", Piece: "8 mm mild steel", See: "their part"}, Metal: metal.MildSteel, Thickness: 8, SetUp: true,
				Torch: []string{"60 A"}, Fails: "an unknown coating", Avoid: "ask first", Bring: "a piece"},
		},
		Leaving: []report.Line{{Value: "Torch tried."}, {Value: "Spare set."}},
		OnSite:  []report.Line{{Value: "Bench steady."}, {Value: "Fire watch.", Source: "29 CFR 1910.252(a)(2)(iii)(B)"}, {Value: "One test cut."}},
	}
}

// driver sends keys to the rehearsal with a clock of its own; ticks are not
// waited for.
type driver struct {
	screentest.Driver
	m    *Model
	time time.Time
}

func drive(t testing.TB, b report.Bench) *driver {
	t.Helper()
	d := &driver{time: time.Date(2026, 12, 1, 9, 0, 0, 0, time.UTC)}
	d.m = newModel(Options{Bench: b, Now: func() time.Time { return d.time }})
	d.m.tick = func(time.Duration) tea.Cmd { return nil }
	d.Driver = screentest.Driver{T: t, Model: d.m.window}
	d.Resize(80, 24)
	return d
}

func (d *driver) keys(keys ...string) *driver {
	d.Keys(keys...)
	return d
}

// passes lets time go by, and the screen look at the clock.
func (d *driver) passes(t time.Duration) *driver {
	d.time = d.time.Add(t)
	d.Send(tickMsg{d.m.pulse})
	return d
}

func (d *driver) sees(texts ...string) *driver {
	d.T.Helper()
	d.Sees(texts...)
	return d
}
