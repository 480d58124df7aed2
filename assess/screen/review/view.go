package review

import (
	"fmt"
	"strings"

	"cutbrief/assess/review"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/x/ansi"
)

// View draws the present state. It is a function of the model alone.
func (m *Model) View() string {
	f := screen.Frame{Size: m.size, Look: m.look, Left: m.title(), Right: m.progress(), Foot: m.foot(), Wide: true}
	if m.scrolls() {
		f.Body = append(strings.Split(m.detail.View(), "\n"), m.underLine())
		return f.Render()
	}
	f.Body = m.viewList()
	return f.Render()
}

// underLine is the line under what is longer than the screen: what just happened,
// and where it goes on.
func (m *Model) underLine() string {
	more := m.look.Dim.Render(screen.More(m.detail.AtTop(), m.detail.AtBottom()))
	if m.told == "" {
		return more
	}
	return m.told + "  " + more
}

func (m *Model) title() string {
	if m.state == reading {
		name := m.open.Company
		if name == "" {
			name = m.open.ShownPath()
		}
		return "Review · " + sanitize.Line(name) + " · " + partNames[m.part]
	}
	if m.state == measuring {
		return "Review · timed cuts"
	}
	if m.state == counting {
		if by := splits[m.split]; by != "" {
			return "Review · tally, and by " + by + " below"
		}
		return "Review · tally"
	}
	return "Review · " + sanitize.Line(m.Dir)
}

// partNames name what is shown of a visit.
var partNames = [parts]string{flagsPart: "flags", briefPart: "brief", whyPart: "why", rawPart: "file"}

// progress says how far reading is.
func (m *Model) progress() string {
	switch m.stage {
	case looking:
		return files(m.rows.Len()) + " found"
	case judging:
		if m.judged >= m.totals.Files {
			return files(m.judged) + " judged"
		}
		return fmt.Sprintf("%s of %s judged", thousands(m.judged), thousands(m.totals.Files))
	case stopped:
		return "stopped at " + files(m.rows.Len())
	}
	text := files(m.totals.Files)
	if m.totals.Unread > 0 {
		text += fmt.Sprintf(", %s unreadable", thousands(m.totals.Unread))
	}
	return text
}

func files(n int) string {
	if n == 1 {
		return "1 file"
	}
	return thousands(n) + " files"
}

// thousands writes a count with a comma at the thousands.
func thousands(n int) string {
	text := fmt.Sprint(n)
	for i := len(text) - 3; i > 0; i -= 3 {
		text = text[:i] + "," + text[i:]
	}
	return text
}

// foot lists the keys of the present state.
func (m *Model) foot() []string {
	k := m.keys
	keys := []key.Binding{k.move, k.open, k.filter, k.sort, k.group, k.flagged, k.due, k.tally, k.measured, k.quit}
	switch {
	case m.state == filtering:
		keys = []key.Binding{k.accept, k.clear, k.move, k.leave}
	case m.state == reading:
		keys = []key.Binding{k.scroll, k.turn, k.page, k.back, k.quit}
	case m.state == counting:
		keys = []key.Binding{k.scroll, k.splitBy, k.page, k.back, k.quit}
	case m.state == measuring:
		keys = []key.Binding{k.scroll, k.back, k.quit}
	case m.filter != "":
		keys = append(keys, k.clear)
	case m.busy():
		keys = append(keys, k.cancel)
	}
	return m.look.Keys(m.size.Width-2, keys...)
}

// viewList shows the filter, how far reading is, and the rows around the focus.
func (m *Model) viewList() []string {
	width := m.size.Width - 2
	lines := []string{m.filterLine(width)}
	if m.busy() {
		lines = append(lines, m.bar(width))
	}
	cols := columnsFor(width)
	lines = append(lines, m.look.Dim.Render("  "+cols.line(func(c column) string { return strings.ToUpper(c.field.ID) })))
	if len(m.list.Lines) == 0 {
		return append(lines, screen.Each(screen.Wrap(m.nothing(), width), m.look.Dim.Render)...)
	}
	from, to := m.window()
	for i := from; i < to; i++ {
		lines = append(lines, m.itemLine(i, cols, width))
	}
	return lines
}

// window is from which to before which line the list shows.
func (m *Model) window() (from, to int) {
	room, lines := m.room(), len(m.list.Lines)
	from = min(max(0, m.at-room/2), max(0, lines-room))
	return from, min(lines, from+room)
}

// nothing says why the list is empty.
func (m *Model) nothing() string {
	switch {
	case m.fault != "":
		return m.fault
	case m.rows.Len() > 0:
		return "No row fits the filter. Type words, or such as: thickest > 10 mm and verdict = open."
	case m.busy():
		return "Reading …"
	}
	return "There is no visit in this folder."
}

func (m *Model) filterLine(width int) string {
	if m.state == filtering {
		text := string(m.typed) + m.look.Cursor.Reverse(true).Render(" ")
		if over := ansi.StringWidth(text) - (width - 9); over > 0 {
			text = ansi.TruncateLeft(text, over+1, "…")
		}
		return m.look.Accent.Render("Filter: ") + text
	}
	how := "by " + strings.TrimPrefix(m.sorts[m.sorted], "-")
	if groups[m.group] != "" {
		how = "grouped by " + groups[m.group] + ", " + how
	}
	text := thousands(m.list.Rows()) + " shown, " + how
	if m.filter != "" {
		text += " · " + m.filter
	}
	if m.told != "" {
		text = m.told
	}
	from, to := m.window()
	more := screen.More(from == 0, to == len(m.list.Lines))
	if more != "" {
		more = "  " + more
	}
	return m.look.Dim.Render(screen.Cut(text, width-ansi.StringWidth(more)) + more)
}

// bar shows how much is judged of what is remembered; otherwise nobody knows how
// much there will be.
func (m *Model) bar(width int) string {
	width = min(width, 60)
	done := 0
	if m.stage == judging && m.totals.Files > 0 {
		done = min(width, width*m.judged/m.totals.Files)
	}
	return m.look.Accent.Render(strings.Repeat("█", done)) + m.look.Dim.Render(strings.Repeat("░", width-done))
}

func (m *Model) itemLine(i int, cols columns, width int) string {
	if h := m.list.Head(i); h != nil {
		head := h.Text
		if head == "" {
			head = "not known"
		}
		return m.look.Strong.Render(screen.Cut(fmt.Sprintf("%s · %s", sanitize.Line(head), files(h.Rows)), width))
	}
	row := m.rows.At(int(m.list.Lines[i]))
	line := cols.line(func(c column) string { return cellOf(c.field, &row) })
	if row.Stage == review.Unread {
		line = cols.unread(&row)
	}
	line = screen.Cut(line, width-2)
	switch {
	case i == m.at:
		return m.look.Accent.Render(screen.Focus) + m.look.Strong.Render(line)
	case row.Stage == review.Unread || row.Flags.Has(review.Smaller):
		return "  " + m.look.Bad.Render(line)
	}
	return "  " + line
}

// cellOf is a cell in the list.
func cellOf(f review.Field, r *review.Row) string {
	if text := f.Text(r); text != "" {
		return text
	}
	return "–"
}
