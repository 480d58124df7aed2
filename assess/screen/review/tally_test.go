package review

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"strings"
	"testing"

	"cutbrief/assess/review"

	tea "github.com/charmbracelet/bubbletea"
)

// counts is a teller that tells how it was asked.
type counts struct{ fail error }

func (c counts) Tell(rows iter.Seq[*review.Row], files int, by string, width int) (string, error) {
	n := 0
	for range rows {
		n++
	}
	return fmt.Sprintf("firm █████····· %d of %d by %q at %d\n%s", n, files, by, width, strings.Repeat("more\n", 60)), c.fail
}

func (c counts) Print(_ iter.Seq[*review.Row], _ int, by string) (string, error) {
	return "team-" + by + ".pdf", c.fail
}

func TestTally(t *testing.T) {
	d := open(t, 80, 24)
	d.keys("t").SeesNot("Review · summary")
	d.m.Teller = counts{}
	d.keys("t").Sees("Review · summary", `firm █████····· 7 of 7 by "" at 78`)
	d.keys("b").Sees("Review · summary, and by month below", `by "month"`)
	d.keys("b", "b").Sees(`by "rep"`)
	d.keys("p").Sees("the page is in team-rep.pdf")
	d.keys("b", "<end>").Sees("more")
	d.Resize(60, 20)
	d.keys("<home>").Sees(`by "" at 58`)
	d.keys("<esc>").Sees("7 shown")
	d.keys("/", "farm", "<enter>", "t").Sees(`1 of 7 by ""`)
}

func TestATallyThatFails(t *testing.T) {
	d := open(t, 80, 24)
	d.m.Teller = counts{errors.New("no room on the disk")}
	d.keys("t").Sees("no counts: no room on the disk")
	d.m.Teller = counts{}
	d.keys("t")
	d.m.Teller = counts{errors.New("no room on the disk")}
	d.keys("p").Sees("no page: no room on the disk")
}

// Counts that are shown while files are still read are made again at the end.
func TestATallyGrowsWithTheRows(t *testing.T) {
	d := start(t, folder{}.read, 80, 24)
	d.m.Teller = counts{}
	d.m.stage = judging
	d.Send(d.m.gotRows(judging, &review.Row{Path: "a.json", Stage: review.Judged}))
	d.keys("t").Sees("1 of 1")
	d.Send(d.m.gotRows(judging, &review.Row{Path: "b.json", Stage: review.Unread}))
	d.Send(d.m.gotAll(judging, review.Totals{Files: 2, Unread: 2}, nil))
	d.Sees("2 of 2")
}

// What comes after the manager has gone on is dropped.
func TestALateTally(t *testing.T) {
	d := open(t, 80, 24)
	d.keys("<enter>")
	d.Send(d.m.counted("", 78, "late", nil))
	d.SeesNot("late")
	d.keys("<esc>")
	d.Send(d.m.counted("rep", 78, "late", nil))
	d.SeesNot("late")
}

// Keys pressed so fast that they come together count one by one.
func TestKeysThatComeTogether(t *testing.T) {
	d := open(t, 120, 40)
	d.Send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("sb/far")})
	d.Sees("Filter: far", "Stenby")
	d.Send(tea.KeyMsg{Type: tea.KeyEnter})
	d.Sees("1 shown, grouped by rep, by company")
	d.Send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("fd"), Paste: true})
	d.Sees("· far")
}

// The list begins in the order asked for, one of the usual ones or not.
func TestTheOrderToBeginWith(t *testing.T) {
	for sort, want := range map[string]string{"": "by date", "company": "by company", "due,-date": "by due,-date"} {
		m := newModel(context.Background(), Options{Dir: "visits", Today: today, Sort: sort})
		if !strings.Contains(m.window.View(), "0 shown, "+want) {
			t.Errorf("%q:\n%s", sort, m.window.View())
		}
		m.stop()
	}
}
