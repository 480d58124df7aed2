package report

import (
	"strings"
	"testing"

	"cutbrief/rules/demonstration"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

func TestTrackWords(t *testing.T) {
	row := &system.System{Name: "Demo 45\x1b[31m", Rated: 12}
	slow := demonstration.Accuracy{
		All: demonstration.Errors{Cuts: 9, Visits: 5, Median: -0.2, Low: -0.25, High: 0.034},
		Row: demonstration.Errors{Cuts: 7, Visits: 4, Median: -0.22}, Off: demonstration.Slow, Rated: unit.Known(unit.Millimetre(9.76)),
	}
	few := demonstration.Accuracy{All: demonstration.Errors{Cuts: 1, Visits: 1, Median: 0.001, Low: 0.001, High: 0.001}}
	one := few
	one.Row.Cuts = 1
	unfit, good := slow, slow
	unfit.Rated, good.Off = unit.Maybe[unit.Millimetre]{}, demonstration.OnTheMark
	for _, c := range []struct {
		track demonstration.Accuracy
		row   *system.System
		want  string
	}{
		{slow, row, "9 cuts in 5 visits|20 % slower than predicted, median of 9 cuts|from 25 % slower than predicted to 3 % faster than predicted, the quartiles|" +
			"Demo 45: cuts ran 22 % slower than the row says, median of 7 cuts in 4 visits; a rated thickness of 9.8 mm instead of 12 mm would fit them – nothing is changed."},
		{few, row, "1 cut in 1 visit|as fast as predicted, median of 1 cut: too few for a conclusion|from as fast as predicted to as fast as predicted, the full range of 1 cut|" +
			"is not judged: of the timed cuts, 0 are in mild steel, predicted by the row as it is today and slower than the hand can lead; at least 5 such are needed."},
		{one, row, "of the timed cuts, 1 is in mild steel"},
		{unfit, row, "no rated thickness near 12 mm fits them"},
		{good, row, "median of 7 cuts in 4 visits; the row can stand."},
		{demonstration.Accuracy{}, nil, "none with a prediction|is not in this range: nothing can be said of it."},
	} {
		var values []string
		for _, l := range Track(c.track, c.row, unit.Metric, nil) {
			values = append(values, l.Value)
		}
		if got := strings.Join(values, "|"); !strings.Contains(got, c.want) || strings.Contains(got, "\x1b") {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}
