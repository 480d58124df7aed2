package pdf

import (
	"fmt"

	"cutbrief/report"
)

// usualMarks is how many marks a full page has, about.
const usualMarks = 320

// fitter lays one brief out again and again, under limits that differ in little.
type fitter struct {
	faces    faces
	brief    *report.Brief
	paper    Paper
	replaced string
	fits     *page           // the best so far, nil while nothing fits
	fitsAt   limits          // what bears on it
	tooLong  map[limits]bool // what bears on pages that were too long
	spare    []mark          // room for the next page
}

// fit lays the brief out, shortening it step by step until it fits, and then
// takes back each step that turned out not to be needed, the last one first:
// what matters most comes back first. Pictures come back only where nothing
// else is missing.
func fit(f faces, b *report.Brief, p Paper, replaced string) (*page, error) {
	try := &fitter{faces: f, brief: b, paper: p, replaced: replaced, tooLong: map[limits]bool{}}
	steps := stepsFor(b)
	for n := 0; n <= len(steps); n++ {
		fits, err := try.under(after(steps[:n], nil))
		if err != nil {
			return nil, err
		}
		if fits {
			return try.fits, try.giveBack(steps[:n])
		}
	}
	return nil, fmt.Errorf("the page does not fit on %s", p)
}

// giveBack takes back steps that were not needed.
func (f *fitter) giveBack(taken []func(*limits)) error {
	spared := map[int]bool{}
	for i := len(taken) - 1; i >= 0; i-- {
		if i >= gaps && i < spacing && len(spared) < len(taken)-spacing {
			continue
		}
		spared[i] = true
		fits, err := f.under(after(taken, spared))
		if err != nil {
			return err
		}
		if !fits {
			delete(spared, i)
		}
	}
	return nil
}

// under reports whether the page fits under limits, and keeps it if it does.
// Limits that bear on the brief as others did before are not tried again.
func (f *fitter) under(l limits) (bool, error) {
	at := l.on(f.brief)
	switch {
	case f.tooLong[at]:
		return false, nil
	case f.fits != nil && at == f.fitsAt:
		return true, nil
	}
	room := f.spare
	if room == nil {
		room = make([]mark, 0, usualMarks)
	}
	pg, over, err := layOut(f.faces, f.brief, f.paper, l, f.replaced, room)
	if err != nil {
		return false, err
	}
	if over > 0 {
		f.tooLong[at], f.spare = true, pg.marks
		return false, nil
	}
	if f.spare = nil; f.fits != nil {
		f.spare = f.fits.marks
	}
	f.fits, f.fitsAt = pg, at
	return true, nil
}

// after is the limits when some steps are taken but for the spared ones.
func after(taken []func(*limits), spared map[int]bool) limits {
	l := roomy
	for i, step := range taken {
		if !spared[i] {
			step(&l)
		}
	}
	return l
}

// on are the limits as they bear on a brief: what it has less of than a limit
// allows is not limited by it, and what it lacks by none.
func (l limits) on(b *report.Brief) limits {
	for _, part := range []struct {
		limit *int
		has   int
	}{
		{&l.notes, len(b.Notes)}, {&l.excluded, len(b.Excluded)}, {&l.evidence, len(b.Evidence)}, {&l.confirm, len(b.Confirm) + len(b.Flags)},
		{&l.because, len(b.Because)}, {&l.bars, len(b.Bars)}, {&l.plan, len(b.Plan)}, {&l.cautions, len(b.Cautions)}, {&l.footing, len(b.Footing)},
	} {
		*part.limit = min(*part.limit, part.has)
	}
	c := b.Cost
	l.cost = min(l.cost, counted(c))
	l.costBars = l.costBars && c != nil && len(c.Bars) > 0
	l.curves = l.curves && c != nil && drawable(c.Curves)
	l.speeds = l.speeds && b.Speeds != nil
	l.timeline = l.timeline && b.Timeline != nil
	return l
}

// counted is how many sentences the part about cost has.
func counted(c *report.Cost) int {
	if c == nil {
		return 0
	}
	return len(c.Lines)
}
