package main

import (
	"os"
	"slices"
	"strings"

	"cutbrief/assess/casebook"
	"cutbrief/assess/store"
	"cutbrief/report"
	"cutbrief/report/export"
	"cutbrief/report/handbook"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
)

// rootCommand is the command without a name: the interview. Those below it are
// listed by name.
func rootCommand() command {
	return command{
		use:   "cutbrief",
		flags: append(slices.Clip(interviewFlags), versionFlag),
		run: func(c *call) error {
			if c.on(versionFlag.name) {
				return c.put(version() + "\n")
			}
			return holdInterview(c)
		},
		below: rows(),
	}
}

// rows are those with a name, one row each: what is typed, what it takes, and
// what it does.
func rows() []command {
	return []command{
		{use: "interview [FILE]", args: arguments{most: 1, what: "the file of one visit"}, flags: interviewFlags, run: holdInterview},
		{
			use: "sample [NAME]", run: showSamples,
			args: arguments{most: 1, what: "the name of one visit", values: casebook.DemoVisits(), refuse: "{1} is not an invented visit"},
			flags: []option{
				{name: "list", value: false, usage: "list the invented visits"},
				{name: "save", value: "", usage: "`file` to keep the visit in as well"},
				{name: "folder", value: "", usage: "new `folder` to write all invented visits into, and nothing else"},
				{name: "force", value: false, usage: "write over files of the same name"},
			},
		},
		{
			use: "brief FILE...", run: brief,
			args: arguments{least: 1, most: -1, what: "the file of a visit"},
			flags: []option{formatFlag(export.FormatPDF, export.FormatText, export.FormatMarkdown, export.FormatJSON, export.FormatHTML).with("", "{1} (default: what --out ends in, else pdf)"), paperFlag, unitsFlag, forceFlag,
				{name: "out", value: "", usage: "`path` of the file or folder to write to; - is standard output"},
				{name: "with", value: []string(nil), usage: "what to add behind the page: {1}", values: report.Extras(), refuse: "{1} is nothing that can be added"}},
		},
		{use: "verify PAGE FILE", args: arguments{least: 2, most: 2, what: "a page, and the file of its visit"}, flags: []option{unitsFlag}, run: verify},
		{
			use: "why FILE [TOPIC]", run: showing(derivationOf),
			args:  arguments{least: 1, most: 2, what: "the file of a visit, and perhaps a topic", complete: completeTopic},
			flags: []option{unitsFlag, formatFlag(export.FormatText, export.FormatMarkdown, export.FormatJSON)},
		},
		{use: "next FILE", args: oneVisit, flags: []option{formatFlag(export.FormatText, export.FormatJSON)}, run: showing(questionsOf)},
		{
			use: "practice", run: holdPractice,
			flags: []option{
				{name: "case", value: "", usage: "`name` of the customer to meet", complete: casebook.Names},
				{name: "cases", value: "", usage: "`file` with cases of your own, beside the built-in ones"},
				{name: "seed", value: uint64(0), usage: "`number` to make a customer from; with --case it chooses the words"},
				{name: "level", value: 0, usage: "1, easy, to 5, hard (default: any)"},
				{name: "plain", value: false, usage: "go line by line, without drawing a screen"},
				{name: "list", value: false, usage: "list the customers and leave"},
				{name: "report", value: false, usage: "print your progress and leave"},
				formatFlag(export.FormatText, export.FormatCSV, export.FormatJSON).with("text", "format of the report: {1}"),
			},
			below: []command{
				checkCommand(checkCases),
				templateCommand(casebook.Template),
			},
		},
		{
			use: "review [DIR]", run: holdReview,
			tables: handbook.Filters,
			args:   arguments{most: 1, what: "one folder"},
			flags: []option{
				formatFlag(export.FormatTable, export.FormatCSV, export.FormatJSON, export.FormatNDJSON, export.FormatMarkdown, export.FormatPDF, export.FormatWorkbook),
				paperFlag.with("a4", "paper size of --format pdf: {1}"),
				{name: "where", value: "", usage: "keep only the rows this holds for, such as 'verdict = open'"},
				{name: "sort", value: "-date", usage: "fields to sort by, with a comma between; a minus puts the largest first"},
				{name: "fields", value: "", usage: "fields to show, with a comma between"},
				{name: "by", value: "", usage: "count by one `field` instead of a list: {1}", values: countable, refuse: "visits are not counted by {1}"},
				{name: "tally", value: false, usage: "count all visits instead of a list, as bars"},
				{name: "quote", value: false, usage: "with --tally: quote what was noted where the answer was no"},
				{name: "out", value: "", usage: "`path` of the page of --format pdf or the workbook of --format xlsx; - is standard output (default: team.pdf or review.xlsx here)"},
				{name: "force", value: false, usage: "write over a file that exists"},
				{name: "measured", value: false, usage: "compare the cuts timed in demonstrations with the prediction"},
			},
		},
		{use: "many COUNT DIR", hidden: true, args: arguments{least: 2, most: 2, what: "a count and a new folder"}, run: writeMany},
		{
			use: "systems", run: showSystems,
			below: []command{checkCommand(check(store.Systems)), {use: "add FILE", args: oneFile, run: addSystem}, templateCommand(system.Template)},
		},
		{
			use: "schema [visit|row]", run: showSchema,
			args: arguments{most: 1, what: "the name of one schema", values: []string{"visit", "row"}, refuse: "there is no schema of {1}"},
		},
		{
			use: "completion " + strings.Join(shells, "|"), run: completeFor,
			args: arguments{least: 1, most: 1, what: "the name of one shell", values: shells, refuse: "there is no completion for {1}"},
		},
		{use: "version", run: func(c *call) error { return c.put(version() + "\n") }},
		{
			use: "cost FILE", args: oneVisit, run: showing(costOf),
			flags: append(slices.Clip(bookFlags), unitsFlag, formatFlag(export.FormatText, export.FormatMarkdown, export.FormatCSV, export.FormatJSON, export.FormatWorkbook)),
		},
		{
			use: "compare FILE", args: oneVisit, run: showing(comparisonOf),
			flags: append(slices.Clip(bookFlags), unitsFlag, formatFlag(export.FormatText, export.FormatMarkdown, export.FormatJSON, export.FormatWorkbook),
				option{name: "only", value: []string(nil), usage: "the systems to compare, by `id`, with commas between"}),
		},
		{use: "prices", run: showPrices, below: []command{checkCommand(check(store.Prices)), templateCommand(cost.PricesTemplate)}},
		{
			use: "words", run: showWords,
			below: []command{
				checkCommand(check(store.Words)),
				{
					use: "convert FILE", args: oneFile,
					run: func(c *call) error {
						file, err := os.ReadFile(c.args[0])
						if err != nil {
							return message.WithHint(err, "check the name")
						}
						return c.put(catalog.Convert(string(file)))
					},
				},
				{
					use:  "template [de]",
					args: arguments{most: 1, what: "one language", values: catalog.Languages(), refuse: "there are no words in {1}"},
					run:  func(c *call) error { return c.put(catalog.Template(c.arg(0))) },
				},
			},
		},
		{
			use: "rehearse FILE", run: holdRehearsal,
			args:  writtenVisit,
			flags: []option{{name: "plain", value: false, usage: "print the plan as text, without drawing a screen"}},
		},
		{
			use: "record FILE", run: holdRecord,
			args:  writtenVisit,
			flags: []option{{name: "date", value: "", usage: "the `day` of the demonstration, such as 2026-12-01 (default: today)"}},
		},
		{
			use: "followup FILE...", run: followUp,
			args:  arguments{least: 1, most: -1, what: "the file of a visit"},
			flags: []option{formatFlag(export.FormatText, export.FormatCalendar), outFlag, forceFlag},
		},
		{use: "redact FILE", args: oneVisit, flags: []option{outFlag, forceFlag}, run: redact},
		{
			use: "doctor", run: examine,
			flags: []option{formatFlag(export.FormatText, export.FormatJSON),
				{name: "dir", value: "", usage: "`folder` of visits to look at (default: CUTBRIEF_DIR, else in your data folder)"}},
		},
		{
			use: "guide [" + strings.Join(handbook.Readers(), "|") + "]", run: showGuide,
			args:  arguments{most: 1, what: "the name of one reader", values: handbook.Readers(), refuse: "there is no guide for {1}"},
			flags: []option{formatFlag(export.FormatText, export.FormatMarkdown)},
		},
		{
			use: "rules", run: showRules,
			flags: []option{formatFlag(export.FormatText, export.FormatMarkdown),
				{name: "trust", value: "", usage: "only what is known like this: {1}", values: handbook.Trusts(), refuse: "{1} is no kind of trust"}},
		},
		{
			use: "formats " + strings.Join(handbook.Formats(), "|"), run: showFormats,
			args:  arguments{least: 1, most: 1, what: "the name of one kind of file", values: handbook.Formats(), refuse: "{1} is not a kind of file of this program"},
			flags: []option{formatFlag(export.FormatText, export.FormatMarkdown)},
		},
		{use: "manual DIR", hidden: true, args: arguments{least: 1, most: 1, what: "the name of one folder"}, run: writeManual},
	}
}
