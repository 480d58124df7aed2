package pdf

import (
	"fmt"
	"math"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// style is a weight and a size.
type style struct {
	bold bool
	size float64 // pt
}

// The styles of the page. Nothing is smaller than 7.5 pt; what a customer has
// to read to decide is at least 8.5 pt, and what is recommended and why 11 pt.
var (
	hugeStyle     = style{true, 22}
	titleStyle    = style{true, 15}
	headlineStyle = style{true, 13}
	bigStyle      = style{false, 11}
	bigBold       = style{true, 11}
	headStyle     = style{true, 9.5}
	bodyStyle     = style{false, 8.5}
	strongStyle   = style{true, 8.5}
	smallStyle    = style{false, 7.5}
	smallBold     = style{true, 7.5}
)

// millimetres in a typographic point.
const point = 25.4 / 72

// row is the step of the grid that all baselines of a page lie on, in mm. A page
// that is full or has room to spare is laid out with this step and then pressed
// or stretched.
const row = 1.7

// line is the distance between two baselines, in mm: whole rows.
func (s style) line() float64 { return row * math.Ceil(s.size*point/row-0.1) }

// face measures one weight of the font, and knows which runes it can show.
// Latin and Greek are kept in an array: a page measures some ten thousand
// characters, and a map was half of that time.
type face struct {
	font   *sfnt.Font
	buf    sfnt.Buffer
	common [0x400]advance
	known  map[rune]advance
}

type advance struct {
	width float64 // in shares of the size
	shown bool
	asked bool
}

func newFace(ttf []byte) (*face, error) {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		return nil, fmt.Errorf("read the page's font: %w", err)
	}
	return &face{font: f, known: make(map[rune]advance)}, nil
}

// of returns the advance of a rune, measured once.
func (f *face) of(r rune) advance {
	if r >= 0 && int(r) < len(f.common) {
		if !f.common[r].asked {
			f.common[r] = f.measure(r)
		}
		return f.common[r]
	}
	if a, ok := f.known[r]; ok {
		return a
	}
	a := f.measure(r)
	f.known[r] = a
	return a
}

func (f *face) measure(r rune) advance {
	index, err := f.font.GlyphIndex(&f.buf, r)
	if err != nil || index == 0 || r > 0xFFFF {
		return advance{asked: true}
	}
	em := f.font.UnitsPerEm()
	wide, err := f.font.GlyphAdvance(&f.buf, index, fixed.I(int(em)), font.HintingNone)
	if err != nil {
		return advance{asked: true}
	}
	return advance{float64(wide) / 64 / float64(em), true, true}
}

// faces are the two weights, and the texts already broken into lines.
type faces struct {
	regular, bold *face
	known         map[paragraph]broken
}

func newFaces() (faces, error) {
	regular, err := newFace(goregular.TTF)
	if err != nil {
		return faces{}, err
	}
	bold, err := newFace(gobold.TTF)
	return faces{regular, bold, map[paragraph]broken{}}, err
}

func (f faces) at(s style) *face {
	if s.bold {
		return f.bold
	}
	return f.regular
}

// width is how wide a text is, in mm.
func (f faces) width(text string, s style) float64 {
	face, total := f.at(s), 0.0
	for _, r := range text {
		total += face.of(r).width
	}
	return total * s.size * point
}

// shows reports whether both weights have the rune.
func (f faces) shows(r rune) bool { return f.regular.of(r).shown && f.bold.of(r).shown }
