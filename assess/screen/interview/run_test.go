package interview

import (
	"context"
	"errors"
	"io"
	"testing"

	"cutbrief/assess"
)

// gone is a terminal that was unplugged.
type gone struct{}

func (gone) Read([]byte) (int, error) { return 0, errors.New("input/output error") }

func TestATerminalThatGoesAwayLosesNothing(t *testing.T) {
	v, disk := newVisit(), &memory{}
	o := Options{Visit: v, Saver: disk, Input: gone{}, Output: io.Discard}
	if _, err := Run(context.Background(), o); err == nil {
		t.Error("the lost terminal is not reported")
	}
	m := newModel(o)
	d := driverOf(t, m, disk)
	d.keys("Alder") // not accepted yet when the line drops
	if out := m.finish(); out.Unsaved != nil || out.Path != "visit.json" || d.answer(assess.FactCompany).Said != "Alder" {
		t.Errorf("%+v, saved %+v", out, disk.last)
	}
}

func TestAnEndedContextSavesAndLeaves(t *testing.T) {
	ctx, end := context.WithCancel(context.Background())
	end()
	in, out := io.Pipe()
	defer out.Close()
	if got, err := Run(ctx, Options{Visit: newVisit(), Saver: &memory{}, Input: in, Output: io.Discard}); err != nil || got.Open == 0 {
		t.Errorf("%+v, %v", got, err)
	}
}
