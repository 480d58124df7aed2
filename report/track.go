package report

import (
	"fmt"
	"math"

	"cutbrief/rules/demonstration"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Track words how measured speeds with one system compare with the predicted
// ones, and what that says of the system's row. A nil row is not in the range.
func Track(t demonstration.Track, row *system.System, style unit.Style) []Line {
	list := []Line{{Label: "Timed cuts", Value: cutsIn(t.All)}}
	if t.All.Cuts > 0 {
		list = append(list, Line{Label: "Speed", Value: speedWords(t.All)}, Line{Label: "Spread", Value: spreadWords(t.All)})
	}
	if row == nil {
		return append(list, Line{Label: "The row", Value: "is not in this range: nothing can be said of it."})
	}
	return append(list, Line{Label: "The row", Value: rowWords(t, row, style)})
}

func cutCount(n int) string {
	if n == 1 {
		return "1 cut"
	}
	return fmt.Sprintf("%d cuts", n)
}

// cutsIn counts cuts and their visits.
func cutsIn(e demonstration.Errors) string {
	if e.Cuts == 0 {
		return "none with a prediction"
	}
	text := fmt.Sprintf("%s in %d visit", cutCount(e.Cuts), e.Visits)
	if e.Visits != 1 {
		text += "s"
	}
	return text
}

// paceWords words a share by which a speed is off, in whole per cent.
func paceWords(off float64, than string) string {
	switch n := math.Round(100 * off); {
	case n < 0:
		return fmt.Sprintf("%.0f %% slower than %s", -n, than)
	case n > 0:
		return fmt.Sprintf("%.0f %% faster than %s", n, than)
	}
	return "as fast as " + than
}

// speedWords words the median; of few cuts it says that it concludes nothing.
func speedWords(e demonstration.Errors) string {
	text := fmt.Sprintf("%s, median of %s", paceWords(e.Median, "predicted"), cutCount(e.Cuts))
	if e.Cuts < demonstration.FewestCuts {
		text += ": too few for a conclusion"
	}
	return text
}

// spreadWords words how far cuts lie apart, and by which measure.
func spreadWords(e demonstration.Errors) string {
	text := fmt.Sprintf("from %s to %s", paceWords(e.Low, "predicted"), paceWords(e.High, "predicted"))
	if e.Cuts < demonstration.FewestCuts {
		return text + ", the full range of " + cutCount(e.Cuts)
	}
	return text + ", the quartiles"
}

// rowWords says what the cuts mean for the system's row. Nothing is changed.
func rowWords(t demonstration.Track, row *system.System, style unit.Style) string {
	if t.Off == "" {
		verb := "are"
		if t.Row.Cuts == 1 {
			verb = "is"
		}
		return fmt.Sprintf("is not judged: of the timed cuts, %d %s in mild steel, predicted by the row as it is today and slower than the hand can lead; at least %d such are needed.", t.Row.Cuts, verb, demonstration.FewestCuts)
	}
	base := fmt.Sprintf("%s: cuts ran %s, median of %s", clean(row.Name), paceWords(t.Row.Median, "the row says"), cutsIn(t.Row))
	if t.Off == demonstration.OnTheMark {
		return base + "; the row can stand."
	}
	show := func(mm unit.Millimetre) string { return unit.Show(millimetres(mm), style, unit.Nearest) }
	if rated, fits := t.Rated.Get(); fits {
		return fmt.Sprintf("%s; a rated thickness of %s instead of %s would fit them – nothing is changed.", base, show(rated), show(row.Rated))
	}
	return fmt.Sprintf("%s; no rated thickness near %s fits them – look at the whole row, and at how the cuts were timed. Nothing is changed.", base, show(row.Rated))
}
