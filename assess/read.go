package assess

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"cutbrief/rules/unit"
)

// Read checks what was typed for a step that is answered by text, date or
// quantity, and returns the answer to store and an echo of how it was
// understood ("3/8 in = 9.5 mm"); the echo is "" when there is nothing to add.
// Texts such as "not known" and "?" give an answer whose state is Unknown. An
// error is a *Mistake.
func (v *Visit) Read(s Step, said string) (Answer, string, error) {
	long := s.Question.Form == FormLong
	a := Answer{Question: s.Question.ID, Metal: s.Metal, Said: clean(said, long), State: Told}
	fits := room(said, long)
	switch {
	case fits != "":
		return Answer{}, "", mistake(s, said, "is too long", "give "+fits)
	case a.Said == "":
		return Answer{}, "", mistake(s, "", "nothing was said", "give "+s.Question.Example+", or say not known")
	case isUnknown(a.Said):
		return NotKnown(s), "not known", nil
	}
	switch s.Question.Form {
	case FormQuantity:
		return v.readQuantity(s, a)
	case FormDate:
		return a, "", checkDate(s, a.Said)
	case FormText, FormLong:
		return a, "", nil
	}
	return Answer{}, "", mistake(s, said, "is typed, but this is chosen from a list", "choose "+byNumber(v.Options(s)))
}

// checkDate accepts year-month-day only, so that no reader takes a month for a
// day.
func checkDate(s Step, said string) error {
	if _, err := time.Parse(time.DateOnly, said); err != nil {
		return mistake(s, said, "is not a date", "give year, month and day like 2026-11-25")
	}
	return nil
}

func (v *Visit) readQuantity(s Step, a Answer) (Answer, string, error) {
	m, err := understand(s, a, v.Style())
	if err != nil {
		return Answer{}, "", err
	}
	if m.reading.Bare {
		a.Unit = m.reading.Unit
	}
	if m.guess {
		a.State = Assumed
	}
	return a, echo(s, a, m, v.Style()), nil
}

// echo says how a quantity was understood, or nothing if it was said just so.
func echo(s Step, a Answer, m meaning, style unit.Style) string {
	if m.none {
		return a.Said + " → none"
	}
	shown := show(m.reading, style)
	if (m.guess || m.larger) && s.Question.Kind != unit.Price {
		return a.Said + " → " + shown + pace(m) + taken(m) + note(m)
	}
	said := a.Said
	switch length, _ := splitPace(a.Said); {
	case m.reading.Unit == "ga":
		said += " " + s.metalName()
	case m.reading.Unit == "" && sameText(said, shown):
		return ""
	case s.Question.Kind == unit.Price:
		return price(a, m) + taken(m)
	case m.reading.Bare && sameText(length+m.reading.Unit, shown):
		return a.Said + " → " + shown + pace(m) + note(m)
	case m.reading.Bare && m.reading.Unit != "AWG":
		said += " → " + length + " " + m.reading.Unit
	}
	shown += pace(m)
	if sameText(said, shown) {
		return strings.TrimPrefix(note(m), ": ")
	}
	return said + " = " + shown + note(m)
}

// taken says how a guess or a range is taken.
func taken(m meaning) string {
	text := ""
	if m.larger {
		text = ", the larger"
	}
	if m.guess {
		text += ", kept as assumed"
	}
	return text
}

// price says in which currency a sum is taken.
func price(a Answer, m meaning) string {
	if m.reading.Bare {
		return a.Said + " → in the currency of the price list"
	}
	return a.Said + " → taken as a sum in the currency of the price list: make sure that is " + m.reading.Unit
}

// pace says the period of a cut length.
func pace(m meaning) string {
	if m.period == "" {
		return ""
	}
	return " a " + m.period
}

// note says what is worth knowing about the unit that was read.
func note(m meaning) string {
	if m.reading.Note == "" {
		return ""
	}
	return ": " + m.reading.Note
}

// sameText compares what was said with how it is shown, a leading zero apart.
func sameText(a, b string) bool {
	return strings.EqualFold(strings.TrimPrefix(squeeze(a), "0"), strings.TrimPrefix(squeeze(b), "0"))
}

// show writes a reading for a reader. Gauge keeps a second decimal, as one
// gauge and the next can lie within a tenth of a millimetre. What was said in
// inches is shown in millimetres, and the other way round where it helps.
func show(r unit.Reading, style unit.Style) string {
	if r.Quantity.Kind == unit.Thickness && r.Unit == "ga" {
		return fmt.Sprintf("%.2f mm", r.Quantity.Value)
	}
	if style == unit.Inch && r.Quantity.Kind == unit.Thickness && r.Unit != "mm" && !r.Bare {
		style = unit.Metric
	}
	return unit.Show(r.Quantity, style, unit.Nearest)
}

func squeeze(s string) string { return strings.ReplaceAll(s, " ", "") }

// Choose checks the options chosen for a step and returns the answer. An error
// is a *Mistake, whose hint names options by their number and text.
func (v *Visit) Choose(s Step, options []string) (Answer, error) {
	return v.choose(s, options, byNumber)
}

// ChooseSaved is Choose for what stands in a file: its hint names options as they
// are saved.
func (v *Visit) ChooseSaved(s Step, options []string) (Answer, error) {
	return v.choose(s, options, asSaved)
}

func (v *Visit) choose(s Step, options []string, name func([]Option) string) (Answer, error) {
	a := Answer{Question: s.Question.ID, Metal: s.Metal, State: Told}
	for _, id := range options {
		if !slices.Contains(a.Chosen, id) {
			a.Chosen = append(a.Chosen, id)
		}
	}
	return a, checkChosen(s, a.Chosen, v.Options(s), name)
}

// checkChosen reports options that are not on offer, too many, or none. name
// says what there is to choose: by number to a person, as saved for a file.
func checkChosen(s Step, chosen []string, offered []Option, name func([]Option) string) error {
	form := s.Question.Form
	if form != FormOne && form != FormSeveral {
		return mistake(s, strings.Join(chosen, ", "), "is chosen, but this is typed", "give "+s.Question.Example)
	}
	if len(chosen) == 0 {
		return mistake(s, "", "nothing was chosen", "choose "+name(offered)+", or say not known")
	}
	for _, id := range chosen {
		if !offers(offered, id) {
			return mistake(s, id, "is not one of the choices", "choose "+name(offered))
		}
	}
	if form == FormOne && len(chosen) > 1 {
		return mistake(s, strings.Join(chosen, ", "), "is more than one choice", "choose one of "+name(offered))
	}
	return nil
}

func offers(options []Option, id string) bool {
	for _, o := range options {
		if o.ID == id {
			return true
		}
	}
	return false
}

// few is how many options a hint names one by one.
const few = 3

// byNumber names options as the screens number them.
func byNumber(options []Option) string {
	numbered := make([]string, len(options))
	for i, o := range options {
		numbered[i] = fmt.Sprintf("%d (%s)", i+1, o.Text)
	}
	if len(options) <= few {
		return strings.Join(numbered, ", ")
	}
	return "by number, from " + numbered[0] + " to " + numbered[len(numbered)-1]
}

// asSaved names the identifiers of options.
func asSaved(options []Option) string { return strings.Join(optionNames(options), ", ") }
