package screen

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
