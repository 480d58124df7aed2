package pdf

import (
	"slices"

	"cutbrief/report"
)

// curves cleans a copy of the lines by thickness.
func (c *cleaner) curves(old *report.Curves) *report.Curves {
	if old == nil {
		return nil
	}
	clean := *old
	c.all("cost", &clean.Title, &clean.Up, &clean.Across, &clean.Plasma, &clean.Flame, &clean.Crossing.Label)
	clean.Ticks, clean.UpTicks = c.ticks("cost", old.Ticks), c.ticks("cost", old.UpTicks)
	if old.Everyday != nil {
		clean.Everyday = &c.ticks("cost", []report.CurveTick{*old.Everyday})[0]
	}
	return &clean
}

// speeds cleans a copy of the line of speeds.
func (c *cleaner) speeds(old *report.Speeds) *report.Speeds {
	if old == nil {
		return nil
	}
	const part = "speed by thickness"
	clean := *old
	c.all(part, &clean.Title, &clean.Up, &clean.Across, &clean.Clean, &clean.Severed, &clean.Rests)
	clean.Ticks, clean.UpTicks, clean.Marks = c.ticks(part, old.Ticks), c.ticks(part, old.UpTicks), slices.Clone(old.Marks)
	for i := range clean.Marks {
		m := &clean.Marks[i]
		c.all(part, &m.Thickness, &m.Speed, &m.Says, &m.Label)
	}
	return &clean
}

// timeline cleans a copy of the demonstration in minutes.
func (c *cleaner) timeline(old *report.Timeline) *report.Timeline {
	if old == nil {
		return nil
	}
	const part = "the demonstration in minutes"
	clean := *old
	c.all(part, &clean.Title, &clean.Across, &clean.Says, &clean.Rests)
	clean.Ticks, clean.Steps = c.ticks(part, old.Ticks), slices.Clone(old.Steps)
	for i := range clean.Steps {
		s := &clean.Steps[i]
		c.all(part, &s.Name, &s.When, &s.Takes)
	}
	return &clean
}

// all cleans texts in place.
func (c *cleaner) all(part string, texts ...*string) {
	for _, s := range texts {
		*s = c.text(part, *s)
	}
}

func (c *cleaner) ticks(part string, list []report.CurveTick) []report.CurveTick {
	list = slices.Clone(list)
	for i := range list {
		list[i].Label = c.text(part, list[i].Label)
	}
	return list
}
