package assess

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// Read checks what was typed for a step that is answered by text, date or
// quantity, and returns the answer to store and an echo of how it was
// understood ("3/8 in = 9.5 mm"); the echo is "" when there is nothing to add.
// Texts such as "not known" and "?" give an answer whose state is Unknown. An
// error is a *Mistake.
func (v *Visit) Read(s Step, said string) (Answer, message.Message, error) {
	long := s.Question.Form == FormLong
	a := Answer{Question: s.Question.ID, Metal: s.Metal, Said: clean(said, long), State: Told}
	fits := room(said, long)
	switch {
	case !fits.IsEmpty():
		return Answer{}, message.Message{}, mistake(s, said, "is too long", message.New("give {1}", fits))
	case a.Said == "":
		return Answer{}, message.Message{}, mistake(s, "", "nothing was said", message.New("give {1}, or say not known", s.Question.Example))
	case isUnknown(a.Said):
		return NotKnown(s), message.New("not known"), nil
	}
	switch s.Question.Form {
	case FormQuantity:
		return v.readQuantity(s, a)
	case FormDate:
		return a, message.Message{}, checkDate(s, a.Said)
	case FormText, FormLong:
		return a, message.Message{}, nil
	}
	return Answer{}, message.Message{}, mistake(s, said, "is typed, but this is chosen from a list", message.New("choose {1}", byNumber(v.Options(s))))
}

// checkDate accepts year-month-day only, so that no reader takes a month for a
// day.
func checkDate(s Step, said string) error {
	if _, err := time.Parse(time.DateOnly, said); err != nil {
		return mistake(s, said, "is not a date", message.New("give year, month and day like 2026-11-25"))
	}
	return nil
}

func (v *Visit) readQuantity(s Step, a Answer) (Answer, message.Message, error) {
	m, err := understand(s, a, v.Style())
	if err != nil {
		return Answer{}, message.Message{}, err
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
func echo(s Step, a Answer, m meaning, style unit.Style) message.Message {
	said, shown := message.Name(a.Said), show(m.reading, style)
	length, _ := splitPace(a.Said)
	inFull := m.noted(m.aPeriod(message.Number(shown)))
	switch sum := s.Question.Kind == unit.Price; {
	case m.none:
		return message.New("{1} → none", said)
	case (m.guess || m.larger) && !sum:
		return message.New("{1} → {2}", said, m.noted(m.taken(m.aPeriod(message.Number(shown)))))
	case m.reading.Unit == "ga":
		return message.New("{1} {2} = {3}", said, s.metalName(), inFull)
	case m.reading.Unit == "" && sameText(a.Said, shown):
		return message.Message{}
	case sum:
		return m.taken(price(a, m))
	case m.reading.Bare && sameText(length+m.reading.Unit, shown):
		return message.New("{1} → {2}", said, inFull)
	case m.reading.Bare && m.reading.Unit != "AWG":
		return message.New("{1} → {2} = {3}", said, message.Figure(length+" "+m.reading.Unit), inFull)
	case sameText(a.Said, shown+m.every()):
		return message.ID(m.reading.Note).Message()
	}
	return message.New("{1} = {2}", message.Figure(a.Said), inFull)
}

// taken says how a guess or a range is taken.
func (m meaning) taken(of message.Message) message.Message {
	if m.larger {
		of = message.New("{1}, the larger", of)
	}
	if m.guess {
		of = message.New("{1}, kept as assumed", of)
	}
	return of
}

// price says in which currency a sum is taken.
func price(a Answer, m meaning) message.Message {
	if m.reading.Bare {
		return message.New("{1} → in the currency of the price list", message.Name(a.Said))
	}
	return message.New("{1} → taken as a sum in the currency of the price list: make sure that is {2}", message.Name(a.Said), message.Name(m.reading.Unit))
}

// every is the period of a cut length as it is said: " a day".
func (m meaning) every() string {
	if m.period == "" {
		return ""
	}
	return " a " + m.period
}

// aPeriod says the period of a cut length.
func (m meaning) aPeriod(length message.Message) message.Message {
	switch m.period {
	case "day":
		return message.New("{1} a day", length)
	case "week":
		return message.New("{1} a week", length)
	}
	return length
}

// noted says what is worth knowing about the unit that was read.
func (m meaning) noted(of message.Message) message.Message {
	if m.reading.Note == "" {
		return of
	}
	return message.New("{1}: {2}", of, message.ID(m.reading.Note))
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

func (v *Visit) choose(s Step, options []string, name func([]Option) message.Message) (Answer, error) {
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
func checkChosen(s Step, chosen []string, offered []Option, name func([]Option) message.Message) error {
	form := s.Question.Form
	if form != FormOne && form != FormSeveral {
		return mistake(s, strings.Join(chosen, ", "), "is chosen, but this is typed", give(s))
	}
	if len(chosen) == 0 {
		return mistake(s, "", "nothing was chosen", message.New("choose {1}, or say not known", name(offered)))
	}
	for _, id := range chosen {
		if !offers(offered, id) {
			return mistake(s, id, "is not one of the choices", message.New("choose {1}", name(offered)))
		}
	}
	if form == FormOne && len(chosen) > 1 {
		return mistake(s, strings.Join(chosen, ", "), "is more than one choice", message.New("choose one of {1}", name(offered)))
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
func byNumber(options []Option) message.Message {
	numbered := make([]message.Message, len(options))
	for i, o := range options {
		numbered[i] = message.New("{1} ({2})", message.Name(strconv.Itoa(i+1)), o.Text)
	}
	if len(options) <= few {
		return message.Join(", ", numbered...)
	}
	return message.New("by number, from {1} to {2}", numbered[0], numbered[len(numbered)-1])
}

// asSaved names the identifiers of options.
func asSaved(options []Option) message.Message {
	return message.Text(strings.Join(optionNames(options), ", "))
}
