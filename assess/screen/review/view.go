package review

import (
	"strings"

	"cutbrief/assess/review"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"

	"github.com/charmbracelet/x/ansi"
)

// Title is what is shown, and how far reading is.
func (m *Model) Title() (left, right string) {
	w := m.window
	switch {
	case m.state == reading:
		name := m.open.Company
		if name == "" {
			name = m.open.ShownPath()
		}
		left = w.Say("Review · {1} · {2}", message.Name(sanitize.Line(name)), partNames[m.part])
	case m.state == measuring:
		left = w.Say("Review · timed cuts")
	case m.state == counting && splits[m.split] != "":
		left = w.Say("Review · summary, and by {1} below", splits[m.split])
	case m.state == counting:
		left = w.Say("Review · summary")
	default:
		left = w.Say("Review · {1}", message.Name(sanitize.Line(m.Dir)))
	}
	return left, w.Print(m.progress())
}

// partNames name what is shown of a visit.
var partNames = [parts]message.ID{flagsPart: "flags", briefPart: "brief", whyPart: "why", rawPart: "file"}

// progress says how far reading is.
func (m *Model) progress() message.Message {
	switch {
	case m.stage == looking:
		return message.Counted(m.rows.Len(), "{1} file found", "{1} files found")
	case m.stage == judging && m.judged >= m.totals.Files:
		return message.Counted(m.judged, "{1} file judged", "{1} files judged")
	case m.stage == judging:
		return message.New("{1} of {2} judged", message.Count(m.judged), message.Count(m.totals.Files))
	case m.stage == stopped:
		return message.Counted(m.rows.Len(), "stopped at {1} file", "stopped at {1} files")
	case m.totals.Unread > 0:
		return message.Counted(m.totals.Files, "{1} file, {2} unreadable", "{1} files, {2} unreadable", message.Count(m.totals.Unread))
	}
	return files(m.totals.Files)
}

func files(n int) message.Message { return message.Counted(n, "{1} file", "{1} files") }

// Body shows the list, or a text.
func (m *Model) Body(width, height int) []string {
	if m.state != listing && m.state != filtering {
		return m.text.Lines(m.told())
	}
	lines := m.head(width)
	if len(m.list.Lines) == 0 {
		return append(lines, screen.Each(screen.Wrap(sanitize.Line(m.window.Print(m.nothing())), width), m.window.Look.Dim.Render)...)
	}
	cols := columnsFor(width)
	from, to := m.rowsShown()
	for i := from; i < to; i++ {
		lines = append(lines, m.itemLine(i, cols, width))
	}
	return lines
}

// told is what just happened, without what a terminal could act on.
func (m *Model) told() string { return sanitize.Line(m.window.Print(m.window.Told)) }

// width is that of a text in cells.
func (m *Model) width() int { return max(1, m.window.Size.Width-2) }

// pageTall is how many rows the list shows.
func (m *Model) pageTall() int { return max(1, m.window.Room()-len(m.head(m.width()))) }

// rowsShown is from which to before which line the list shows.
func (m *Model) rowsShown() (from, to int) {
	room, lines := m.pageTall(), len(m.list.Lines)
	from = min(max(0, int(m.at)-room/2), max(0, lines-room))
	return from, min(lines, from+room)
}

// head is what stands over the rows: the filter, the bar while files are read, the
// names of the columns.
func (m *Model) head(width int) []string {
	look := m.window.Look
	lines := []string{""}
	if m.state == filtering {
		lines = m.typed.Lines(look, m.window.Say("Filter:")+" ", width)
	}
	if m.unfinished() {
		lines = append(lines, m.bar(width))
	}
	names := columnsFor(width).line(func(c column) string { return strings.ToUpper(m.window.Say(c.id)) })
	lines = append(lines, look.Dim.Render("  "+names))
	if m.state != filtering {
		lines[0] = m.status(width, len(lines))
	}
	return lines
}

// status says what is shown, in which order, and where there is more than fits
// under a head of so many lines.
func (m *Model) status(width, head int) string {
	how := message.New("by {1}", message.ID(strings.TrimPrefix(m.sorts[m.sorted], "-")))
	if by := groups[m.group]; by != "" {
		how = message.New("grouped by {1}, {2}", by, how)
	}
	text := m.window.Say("{1} shown, {2}", message.Count(m.list.Rows()), how)
	if m.filter != "" {
		text += " · " + m.filter
	}
	if told := m.told(); told != "" {
		text = told
	}
	room := max(1, m.window.Room()-head)
	from := min(max(0, int(m.at)-room/2), max(0, len(m.list.Lines)-room))
	more := ""
	if from > 0 {
		more += "  " + m.window.Say(screen.MoreAbove)
	}
	if from+room < len(m.list.Lines) {
		more += "  " + m.window.Say(screen.MoreBelow)
	}
	return m.window.Look.Dim.Render(screen.Cut(text, width-ansi.StringWidth(more)) + more)
}

// nothing says why the list is empty.
func (m *Model) nothing() message.Message {
	switch {
	case !m.fault.IsEmpty():
		return m.fault
	case m.rows.Len() > 0:
		return message.New("No row fits the filter. Type words, or such as: thickest > 10 mm and verdict = open.")
	case m.unfinished():
		return message.New("Reading …")
	}
	return message.New("There is no visit in this folder.")
}

// bar shows how much is judged of what is remembered; otherwise nobody knows how
// much there will be.
func (m *Model) bar(width int) string {
	width = min(width, 60)
	done := 0
	if m.stage == judging && m.totals.Files > 0 {
		done = min(width, width*m.judged/m.totals.Files)
	}
	look := m.window.Look
	return look.Accent.Render(strings.Repeat("█", done)) + look.Dim.Render(strings.Repeat("░", width-done))
}

func (m *Model) itemLine(i int, cols row, width int) string {
	look := m.window.Look
	if h := m.list.Head(i); h != nil {
		head := m.window.Say("not known")
		if h.Text != "" {
			f, _ := review.FindField(string(groups[m.group]))
			head = f.Worded(m.Words, sanitize.Line(h.Text))
		}
		return look.Strong.Render(screen.Cut(head+" · "+m.window.Print(files(h.Rows)), width))
	}
	r := m.rows.At(int(m.list.Lines[i]))
	line := cols.line(func(c column) string { return c.field().Cell(m.Words, &r) })
	if r.Stage == review.Unread {
		flags, _ := review.FindField("flags")
		line = flags.Cell(m.Words, &r) + ": " + r.ShownPath()
	}
	line = screen.Cut(line, width-2)
	switch {
	case i == int(m.at):
		return look.Accent.Render(screen.Focus) + look.Strong.Render(line)
	case r.Stage == review.Unread || r.Flags.Has(review.Smaller):
		return "  " + look.Bad.Render(line)
	}
	return "  " + line
}
