package pdf

// mark is one thing on the page, placed in mm from the top left corner. Laying
// out makes marks; drawing only copies them to the file. So the whole page can
// be measured, and checked, before a byte is written.
type mark struct {
	kind       markKind
	x, y, w, h float64 // for text h is the height of its line, and w is not kept
	phase      float64 // how far the dashes of a line have come, in mm
	text       string
	style      style
	ink        ink
}

type markKind int

const (
	textMark  markKind = iota
	ruleMark           // a line from x,y by w,h
	fillMark           // a filled box
	boxMark            // an outlined box
	hatchMark          // an outlined box with slanted lines
	lineMark           // a thick line from x,y by w,h; h may be below zero
	dashMark           // the same, in dashes
)

// ink is a colour, chosen so that a black and white print keeps the order from
// dark to light.
type ink struct{ r, g, b int }

var (
	black  = ink{0, 0, 0}
	grey   = ink{95, 95, 95}
	light  = ink{238, 238, 236}
	accent = ink{28, 62, 80}
)

// sheet collects the marks of one page, from top to bottom.
type sheet struct {
	faces faces
	marks []mark
	y     float64 // where the next thing goes
}

// text puts one line with its top at y.
func (s *sheet) text(x, y float64, text string, st style, in ink) {
	s.marks = append(s.marks, mark{kind: textMark, x: x, y: y, h: st.line(), text: text, style: st, ink: in})
}

// shape puts a line or a box.
func (s *sheet) shape(kind markKind, x, y, w, h float64, in ink) {
	s.marks = append(s.marks, mark{kind: kind, x: x, y: y, w: w, h: h, ink: in})
}

// lines puts lines one under the other and returns where they end.
func (s *sheet) lines(x, y float64, lines []string, st style, in ink) float64 {
	for _, l := range lines {
		s.text(x, y, l, st, in)
		y += st.line()
	}
	return y
}
