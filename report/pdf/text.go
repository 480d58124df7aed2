package pdf

import (
	"fmt"
	"math"
	"strings"
	"sync"
	"unicode/utf8"

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

// face measures one weight of the font, and knows which runes it can show. The
// runes of the cut fonts are measured once for the whole program; any other is
// looked up in the font each time.
type face struct {
	font  *sfnt.Font
	latin [0x180]float64 // advances in shares of the size, 0 where there is no glyph
	other map[rune]float64
}

func newFace(ttf []byte) (*face, error) {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		return nil, fmt.Errorf("read the page's font: %w", err)
	}
	known := &face{font: f, other: map[rune]float64{}}
	var buf sfnt.Buffer
	for r := range known.latin {
		known.latin[r] = known.measure(rune(r), &buf)
	}
	for code := range 256 {
		if r := runeAt(byte(code)); int(r) >= len(known.latin) {
			known.other[r] = known.measure(r, &buf)
		}
	}
	return known, nil
}

// advance is how wide a rune is in shares of the size, 0 where the face has no
// glyph for it.
func (f *face) advance(r rune) float64 {
	if uint32(r) < uint32(len(f.latin)) {
		return f.latin[r]
	}
	return f.rare(r)
}

func (f *face) rare(r rune) float64 {
	if wide, known := f.other[r]; known {
		return wide
	}
	return f.measure(r, nil)
}

func (f *face) measure(r rune, buf *sfnt.Buffer) float64 {
	index, err := f.font.GlyphIndex(buf, r)
	if err != nil || index == 0 || r > 0xFFFF {
		return 0
	}
	em := f.font.UnitsPerEm()
	wide, err := f.font.GlyphAdvance(buf, index, fixed.I(int(em)), font.HintingNone)
	if err != nil {
		return 0
	}
	return float64(wide) / 64 / float64(em)
}

// weights are the two faces, measured once.
var weights = sync.OnceValues(func() (list [2]*face, err error) {
	for i, ttf := range [][]byte{goregular.TTF, gobold.TTF} {
		if list[i], err = newFace(ttf); err != nil {
			return list, err
		}
	}
	return list, nil
})

// faces are the two weights, and the texts of one page already broken into lines.
type faces struct {
	regular, bold *face
	known         map[paragraph]broken
}

func newFaces() (faces, error) {
	list, err := weights()
	return faces{list[0], list[1], map[paragraph]broken{}}, err
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
		total += face.advance(r)
	}
	return total * s.size * point
}

// shows reports whether both weights have the rune.
func (f faces) shows(r rune) bool { return f.regular.advance(r) > 0 && f.bold.advance(r) > 0 }

// ellipsis marks a text that was cut, which happens only to texts far longer
// than any that a visit may hold.
const ellipsis = "…"

// run is a stretch of text in one style. Runs of one paragraph are parted by a
// space.
type run struct {
	text  string
	style style
	ink   ink
}

// piece is what of a run stands on one line, and how far from its left end.
type piece struct {
	x float64
	run
}

// paragraph is a text of a few runs to be broken into lines, and broken what comes
// of it: many forms of a block have the same.
type (
	paragraph struct {
		runs  [3]run
		width float64
		most  int
	}
	broken struct {
		lines [][]piece
		cut   bool
	}
)

// flow breaks a paragraph into lines no wider than width, at spaces where it
// can. It returns at most most lines; a text that needs more ends in an
// ellipsis, and cut is true. A last line of hardly more than a syllable is given
// company where that takes no further line.
func (f faces) flow(runs []run, width float64, most int) (lines [][]piece, cut bool) {
	p := paragraph{width: width, most: most}
	if copy(p.runs[:], runs) < len(runs) {
		b := f.company(runs, width, most)
		return b.lines, b.cut
	}
	b, known := f.known[p]
	if !known {
		b = f.company(runs, width, most)
		f.known[p] = b
	}
	return b.lines, b.cut
}

func (f faces) company(runs []run, width float64, most int) broken {
	b := f.broken(runs, width, most)
	if n := len(b.lines); n > 1 && !b.cut && f.end(b.lines[n-1]) < width/8 {
		if fuller := f.broken(runs, width*0.93, most); !fuller.cut && len(fuller.lines) == n {
			return fuller
		}
	}
	return b
}

// end is how far a line reaches.
func (f faces) end(line []piece) float64 {
	last := line[len(line)-1]
	return last.x + f.width(last.text, last.style)
}

// breaker fills lines with words.
type breaker struct {
	width float64
	most  int
	broken
	line []piece
	room float64 // taken on the line
}

// turn begins the next line; false where there may be no more.
func (b *breaker) turn() bool {
	b.lines = append(b.lines, b.line)
	b.line, b.room = nil, 0
	return len(b.lines) < b.most
}

func (f faces) broken(runs []run, width float64, most int) broken {
	b := breaker{width: width, most: most}
	for _, r := range runs {
		if !b.words(f, r) {
			return broken{f.shortened(b.lines, width), true}
		}
	}
	if b.line != nil {
		b.lines = append(b.lines, b.line)
	}
	return b.broken
}

// words puts a run; false where the lines are full. What stands together on a
// line is one piece, cut out of the text as it is.
func (b *breaker) words(f faces, r run) bool {
	space, face, scale := f.width(" ", r.style), f.at(r.style), r.style.size*point
	from, last := -1, 0 // the piece on this line begins and ends there
	put := func() {
		if from >= 0 {
			b.line[len(b.line)-1].text = r.text[from:last]
			from = -1
		}
	}
	for at := 0; at < len(r.text); {
		if r.text[at] == ' ' {
			at++
			continue
		}
		end, wide := len(r.text), 0.0
		for i, c := range r.text[at:] {
			if c == ' ' {
				end = at + i
				break
			}
			wide += face.advance(c) * scale
		}
		if b.line != nil && b.room+space+wide > b.width {
			if put(); !b.turn() {
				return false
			}
		}
		for wide > b.width {
			put()
			head := at + f.fitting(r.text[at:end], r.style, b.width)
			b.line = append(b.line, piece{0, run{r.text[at:head], r.style, r.ink}})
			wide -= f.width(r.text[at:head], r.style)
			if at = head; !b.turn() {
				return false
			}
		}
		if b.line != nil {
			b.room += space
		}
		if from >= 0 && last+1 < at { // more than one space: a piece of its own keeps its place
			put()
		}
		if from < 0 {
			b.line, from = append(b.line, piece{b.room, run{"", r.style, r.ink}}), at
		}
		b.room, at, last = b.room+wide, end, end
	}
	put()
	return true
}

// fitting is how many bytes of a word fit the width, at least one rune.
func (f faces) fitting(word string, s style, width float64) int {
	total := 0.0
	for i, r := range word {
		total += f.at(s).advance(r) * s.size * point
		if total > width && i > 0 {
			return i
		}
	}
	if _, first := utf8.DecodeRuneInString(word); total > width {
		return first
	}
	return len(word)
}

// shortened ends the last line in an ellipsis that fits.
func (f faces) shortened(lines [][]piece, width float64) [][]piece {
	line := lines[len(lines)-1]
	last := &line[len(line)-1]
	for last.text != "" && last.x+f.width(last.text+ellipsis, last.style) > width {
		_, size := utf8.DecodeLastRuneInString(last.text)
		last.text = last.text[:len(last.text)-size]
	}
	last.text = strings.TrimRight(last.text, " ,;:") + ellipsis
	return lines
}
