package screen

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Size is the window's size in cells.
type Size struct{ Width, Height int }

// Usual is assumed until the terminal tells its size.
func Usual() Size { return Size{80, 24} }

const (
	sideFrom = 80 // columns below which the side panel is hidden
	roomy    = 18 // lines from which the frame has a rule under its header
)

// Side is the width of the side panel, 0 if there is no room for one.
func (s Size) Side() int {
	if s.Width < sideFrom {
		return 0
	}
	return min(44, s.Width*2/5-2)
}

// Main is the width of the column beside the panel, without its margins.
func (s Size) Main() int {
	if s.Side() == 0 {
		return max(1, s.Width-2)
	}
	return max(1, s.Width-s.Side()-5)
}

// Roomy reports whether there is room for lines that only please the eye.
func (s Size) Roomy() bool { return s.Height >= roomy }

// Room is how many lines a frame leaves for its body above foot lines of keys.
func (s Size) Room(foot int) int {
	if s.Roomy() {
		foot += 2 // the rules
	}
	return max(1, s.Height-foot-1)
}

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

// Render draws the frame, exactly as high as the window and never wider.
func (f Frame) Render() string {
	lines := f.header()
	room := f.Size.Height - len(lines) - len(f.Foot)
	if f.Size.Roomy() {
		room--
	}
	body, side := rows(f.Body, room), rows(f.Side, room)
	for i := range max(0, room) { // of the body, beside the same line of the panel
		line := " " + body[i]
		if side[i] = Cut(side[i], f.Size.Side()); !f.Wide && f.Size.Side() > 0 {
			line = pad(Cut(line, f.Size.Main()+1), f.Size.Main()+2) + f.Look.Dim.Render("│") + " " + side[i]
		}
		lines = append(lines, line)
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

// rows are exactly so many lines, the last of which says if there are more.
func rows(lines []string, height int) []string {
	lines = Fit(lines, height)
	return append(lines[:len(lines):len(lines)], make([]string, max(0, height-len(lines)))...)
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
