package screen

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/viewport"
	tea "github.com/charmbracelet/bubbletea"
)

// readable is the longest line, in cells, that reads well.
const readable = 100

// Text is a text that may be longer than its window, to scroll in.
type Text struct {
	Beside bool // it stands beside the panel

	window *Window
	view   viewport.Model
	lay    func(width int) []string
	laid   int // the width it is laid out for
	below  int // lines left free under it
}

// NewText is a text in a window.
func NewText(w *Window) Text { return Text{window: w} }

// Show shows a text from its top. lay lays it out for a width in cells, and is
// called again when that changes.
func (t *Text) Show(lay func(width int) []string) {
	t.lay, t.laid = lay, 0
	t.view = viewport.New(1, 1)
}

// Lay lays the text out anew and stays where it is.
func (t *Text) Lay() { t.laid = 0 }

// Above leaves so many lines of the window free below the text, for a line that is
// typed.
func (t *Text) Above(lines int) { t.below = lines }

// fit fits the text to its window: one line of that is for the marks of more.
func (t *Text) fit() {
	if t.lay == nil {
		return
	}
	t.view.Width, t.view.Height = max(1, t.window.Size.Width-2), max(1, t.window.Room()-1-t.below)
	if t.Beside {
		t.view.Width = t.window.Size.Main()
	}
	if width := min(t.view.Width, readable); width != t.laid {
		t.laid = width
		t.view.SetContent(strings.Join(t.lay(width), "\n"))
	}
	t.view.SetYOffset(t.view.YOffset)
}

// Key scrolls.
func (t *Text) Key(msg tea.KeyMsg) {
	t.fit()
	switch msg.Type {
	case tea.KeyHome:
		t.view.GotoTop()
	case tea.KeyEnd:
		t.view.GotoBottom()
	default:
		t.view, _ = t.view.Update(msg) // its commands are none
	}
}

// AtEnd reports whether the last line is in view.
func (t *Text) AtEnd() bool {
	t.fit()
	return t.view.AtBottom()
}

// End scrolls to the last line.
func (t *Text) End() { t.Key(tea.KeyMsg{Type: tea.KeyEnd}) }

// Lines are the lines in view, and under them a remark, which may be empty, and
// where there is more.
func (t *Text) Lines(remark string) []string {
	t.fit()
	more := t.window.Look.Dim.Render(t.window.more(t.view.AtTop(), t.view.AtBottom()))
	if remark != "" {
		more = remark + between + more
	}
	return append(strings.Split(t.view.View(), "\n"), more)
}

// more says where a text goes on, "" if nowhere.
func (w *Window) more(atTop, atBottom bool) string {
	var marks []string
	if !atTop {
		marks = append(marks, w.Say(MoreAbove))
	}
	if !atBottom {
		marks = append(marks, w.Say(MoreBelow))
	}
	return strings.Join(marks, between)
}

// Focused is which of some rows has the focus, counted from 0.
type Focused int

// Key moves the focus among n rows, by one, by a page or to an end, and passes
// over those that cannot be chosen. It reports whether the key does that.
func (f *Focused) Key(msg tea.KeyMsg, n, page int, chosen func(row int) bool) bool {
	by := map[tea.KeyType]int{tea.KeyUp: -1, tea.KeyDown: 1, tea.KeyPgUp: -page, tea.KeyPgDown: page, tea.KeyHome: -n, tea.KeyEnd: n}[msg.Type]
	if by == 0 || n == 0 {
		return false
	}
	aim := min(max(0, int(*f)+by), n-1)
	towards := by / max(by, -by)
	for _, step := range []int{towards, -towards} {
		for at := aim; at >= 0 && at < n; at += step {
			if chosen(at) {
				*f = Focused(at)
				return true
			}
		}
	}
	return true
}

// Rows are at most height of some lines, around line at. Where there is room for
// it, the first and the last say that there is more.
func (w *Window) Rows(lines []string, at, height int) []string {
	height = max(0, height)
	if len(lines) <= height {
		return lines
	}
	from := min(max(0, at-height/2), len(lines)-height)
	shown := slices.Clone(lines[from : from+height])
	if height < 4 {
		return shown
	}
	if from > 0 {
		shown[0] = w.Say(MoreAbove)
	}
	if from+height < len(lines) {
		shown[height-1] = w.Say(MoreBelow)
	}
	return shown
}

// Block is a part of a body. Those with the highest number are the first to be
// left out where there is no room; 0 stays.
type Block struct {
	Lines    []string
	Optional int
}

// Stack puts blocks above and below a field, leaves out optional ones until there
// is room, and shows of the field what is around the line that has the focus.
func (w *Window) Stack(above []Block, field []string, focus int, below []Block, height int) []string {
	const most = 6
	top, bottom := upTo(most, above), upTo(most, below)
	for n := most - 1; n >= 0 && len(top)+len(field)+len(bottom) > height; n-- {
		top, bottom = upTo(n, above), upTo(n, below)
	}
	return slices.Concat(top, w.Rows(field, focus, height-len(top)-len(bottom)), bottom)
}

// upTo are the lines of the blocks that have at most a number.
func upTo(n int, blocks []Block) []string {
	var lines []string
	for _, b := range blocks {
		if b.Optional <= n {
			lines = append(lines, b.Lines...)
		}
	}
	return lines
}

// Part is a titled part of a panel, its texts one below the other.
type Part struct {
	Title string
	Texts []string
}

// Parts lays a panel out for its width. A part without a text is left out.
func (w *Window) Parts(width int, parts ...Part) []string {
	lines := []string{}
	for _, p := range parts {
		if len(p.Texts) == 0 || p.Texts[0] == "" {
			continue
		}
		if len(lines) > 0 {
			lines = append(lines, "")
		}
		lines = append(lines, w.Look.Accent.Render(p.Title))
		for _, t := range p.Texts {
			lines = append(lines, Wrap(t, width)...)
		}
	}
	return lines
}
