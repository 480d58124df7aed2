package main

import (
	"fmt"
	"hash/fnv"
	"io"
	"os"
	"strings"

	"cutbrief/assess/casebook"
	"cutbrief/assess/screen/practice"
	"cutbrief/assess/store"
	"cutbrief/assess/store/atomicfile"
	"cutbrief/rules/csvfile"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

func practiceCommand() command {
	formats := formatFlag(textFormat, csvFormat, jsonFormat)
	formats.usage = "format of the report: {1}"
	return command{
		use: "practice",
		flags: []option{
			{name: "case", value: "", usage: "`name` of the customer to meet", complete: caseNames},
			{name: "cases", value: "", usage: "`file` with cases of your own, beside the built-in ones"},
			{name: "seed", value: uint64(0), usage: "`number` to make a customer from; with --case it chooses the words"},
			{name: "level", value: 0, usage: "1, easy, to 5, hard (default: any)"},
			{name: "plain", value: false, usage: "go line by line, without drawing a screen"},
			{name: "list", value: false, usage: "list the customers and leave"},
			{name: "report", value: false, usage: "print your progress and leave"},
			formats,
		},
		run: holdPractice,
		below: []command{
			{
				use:  "check FILE",
				args: oneFile,
				run:  checkCases,
			},
			templateCommand(casebook.Template),
		},
	}
}

func caseNames() []string {
	var names []string
	for _, c := range casebook.Cases() {
		names = append(names, c.Name)
	}
	return names
}

// holdPractice does what the flags ask for.
func holdPractice(c *call) error {
	level, _ := c.flags.GetInt("level") // it is one
	if level < 0 || level > 5 {
		return misuse(message.ID("1, easy, to 5, hard").Message(), "--level {1} is no level", message.Count(level))
	}
	path, pathErr := c.place(dataFolder, "practice.json")
	if c.on("report") {
		return c.reportProgress(path, pathErr)
	}
	offered, err := c.systems()
	if err != nil {
		return err
	}
	known, err := c.customers(offered)
	if err != nil {
		return err
	}
	if c.on("list") {
		return c.putWords(func(words *message.Catalog) string { return listed(words, known, level) })
	}
	progress, err := loadProgress(path, pathErr)
	if err != nil {
		return err
	}
	customer, err := c.meet(known, level, &progress, offered)
	if err != nil {
		return err
	}
	return c.practise(path, casebook.Start(&customer, offered))
}

// loadProgress reads the progress so far from a place that may not be known.
func loadProgress(path string, unplaced error) (casebook.Progress, error) {
	if unplaced != nil {
		return casebook.Progress{}, failure(unplaced, "set HOME: progress is kept in your data folder")
	}
	progress, err := casebook.LoadProgress(path)
	if err != nil {
		err = failure(err, "move the file away to begin anew")
	}
	return progress, err
}

// reportProgress prints the progress for a trainer.
func (c *call) reportProgress(path string, unplaced error) error {
	p, err := loadProgress(path, unplaced)
	if err != nil {
		return err
	}
	switch c.form() {
	case csvFormat:
		return c.putData(p.CSV())
	case jsonFormat:
		return c.putData(p.JSON())
	}
	return c.putWords(p.Text)
}

// customers are the built-in cases and those of --cases. A file with an error is
// refused: a practice must be fair.
func (c *call) customers(offered system.Range) ([]casebook.Customer, error) {
	file := c.text("cases")
	if file == "" {
		return casebook.Cases(), nil
	}
	own, findings, err := examineCases(file, offered)
	if err == nil && len(findings) > 0 {
		err = failure(message.Errorf("{1} {2}: {3}", message.ID("cases"), message.Name(file), message.Name(findings[0].String())),
			"see every line with: {1}", message.Name("cutbrief practice check "+store.ShellWord(file)))
	}
	return append(own, casebook.Cases()...), err
}

// examineCases reads a file of cases and checks each that can be read.
func examineCases(file string, offered system.Range) ([]casebook.Customer, []csvfile.Finding, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, nil, failure(message.Errorf("read {1} {2}: {3}", message.ID("cases"), message.Name(file), atomicfile.Cause(err)),
			"an example to start from: {1}", message.Name("cutbrief practice template"))
	}
	defer f.Close()
	list, findings := casebook.Read(f)
	for i := range list {
		findings = append(findings, casebook.Check(&list[i], offered)...)
	}
	return list, findings, nil
}

// checkCases prints every finding about a file, one a line.
func checkCases(c *call) error {
	offered, err := c.systems()
	if err != nil {
		return err
	}
	file := message.Name(c.args[0])
	list, findings, err := examineCases(c.args[0], offered)
	if err != nil {
		return err
	}
	sum := message.New("{1}: {2}", file, message.Counted(len(list), "{1} case read", "{1} cases read"))
	return c.putFindings(findings, []message.Message{sum}, len(findings), message.New("{1} {2}", message.ID("cases"), file))
}

// listed is the customers as a table; how each speaks is for the trainee to find
// out.
func listed(words *message.Catalog, list []casebook.Customer, level int) string {
	say := func(id message.ID) string { return words.Print(id.Message()) }
	var b strings.Builder
	fmt.Fprintf(&b, "%-18s %-6s %-8s %s\n", say("CASE"), say("LEVEL"), say("MINUTES"), say("WHO"))
	for _, c := range list {
		if level == 0 || c.Level == level {
			fmt.Fprintf(&b, "%-18s %-6d %-8d %s\n", tidy(c.Name), c.Level, c.Minutes, tidy(c.Company()))
		}
	}
	return b.String() + "\n" + say("All invented. Meet one with: cutbrief practice --case NAME") + "\n"
}

// meet finds the customer to meet.
func (c *call) meet(known []casebook.Customer, level int, p *casebook.Progress, offered system.Range) (casebook.Customer, error) {
	seeded := c.flags.Changed("seed")
	seed, _ := c.flags.GetUint64("seed") // it is one
	if !seeded {
		seed = c.drawSeed()
	}
	if name := c.text("case"); name != "" {
		for _, one := range known {
			if one.Name == name {
				one.Seed = seed
				return one, nil
			}
		}
		return casebook.Customer{}, misuse(message.ID("see cutbrief practice --list").Message(), "{1} is not a case", quoted(name))
	}
	if one, ok := p.Draw(known, level); ok && !seeded {
		one.Seed = seed
		return one, nil
	}
	if level == 0 {
		level = 1 + int(seed%5)
	}
	one, ok := p.Make(seed, level, offered, seeded)
	if !ok {
		return one, failure(message.Errorf("no customer can be made for the systems of {1}", message.Name(offered.Name)), "try another --seed or --level, or a --case")
	}
	return one, nil
}

// drawSeed is a number that is short enough to be told on.
func (c *call) drawSeed() uint64 {
	h := fnv.New32a()
	io.WriteString(h, c.newID())
	return uint64(h.Sum32() % 100000)
}

// practise runs the practice in the way that fits, keeps the mark, and says how
// to meet the same customer again.
func (c *call) practise(path string, s *casebook.Session) error {
	c.leaves.Store(true)
	words, err := c.words()
	if err != nil {
		return err
	}
	var m casebook.Mark
	var marked bool
	if c.on("plain") || c.wantsPlain() {
		if m, marked, err = practice.Lines(untilDone{c.ctx, c.in}, c.out, s, words); err != nil {
			return failure(message.Errorf("read the lines: {1}", err), "start again; a practice is kept only when it is marked")
		}
	} else {
		if m, marked, err = practice.Run(c.ctx, c.in, c.out, s, words); err != nil {
			return failure(message.Errorf("draw the practice: {1}", err), "try cutbrief practice --plain")
		}
		if marked {
			err := c.putWords(func(words *message.Catalog) string { return words.Print(m.Summary()) + "\n" }) // the page went with the screen
			if err != nil {
				return err
			}
		}
	}
	var progress casebook.Progress
	if marked {
		if progress, err = casebook.AddProgress(path, m.Practice(c.now())); err != nil {
			return failure(err, "make the file writable; the mark above is right all the same")
		}
	}
	return c.putWords(func(words *message.Catalog) string {
		text := ""
		if marked {
			text = "\n" + progress.Chart(words) + casebook.Repetition(words) + "\n"
		}
		return text + "\n" + words.Print(message.New("This customer again: {1}", message.Name(tidy(c.again(s.Customer))))) + "\n"
	})
}

// again is how to meet the same customer again.
func (c *call) again(one *casebook.Customer) string {
	command := "cutbrief practice"
	if cases := c.text("cases"); cases != "" {
		command += " --cases " + store.ShellWord(cases)
	}
	if one.Name != "" {
		return fmt.Sprintf("%s --case %s --seed %d", command, one.Name, one.Seed)
	}
	return fmt.Sprintf("%s --seed %d --level %d", command, one.Seed, one.Level)
}
