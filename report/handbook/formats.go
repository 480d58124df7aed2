package handbook

import (
	"encoding/json"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
	"cutbrief/rules/tabular"
	"cutbrief/rules/unit"
)

// formats are the pages about files, by the name they are asked for.
var formats = []struct {
	name string
	page func(writer) Page
}{
	{"visit", writer.visit}, {"systems", writer.systems}, {"prices", writer.prices}, {"cases", writer.cases}, {"words", writer.phrases},
}

// Formats names the files there is a page about.
func Formats() []string {
	names := make([]string, len(formats))
	for i, f := range formats {
		names[i] = f.name
	}
	return names
}

// Format is the page about one kind of file in the words asked for, false if
// there is none of that name.
func Format(name string, words *message.Catalog) (Page, bool) {
	for _, f := range formats {
		if f.name == name {
			return f.page(writer{words}), true
		}
	}
	return Page{}, false
}

func (w writer) visit() Page {
	var schema node
	_ = json.Unmarshal(assess.Schema(), &schema) // it is the program's own; a test reads it
	return Page{
		Title: w.say("A saved visit"),
		Says: []string{w.say("One JSON file a visit, in UTF-8, of at most {1} KiB; its name ends in .json. What the customer said is in it as said, and is understood anew whenever it is read. Fields nobody knows are kept. The same as a schema for programs: cutbrief schema.",
			message.Count(assess.MaxSize/1024))},
		Sections: append(w.sections(schema, message.ID("The file").Message()), table(w, "Questions",
			w.paragraphs("A quantity is given with its unit, such as 12 mm or 1/2 in. The range is what is plausible; what is outside is asked again and is not used. An answer counts only when its question can matter."),
			[]message.ID{"Question", "Means", "For each metal", "Answer", "Range", "Counts only when", "Chosen from"}, assess.Catalogue(),
			func(q *assess.Question) []any {
				var options []string
				for _, o := range q.Options {
					options = append(options, o.ID)
				}
				return []any{message.Name(q.ID), q.Name, yes(q.PerMetal), answer(q), q.Range(), q.When(), message.Name(strings.Join(options, ", "))}
			})),
	}
}

// answer says what an answer looks like.
func answer(q *assess.Question) message.Message {
	switch q.Form {
	case assess.FormText:
		return message.New("a line, such as {1}", q.Example)
	case assess.FormLong:
		return message.ID("text of several lines").Message()
	case assess.FormDate:
		return message.New("a day, such as {1}", q.Example)
	case assess.FormOne:
		return message.ID("one choice").Message()
	case assess.FormSeveral:
		return message.ID("any number of choices").Message()
	}
	if q.Kind == unit.Count {
		return message.New("a whole number, such as {1}", q.Example)
	}
	return message.New("a quantity, such as {1}", q.Example)
}

// listPage is the page about a list that comes as CSV: its limits, what its
// template says of itself, and one table.
func (w writer) listPage(title message.ID, template string, s Section) Page {
	p := Page{Title: w.say(title), Says: []string{w.say("CSV in UTF-8, of at most {1} KiB. A line with an error is left out and named with what would be accepted; a list that holds one is not used.", message.Count(tabular.MaxBytes/1024))}, Sections: []Section{s}}
	says, _ := comments(template)
	p.Says = append(p.Says, w.sentences(says)...)
	return p
}

func (w writer) systems() Page {
	return w.listPage("Systems you can offer", system.Template(), table(w, "Columns", nil, []message.ID{"Column", "Means", "Takes", "Must be filled"}, system.Columns(),
		func(c system.Column) []any { return []any{message.Name(c.Name), c.Means, c.Accepts, yes(c.Required)} }))
}

func (w writer) prices() Page {
	return w.listPage("Prices to calculate with", cost.PricesTemplate(), table(w, "Items", nil, []message.ID{"Item", "Means", "Counted per", "Largest"}, cost.Items(),
		func(i cost.Item) []any {
			means := i.Name.Message()
			if i.Means != "" {
				means = message.New("{1}: {2}", means, i.Means)
			}
			return []any{message.Name(i.ID), means, message.Or(message.Each(i.Units(), message.Text)...), figure(i.Most())}
		}))
}

func (w writer) cases() Page {
	says, lines := comments(casebook.Template())
	return Page{w.say("Practice cases"), w.sentences(says), []Section{table(w, "Lines", nil, []message.ID{"Line", "Means"}, lines, func(l [2]string) []any { return []any{message.Name(l[0]), l[1]} })}}
}

func (w writer) phrases() Page {
	p := w.listPage("Texts of your own (wording file)", "", table(w, "Rows that are no texts", nil, []message.ID{"First cell", "Second cell"}, catalog.Special(), func(r [2]message.ID) []any { return []any{message.Name(r[0]), r[1]} }))
	p.Says = append(p.Says, w.say("Two columns, english and words: a text of the program, and what to say instead. {1}, {2} mark what varies. A text without words stays as it is.", message.Name("{1}"), message.Name("{2}")),
		w.say("To start one: cutbrief words template. To check one: cutbrief words check FILE."))
	return p
}

// comments are what a template says of itself at its beginning, up to its first
// list: paragraphs, and lines that explain a word, which stands two spaces or
// more before what it means.
func comments(template string) (says []string, words [][2]string) {
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
			words = append(words, [2]string{word, strings.TrimSpace(means)})
		case explains:
			words[len(words)-1][1] += " " + strings.TrimSpace(text)
		default:
			paragraph = append(paragraph, strings.TrimSpace(text))
		}
	}
	end()
	return says, words
}
