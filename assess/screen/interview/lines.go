package interview

import (
	"strconv"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/report/text"
	"cutbrief/rules"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// lineView is the model line by line: a line in is a word or an answer, and what
// comes of it is printed.
type lineView struct {
	*screen.Lines
	m    *Model
	over bool // the rep has left
}

// RunLines asks line by line until the rep says quit or the input ends. Every
// answer is saved as it is taken; the error is that of reading the input.
func RunLines(o Options) (Outcome, error) {
	l := &lineView{Lines: screen.NewLines(o.Input, o.Output, o.Words), m: newModel(o)}
	for _, line := range welcome {
		l.Put(line)
	}
	if !o.InOrder && !o.Learned.IsEmpty() {
		l.Print("")
		l.Say(o.Learned)
	}
	var inputEnd bool
	for show := true; !l.over; {
		l.show(show)
		line, ok := l.Ask()
		if inputEnd = !ok; inputEnd {
			break
		}
		show = l.take(line)
	}
	return l.end(inputEnd), l.Err()
}

var welcome = []message.ID{
	"cutbrief interview, line by line.",
	"Answer each question on one line. You can type these words at any question:",
	"back, help, not known, note and a text, later (ask the rest of the group at the end),",
	"skip (leave the group out), list, go and a number, clear, measured, assumed, told,",
	"say and a sentence (what they said, to answer several questions at once),",
	"what if and a figure (try it; nothing changes), result, quit.",
	"An empty line skips the question.",
}

// show prints what is asked: the question, or the result if it was not shown yet.
func (l *lineView) show(anew bool) {
	if l.m.state == listing { // no question matters any more
		l.m.openResult()
	}
	if l.m.state == offering {
		l.offer()
		return
	}
	if l.m.state != reading {
		if anew {
			l.question()
		}
		return
	}
	if anew {
		l.result()
	}
	l.Put("Type page (make the page), what if and a figure, list, go and a number, choose (what decides), back or quit.")
}

// end saves what no save has reached, and says how it ended.
func (l *lineView) end(inputEnd bool) Outcome {
	m := l.m
	if m.step.Question != nil {
		m.field = m.fieldFor(m.standing(m.step)) // what was refused was said to be
	}
	if m.saved < m.change {
		l.run(m.save())
	}
	out := m.finish()
	out.InputEnd = inputEnd
	switch {
	case !inputEnd:
	case out.Path == "":
		l.Print("")
		l.Put("The input has ended. Nothing was answered, so nothing is saved.")
	case out.Unsaved == nil:
		l.Print("")
		l.Put("The input has ended. All accepted answers are saved in {1}.", outside(out.Path))
	}
	return out
}

// run does what a change asks for at once, and says what it brought.
func (l *lineView) run(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.BatchMsg:
		for _, c := range msg {
			l.run(c)
		}
	case tea.QuitMsg:
		l.over = true
	case savedMsg:
		l.run(l.m.Receive(msg))
		if msg.err != nil {
			l.Say(message.New("{1}. Your answers are kept while this runs; the next one tries again", l.m.fault).Sentence())
			if l.m.offersPlace() {
				l.Put("To save elsewhere type save in, and a folder or the name of a new file.")
			}
		}
	default:
		l.run(l.m.Receive(msg))
		l.Say(message.Join("", l.m.fault, l.m.Told).Capital())
	}
}

// do runs a change and says what happened.
func (l *lineView) do(change func() tea.Cmd) {
	l.m.Told = message.Message{}
	cmd := change()
	if !l.m.Told.IsEmpty() {
		l.Say(l.m.Told.Sentence())
		l.m.Told = message.Message{}
	}
	l.run(cmd)
}

// words are the lines that are no answer, in small letters: what they do, and
// whether what is asked is then printed. They are understood in the words of the
// language too.
var words = map[string]struct {
	do   func(*lineView)
	show bool
}{
	"":          {func(l *lineView) { l.do(l.m.accept) }, true},
	"not known": {func(l *lineView) { l.do(l.m.notKnown) }, true},
	"-":         {func(l *lineView) { l.do(l.m.notKnown) }, true},
	"later":     {func(l *lineView) { l.do(func() tea.Cmd { return l.m.putOff("back") }) }, true},
	"skip":      {(*lineView).skip, true},
	"result":    {func(l *lineView) { l.do(l.m.toResult) }, true},
	"quit":      {func(l *lineView) { l.over = true }, false},
	"help":      {(*lineView).help, false},
	"?":         {(*lineView).help, false},
	"list":      {(*lineView).list, false},
	"clear":     {func(l *lineView) { l.do(l.m.remove) }, false},
	"told":      {func(l *lineView) { l.known(assess.Told) }, false},
	"measured":  {func(l *lineView) { l.known(assess.Measured) }, false},
	"assumed":   {func(l *lineView) { l.known(assess.Assumed) }, false},
	"page":      {(*lineView).page, false},
}

// take does what a line asks for, and reports whether what is asked is to be
// printed again. An answer is taken as it was typed, also where it begins like a
// word.
func (l *lineView) take(typed string) bool {
	line := strings.TrimSpace(l.Words.Word(typed))
	first, rest, _ := strings.Cut(line, " ")
	first, rest = strings.ToLower(first), strings.TrimSpace(rest)
	ended := l.m.state == reading
	if l.m.state == offering {
		l.offered(line)
		return true
	}
	if w, is := words[strings.ToLower(line)]; is && !(ended && atQuestions[strings.ToLower(line)]) && (ended || first != "page") {
		w.do(l)
		return w.show
	}
	place, elsewhere := cutWords(line, "save in ")
	supposed, supposing := cutWords(line+" ", "what if ")
	switch {
	case supposing:
		l.whatIf(supposed)
		return false
	case elsewhere && l.m.offersPlace():
		l.saveIn(place)
		return !ended
	case first == "say" && rest != "":
		l.sentence(rest)
		return true
	case first == "go" && isNumber(rest):
		return l.jump(rest)
	case strings.ToLower(line) == "back":
		return l.back()
	case ended && (first == "choose" || first == "overrule"):
		return l.decide(rest)
	case ended:
		return false
	case first == "note":
		l.note(rest)
		return false
	}
	return l.answer(strings.TrimSpace(typed))
}

// atQuestions are the words that mean nothing once the questions are done.
var atQuestions = map[string]bool{"": true, "not known": true, "-": true, "later": true, "skip": true, "clear": true, "told": true, "measured": true, "assumed": true, "help": true, "?": true}

func isNumber(s string) bool {
	_, err := strconv.Atoi(s)
	return err == nil
}

// cutWords cuts words off the beginning of a line, whatever their capitals.
func cutWords(line, words string) (rest string, found bool) {
	if len(line) < len(words) || !strings.EqualFold(line[:len(words)], words) {
		return "", false
	}
	return strings.TrimSpace(line[len(words):]), true
}

// answer takes a line as the answer; false if it has to be asked again.
func (l *lineView) answer(line string) bool {
	m := l.m
	m.wrong = nil
	_, offered := m.Visit.Offered(m.step)
	switch form := m.step.Question.Form; {
	case offered && line == "=":
		l.do(m.takeOffer)
		return true
	case form == assess.FormOne || form == assess.FormSeveral:
		l.run(m.line(line))
	case form == assess.FormLong:
		m.field = m.fieldFor(screen.Draft{Text: l.Text(line)})
	default:
		m.field = m.fieldFor(screen.Draft{Text: line})
	}
	var heard message.Message
	if len(m.wrong) == 0 {
		m.understand()
		heard = m.echo
		l.do(func() tea.Cmd {
			save := m.accept()
			if len(m.wrong) == 0 && !heard.IsEmpty() {
				l.Put("Understood: {1}", heard)
			}
			return save
		})
	}
	if len(m.wrong) == 0 {
		return true
	}
	l.Put("Not accepted: {1}.", m.wrong[0])
	for _, hint := range m.wrong[1:] {
		l.Put("Hint: {1}.", hint)
	}
	m.field = m.fieldFor(m.standing(m.step))
	return false
}

// back goes to the question before; the first one has none.
func (l *lineView) back() bool {
	m := l.m
	before, shown := m.stepBefore()
	switch {
	case shown:
		m.putAside()
	case m.state == reading && len(m.steps) > 0:
		before = m.steps[0]
	default:
		l.Put("This is the first question. Type quit to leave.")
		return false
	}
	m.revisit(before)
	return true
}

// skip leaves the rest of the group out of this visit.
func (l *lineView) skip() {
	l.do(func() tea.Cmd { return l.m.skipGroup(l.m.step.Question.Group, "the list brings it back") })
	l.m.course.Leave(l.m.step)
	l.m.goOn()
}

// known says how the answer is known, the stored one or the next one.
func (l *lineView) known(s assess.State) {
	a, has := l.m.answer()
	said := message.ID("Kept as {1}.")
	if !has || a.State == assess.Unknown {
		said = "The answer will be kept as {1}."
	}
	l.do(func() tea.Cmd { return l.m.setKnown(s) })
	l.Put(said, stateNames[s])
}

func (l *lineView) note(text string) {
	if text == "" {
		l.Put("Type note and then the text.")
		return
	}
	l.do(func() tea.Cmd { return l.m.note(text) })
}

// jump goes to the question with a number of the list, or takes the group with
// that number back in; false if there is none.
func (l *lineView) jump(number string) bool {
	m := l.m
	n, _ := strconv.Atoi(number)
	skipped := m.Visit.Skipped
	if m.state == reading {
		m.home = reading
	}
	switch g := n - len(m.steps) - 1; {
	case n >= 1 && g < 0:
		m.revisit(m.steps[n-1])
		return true
	case n >= 1 && g < len(skipped):
		group := skipped[g]
		l.do(func() tea.Cmd { return m.takeIn(group) })
		for _, s := range m.steps {
			if s.Question.Group == group {
				m.show(s)
				return true
			}
		}
		return false
	}
	l.Put("There is no question {1}.", message.Name(number))
	return false
}

// saveIn goes on in another place and saves there.
func (l *lineView) saveIn(place string) {
	m := l.m
	if err := m.writer.moveTo(place); err != nil {
		l.Put("Not saved: {1}.", outside(err.Error()))
		return
	}
	l.run(m.save())
	if m.saved >= m.change {
		l.Put("Saved in {1}.", outside(m.kept))
	}
}

// decide takes "3 because of what was seen": the requirement and the reason.
func (l *lineView) decide(rest string) bool {
	choices := l.m.requirements()
	number, reason, _ := strings.Cut(rest, " ")
	chosen := screen.Chosen(choices, number)
	reason = sanitize.Line(reason)
	switch {
	case number == "0":
		l.do(func() tea.Cmd { return l.m.decide(nil) })
	case len(chosen) == 0 || chosen[0] == number || reason == "":
		for i, c := range choices {
			l.Put("{1}. {2}", message.Count(i+1), message.Name(c.Text))
		}
		l.Put("Type choose, a number and your reason. The reason is kept and printed.")
		l.Put("Type choose 0 to let the answers decide.")
		return false
	default:
		l.do(func() tea.Cmd {
			return l.m.decide(&rules.Overrule{Requirement: rules.Requirement(chosen[0]), Reason: reason})
		})
	}
	return true
}

// question prints what is asked, why, what can be said, and what is stored
// already.
func (l *lineView) question() {
	m := l.m
	q := m.step.Question
	l.Print("")
	if at, of := m.step.PlaceInGroup(m.steps); m.InOrder {
		l.Put("{1}, {2} of {3}", q.Group.Title(), message.Count(at), message.Count(of))
	} else {
		l.Say(q.Group.Title())
	}
	l.Say(m.step.Text())
	l.Put(q.Why)
	for i, c := range m.field.Spec.Choices {
		l.Put("{1}. {2}", message.Count(i+1), message.Name(c.Text))
	}
	switch q.Form {
	case assess.FormOne:
		l.Put("Type one number.")
	case assess.FormSeveral:
		l.Put("Type one or more numbers, such as 1, 3.")
	default:
		l.Say(message.New("for example: {1}", q.Example).Capital())
	}
	if q.Form == assess.FormLong {
		l.Put("Type as many lines as you like, then a line with a single dot.")
	}
	l.stored()
	if m.isSettled() {
		l.Say(message.New("{1}: type result", settledText).Capital())
	}
}

// stored says what is answered already, and what an empty line would do.
func (l *lineView) stored() {
	m := l.m
	a, has := m.answer()
	o, offered := m.Visit.Offered(m.step)
	switch usual := m.field.Draft(); {
	case has && a.State == assess.Unknown:
		l.Put("So far: not known. An empty line keeps it.")
	case has:
		l.Put("So far: {1} ({2}). An empty line keeps it.", m.step.Question.Shown(a), stateNames[a.State])
	case !usual.Empty():
		l.Put("An empty line takes: {1}", m.step.Question.Shown(assess.Answer{Said: usual.Text, Chosen: usual.Chosen}))
	}
	if offered && !has {
		l.Say(message.New("type = for {1}: {2}", m.step.Question.Said(o.Text()), o.Why).Capital())
	}
	if a.Note != "" {
		l.Say(message.New("note: {1}", outside(a.Note)).Capital())
	}
}

func (l *lineView) page() {
	if l.m.Pager == nil {
		l.do(l.m.makePage)
		return
	}
	l.run(l.m.makePage())
}

func (l *lineView) help() {
	q := l.m.step.Question
	if q.Help != "" {
		l.Put(q.Help)
	} else {
		l.Put(q.Why)
	}
	l.Say(message.New("for example: {1}", q.Example).Capital())
}

// list prints every question with its state, and the groups skipped.
func (l *lineView) list() {
	m := l.m
	group := assess.Group("")
	for i, s := range m.steps {
		if s.Question.Group != group {
			group = s.Question.Group
			l.Say(group.Title())
		}
		l.Put("{1}. {2}: {3}", message.Count(i+1), s.Name(), m.stateInWords(s))
	}
	for i, g := range m.Visit.Skipped {
		l.Put("Skipped: {1}. Type go {2} to bring it back.", g.Title(), message.Count(len(m.steps)+1+i))
	}
	l.Put("Type go and a number to go to a question.")
}

func (m *Model) stateInWords(s assess.Step) message.Message {
	a, has := m.Visit.Answer(s.Asked())
	switch {
	case !has && s.Question.Optional:
		return message.New("optional, not answered")
	case !has:
		return message.New("open")
	case a.State == assess.Unknown:
		return message.New("not known")
	}
	return message.New("{1} ({2})", s.Question.Shown(a), stateNames[a.State])
}

// result prints what the answers come to.
func (l *lineView) result() {
	m := l.m
	shown := text.Render(report.Build(m.Visit, m.Range, m.about()), m.Width)
	l.Print("\n" + strings.TrimRight(shown, "\n"))
	if m.open > 0 {
		l.Print("")
		l.Put("Questions still open: {1}. Type list to see them.", message.Count(m.open))
	}
}
