package report

import (
	"math"
	"strconv"

	"cutbrief/assess/sanitize"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Track words how measured speeds with one system compare with the predicted
// ones, and what that says of the system's row. A nil row is not in the range.
func Track(t demonstration.Accuracy, row *system.System, style unit.Style, words *message.Catalog) []Line {
	b := &builder{style: style, words: words}
	list := []Line{b.line(msg("timed cuts"), cutsIn(t.All))}
	if t.All.Cuts > 0 {
		list = append(list, b.line(msg("speed"), medianOf(t.All)), b.line(msg("spread"), spreadOf(t.All)))
	}
	return append(list, b.line(msg("the row"), rowAccuracy(t, row, style)))
}

func cutCount(n int) message.Message { return message.Counted(n, "{1} cut", "{1} cuts") }

// cutsIn counts cuts and their visits.
func cutsIn(e demonstration.Errors) message.Message {
	if e.Cuts == 0 {
		return msg("none with a prediction")
	}
	return msg("{1} in {2}", cutCount(e.Cuts), message.Counted(e.Visits, "{1} visit", "{1} visits"))
}

// off words a share by which a speed is off, in whole per cent. than is what it
// is held against.
func off(share float64, than message.ID) message.Message {
	n := math.Round(100 * share)
	percent := message.Figure(strconv.Itoa(int(math.Abs(n))) + " %")
	return when(n < 0, "{1} slower than {2}", percent, than).Or(when(n > 0, "{1} faster than {2}", percent, than)).Or(msg("as fast as {1}", than))
}

// medianOf words the median; of few cuts it says that it concludes nothing.
func medianOf(e demonstration.Errors) message.Message {
	text := msg("{1}, median of {2}", off(e.Median, "predicted"), cutCount(e.Cuts))
	return when(e.Cuts < demonstration.FewestCuts, "{1}: too few for a conclusion", text).Or(text)
}

// spreadOf words how far cuts lie apart, and by which measure.
func spreadOf(e demonstration.Errors) message.Message {
	low, high := off(e.Low, "predicted"), off(e.High, "predicted")
	if e.Cuts < demonstration.FewestCuts {
		return msg("from {1} to {2}, the full range of {3}", low, high, cutCount(e.Cuts))
	}
	return msg("from {1} to {2}, the quartiles", low, high)
}

// rowAccuracy says what the cuts mean for the system's row. Nothing is changed.
func rowAccuracy(t demonstration.Accuracy, row *system.System, style unit.Style) message.Message {
	if row == nil {
		return msg("is not in this range: nothing can be said of it.")
	}
	if t.Off == "" {
		return message.Counted(t.Row.Cuts,
			"is not judged: of the timed cuts, {1} is in mild steel, predicted by the row as it is today and slower than the hand can lead; at least {2} such are needed.",
			"is not judged: of the timed cuts, {1} are in mild steel, predicted by the row as it is today and slower than the hand can lead; at least {2} such are needed.",
			message.Count(demonstration.FewestCuts))
	}
	cuts := msg("{1}: cuts ran {2}, median of {3}", message.Name(sanitize.Line(row.Name)), off(t.Row.Median, "the row says"), cutsIn(t.Row))
	if t.Off == demonstration.OnTheMark {
		return msg("{1}; the row can stand.", cuts)
	}
	show := func(mm unit.Millimetre) message.Figure {
		return message.Figure(unit.Show(millimetres(mm), style, unit.Nearest))
	}
	if rated, fits := t.Rated.Get(); fits {
		return msg("{1}; a rated thickness of {2} instead of {3} would fit them – nothing is changed.", cuts, show(rated), show(row.Rated))
	}
	return msg("{1}; no rated thickness near {2} fits them – look at the whole row, and at how the cuts were timed. Nothing is changed.", cuts, show(row.Rated))
}
