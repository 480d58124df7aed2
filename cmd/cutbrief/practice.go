package main

import (
	"cmp"
	"slices"

	"cutbrief/assess/casebook"
	"cutbrief/assess/screen"
	"cutbrief/assess/screen/practice"
	"cutbrief/assess/store"
	"cutbrief/rules/message"
)

// holdPractice does what the flags ask for.
func holdPractice(c *call) error {
	level, _ := c.flags.GetInt("level") // it is one
	if level < 0 || level > 5 {
		return misuse(message.ID("1, easy, to 5, hard").Message(), "--level {1} is no level", message.Count(level))
	}
	path, pathErr := c.files().Find(store.DataFolder, "practice.json")
	if c.on("report") { // for a trainer
		p, err := loadProgress(path, pathErr)
		if err != nil {
			return err
		}
		words, err := c.words()
		return cmp.Or(err, c.show(document{text: func(int) string { return p.Text(words) }, json: p.JSON, csv: p.CSV}))
	}
	offered, err := c.systems()
	if err != nil {
		return err
	}
	known, err := casebook.List(offered).Load(c.text("cases"), true)
	if err != nil {
		return err
	}
	known = append(known, casebook.Cases()...)
	if c.on("list") {
		return c.putWords(func(words *message.Catalog) string { return casebook.Listed(words, known, level) })
	}
	progress, err := loadProgress(path, pathErr)
	if err != nil {
		return err
	}
	wish := casebook.Wish{Name: c.text("case"), Seeded: c.flags.Changed("seed"), Level: level}
	if wish.Seed, _ = c.flags.GetUint64("seed"); !wish.Seeded {
		wish.Seed = casebook.SeedFrom(c.newID())
	}
	if wish.Name != "" && !slices.ContainsFunc(known, func(c casebook.Customer) bool { return c.Name == wish.Name }) {
		return misuse(message.ID("see cutbrief practice --list").Message(), "{1} is not a case", quoted(wish.Name))
	}
	customer, err := progress.Meet(wish, known, offered)
	if err != nil {
		return err
	}
	return c.practise(path, casebook.Start(&customer, offered))
}

// loadProgress reads the progress so far from a place that may not be known.
func loadProgress(path string, unplaced error) (casebook.Progress, error) {
	if unplaced != nil {
		return casebook.Progress{}, message.WithHint(unplaced, "set HOME: progress is kept in your data folder")
	}
	return casebook.LoadProgress(path)
}

// practise runs the practice in the way that fits, keeps the mark, and says how
// to meet the same customer again.
func (c *call) practise(path string, s *casebook.Session) error {
	ctx, stop := untilInterrupted()
	defer stop()
	words, err := c.words()
	if err != nil {
		return err
	}
	var m casebook.Mark
	var marked bool
	if c.on("plain") || c.wantsPlain() {
		if m, marked, err = practice.Lines(screen.UntilDone(ctx, c.in), c.out, s, words); err != nil {
			return message.WithHint(message.Errorf("read the lines: {1}", err), "start again; a practice is kept only when it is marked")
		}
	} else {
		if m, marked, err = practice.Run(ctx, c.in, c.out, s, words); err != nil {
			return message.WithHint(message.Errorf("draw the practice: {1}", err), "try cutbrief practice --plain")
		}
		if marked {
			if err := c.put(words.Print(m.Summary()) + "\n"); err != nil { // the page went with the screen
				return err
			}
		}
	}
	var progress casebook.Progress
	if marked {
		if progress, err = casebook.AddProgress(path, m.Practice(c.now())); err != nil {
			return message.WithHint(err, "make the file writable; the mark above is right all the same")
		}
	}
	return c.put(s.Closing(words, progress, marked, c.text("cases")))
}

// checkCases checks a file of cases by the rules for the systems in use.
func checkCases(c *call) error {
	offered, err := c.systems()
	if err != nil {
		return err
	}
	return check(casebook.List(offered))(c)
}
