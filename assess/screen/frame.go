package screen

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Frame is one whole view: a header line, the body, the side panel where there
// is room for it, and the keys at the foot.
type Frame struct {
	Size        Size
	Look        Look
	Left, Right string // of the header
	Body, Side  []string
	Foot        []string
	Wide        bool // the body takes the panel's place too
}

// Room is how many lines a frame leaves for its body above foot lines of keys.
func (s Size) Room(foot int) int {
	if s.Roomy() {
		return max(1, s.Height-foot-3)
	}
	return max(1, s.Height-foot-1)
}

// Render draws the frame, exactly as high as the window and never wider.
func (f Frame) Render() string {
	lines := f.header()
	room := f.Size.Height - len(lines) - len(f.Foot)
	if f.Size.Roomy() {
		room--
	}
	f.Body, f.Side = Fit(f.Body, room), Fit(f.Side, room)
	for i := range max(0, room) {
		lines = append(lines, f.line(i))
	}
	if f.Size.Roomy() {
		lines = append(lines, f.rule())
	}
	for _, l := range f.Foot {
		lines = append(lines, " "+l)
	}
	for i := range lines {
		lines[i] = Cut(lines[i], f.Size.Width)
	}
	return strings.Join(lines[:min(len(lines), f.Size.Height)], "\n")
}

func (f Frame) header() []string {
	left := Cut(f.Left, f.Size.Width-ansi.StringWidth(f.Right)-3)
	gap := f.Size.Width - ansi.StringWidth(left) - ansi.StringWidth(f.Right) - 2
	top := " " + f.Look.Strong.Render(left) + strings.Repeat(" ", max(1, gap)) + f.Look.Dim.Render(f.Right)
	if !f.Size.Roomy() {
		return []string{top}
	}
	return []string{top, f.rule()}
}

func (f Frame) rule() string { return f.Look.Dim.Render(strings.Repeat("─", f.Size.Width)) }

// line is line i of the body, beside the same line of the panel.
func (f Frame) line(i int) string {
	body := " " + at(f.Body, i)
	if f.Wide || f.Size.Side() == 0 {
		return body
	}
	return pad(Cut(body, f.Size.Main()+1), f.Size.Main()+2) + f.Look.Dim.Render("│") + " " + Cut(at(f.Side, i), f.Size.Side())
}

func at(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return ""
}
