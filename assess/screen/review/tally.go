package review

import (
	"iter"
	"slices"

	"cutbrief/assess/review"
	"cutbrief/assess/sanitize"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Teller words and prints what is counted over the rows shown. It is asked in the
// background.
type Teller interface {
	// Tell words the counts in lines of at most width cells. Files are those of the
	// folder. By is the column to count by, "" for none.
	Tell(rows iter.Seq[*review.Row], files int, by string, width int) (string, error)
	// Print makes the page of the same and says where it is.
	Print(rows iter.Seq[*review.Row], files int, by string) (string, error)
}

// talliedMsg hands over what was counted by a column at a width.
type talliedMsg struct {
	by    string
	width int
	text  string
	err   error
}

// splits are the columns that the counts can be split by. Reps are named only where
// the manager goes on to them.
var splits = []string{"", "month", "metals", "rep"}

// tallyCmd counts the rows that the filter keeps.
func (m *Model) tallyCmd() tea.Cmd {
	if m.Teller == nil {
		return nil
	}
	rows, keep, by, width := m.rows.Snapshot(), review.Find(m.filter, m.Today), splits[m.split], max(1, m.size.Width-2)
	return func() tea.Msg {
		text, err := m.Teller.Tell(kept(rows, keep), rows.Len(), by, width)
		return talliedMsg{by, width, text, err}
	}
}

// recount counts again where the counts are shown and rows were judged since.
func (m *Model) recount() tea.Cmd {
	if m.state != counting {
		return nil
	}
	return m.tallyCmd()
}

// kept goes through the rows that a filter keeps.
func kept(rows *review.Rows, keep review.Where) iter.Seq[*review.Row] {
	return func(yield func(*review.Row) bool) {
		for r := range rows.All() {
			if keep(r) && !yield(r) {
				return
			}
		}
	}
}

// hasTallied shows the counts, unless they are no longer those asked for.
func (m *Model) hasTallied(msg talliedMsg) {
	switch {
	case msg.by != splits[m.split] || msg.width != max(1, m.size.Width-2) || !slices.Contains([]state{listing, counting}, m.state):
	case msg.err != nil:
		m.told = "no counts: " + sanitize.Line(msg.err.Error())
	default:
		end := m.state == counting && m.detail.AtBottom()
		if m.state == listing {
			m.detail.GotoTop()
		}
		m.state, m.cuts = counting, msg.text
		m.layOut()
		if end { // what is split stands there
			m.detail.GotoBottom()
		}
	}
}

func (m *Model) updateCounting(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.quit):
		return m.quit()
	case key.Matches(msg, k.back):
		m.state, m.cuts, m.split = listing, "", 0
	case key.Matches(msg, k.splitBy):
		m.split = (m.split + 1) % len(splits)
		return m.tallyCmd()
	case key.Matches(msg, k.page):
		return m.teamPageCmd()
	default:
		m.scroll(msg)
	}
	return nil
}

// teamPageCmd makes the page of what is shown.
func (m *Model) teamPageCmd() tea.Cmd {
	rows, keep, by := m.rows.Snapshot(), review.Find(m.filter, m.Today), splits[m.split]
	return func() tea.Msg {
		made, err := m.Teller.Print(kept(rows, keep), rows.Len(), by)
		return pagedMsg{made, err}
	}
}
