package handbook

import (
	"fmt"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules/csvfile"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/price"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// formats are the pages about files, by the name they are asked for.
var formats = []struct {
	name string
	page func() Page
}{
	{"visit", visit}, {"systems", systems}, {"prices", prices}, {"cases", cases}, {"words", words},
}

// Formats names the files there is a page about.
func Formats() []string {
	var names []string
	for _, f := range formats {
		names = append(names, f.name)
	}
	return names
}

// Format is the page about one kind of file, false if there is none of that
// name.
func Format(name string) (Page, bool) {
	for _, f := range formats {
		if f.name == name {
			return f.page(), true
		}
	}
	return Page{}, false
}

func visit() Page {
	p := Page{
		Title: "A saved visit",
		Says: []string{
			fmt.Sprintf("One JSON file a visit, in UTF-8, of at most %d KiB; its name ends in .json. What the customer said stands in it as said, and is understood anew whenever it is read. Fields nobody knows are kept. The same as a schema for programs: cutbrief schema.", assess.MaxSize/1024),
		},
		Sections: schemaSections(assess.Schema()),
	}
	return Page{p.Title, p.Says, append(p.Sections, questions())}
}

// questions are what an answer can be about.
func questions() Section {
	s := Section{
		Title: "Questions",
		Says:  []string{"A quantity is told with its unit, such as 12 mm or 1/2 in. The range is what is plausible; what lies outside is asked again and sizes nothing. An answer counts only when its question can matter."},
		Head:  []string{"Question", "Means", "For each metal", "Answer", "Range", "Counts only when", "Chosen from"},
	}
	for _, q := range assess.Catalogue() {
		each := ""
		if q.PerMetal {
			each = "yes"
		}
		var options []string
		for _, o := range q.Options {
			options = append(options, o.ID)
		}
		s.Rows = append(s.Rows, []string{string(q.ID), string(q.Name), each, answer(q), q.Range().String(), q.When(), strings.Join(options, ", ")})
	}
	return s
}

// answer says what an answer looks like.
func answer(q *assess.Question) string {
	switch q.Form {
	case assess.FormText:
		return "a line, such as " + string(q.Example)
	case assess.FormLong:
		return "text of several lines"
	case assess.FormDate:
		return "a day, such as " + string(q.Example)
	case assess.FormOne:
		return "one choice"
	case assess.FormSeveral:
		return "any number of choices"
	}
	if q.Kind == unit.Count {
		return "a whole number, such as " + string(q.Example)
	}
	return "a quantity, such as " + string(q.Example)
}

// listLimits holds for both lists that come as CSV.
func listLimits() string {
	return fmt.Sprintf("CSV in UTF-8, of at most %d KiB. A line with an error is left out and named with what would be accepted; a list that holds one is not used.", csvfile.MaxBytes/1024)
}

func systems() Page {
	s := Section{Title: "Columns", Head: []string{"Column", "Means", "Takes", "Must be filled"}}
	for _, c := range system.Columns() {
		must := ""
		if c.Required {
			must = "yes"
		}
		s.Rows = append(s.Rows, []string{c.Name, c.Means, c.Accepts, must})
	}
	says, _ := comments(system.Template())
	return Page{"Systems you can offer", append([]string{listLimits()}, says...), []Section{s}}
}

func prices() Page {
	s := Section{Title: "Items", Head: []string{"Item", "Means", "For each", "At most"}}
	for _, i := range price.Items() {
		means := i.Name
		if i.Means != "" {
			means += ": " + i.Means
		}
		s.Rows = append(s.Rows, []string{string(i.ID), string(means), strings.Join(i.Units(), " or "), number(i.Most())})
	}
	says, _ := comments(price.Template())
	return Page{"Prices to reckon with", append([]string{listLimits()}, says...), []Section{s}}
}

func cases() Page {
	says, rows := comments(casebook.Template())
	return Page{"Practice cases", says, []Section{{Title: "Lines", Head: []string{"Line", "Means"}, Rows: rows}}}
}

func words() Page {
	s := Section{Title: "Rows that are no sentences", Head: []string{"First cell", "Second cell"}}
	for _, r := range catalog.Special() {
		s.Rows = append(s.Rows, []string{r[0], r[1]})
	}
	return Page{
		Title: "Words of your own",
		Says: []string{
			listLimits(),
			"Two columns, english and words: a sentence as the program words it, and what is said instead. {1}, {2} stand for what varies. A sentence without words stays as it is.",
			"To start one: cutbrief words template. To check one: cutbrief words check FILE.",
		},
		Sections: []Section{s},
	}
}

// comments are what a template says of itself at its beginning, up to its first
// list: paragraphs, and lines that explain a word, which stands two spaces or
// more before what it means.
func comments(template string) (says []string, words [][]string) {
	var paragraph []string
	end := func() {
		if len(paragraph) > 0 {
			says = append(says, strings.Join(paragraph, " "))
		}
		paragraph = nil
	}
	for line := range strings.Lines(template) {
		text, comment := strings.CutPrefix(strings.TrimRight(line, "\n"), "#")
		word, means, explains := strings.Cut(strings.TrimPrefix(text, " "), "  ")
		switch {
		case !comment, strings.HasSuffix(text, ":") && !explains:
			end()
			return says, words
		case text == "":
			end()
		case explains && word != "":
			end()
			words = append(words, []string{word, strings.TrimSpace(means)})
		case explains:
			last := words[len(words)-1]
			last[1] += " " + strings.TrimSpace(text)
		default:
			paragraph = append(paragraph, strings.TrimSpace(text))
		}
	}
	end()
	return says, words
}
