package review

import (
	"context"
	"errors"
	"testing"
)

func TestTimedCuts(t *testing.T) {
	d := open(t, 60, 20)
	asked := ""
	d.m.Measured = func(_ context.Context, filter string) (string, error) {
		asked = filter
		return "system: Demo 45\n  the row     cuts ran 22 % slower than the row says, median of 7 cuts\x1b[31m in 4 visits\n\n7 files\n", nil
	}
	d.keys("/", "farm", "<enter>", "m").Sees("Review · timed cuts", "system: Demo 45", "22 % slower", "in 4 visits", "7 files")
	if asked != "farm" {
		t.Errorf("asked for %q", asked)
	}
	d.keys("<end>", "<home>", "<esc>").Sees("1 shown")
	d.m.Measured = func(context.Context, string) (string, error) { return "", errors.New("gone") }
	d.keys("m").Sees("no timed cuts: gone")
	d.m.stage = stopped
	d.keys("m").Sees("once all files are read")
}
