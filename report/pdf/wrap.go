package pdf

import (
	"strings"
	"unicode/utf8"
)

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

// plainly is a paragraph of one style.
func plainly(text string, s style, in ink) []run { return []run{{text, s, in}} }

// flow breaks a paragraph into lines no wider than width, at spaces where it
// can. It returns at most most lines; a text that needs more ends in an
// ellipsis, and cut is true. A last line of hardly more than a syllable is given
// company where that takes no further line.
func (f faces) flow(runs []run, width float64, most int) (lines [][]piece, cut bool) {
	if len(runs) != 1 {
		return f.company(runs, width, most)
	}
	p := paragraph{runs[0], width, most}
	b, known := f.known[p]
	if !known {
		b.lines, b.cut = f.company(runs, width, most)
		f.known[p] = b
	}
	return b.lines, b.cut
}

// paragraph is a text of one style to be broken into lines, and broken what
// comes of it: many forms of a block have the same.
type (
	paragraph struct {
		run   run
		width float64
		most  int
	}
	broken struct {
		lines [][]piece
		cut   bool
	}
)

func (f faces) company(runs []run, width float64, most int) (lines [][]piece, cut bool) {
	lines, cut = f.broken(runs, width, most)
	if n := len(lines); n > 1 && !cut && f.end(lines[n-1]) < width/8 {
		if fuller, cut := f.broken(runs, width*0.93, most); !cut && len(fuller) == n {
			return fuller, false
		}
	}
	return lines, cut
}

// end is how far a line reaches.
func (f faces) end(line []piece) float64 {
	last := line[len(line)-1]
	return last.x + f.width(last.text, last.style)
}

func (f faces) broken(runs []run, width float64, most int) (lines [][]piece, cut bool) {
	var line []piece
	room := 0.0
	turn := func() bool {
		lines = append(lines, line)
		line, room = nil, 0
		return len(lines) < most
	}
	for _, r := range runs {
		space := f.width(" ", r.style)
		fresh := true // the run has no piece on this line yet
		for word := range strings.SplitSeq(r.text, " ") {
			if word == "" {
				continue
			}
			wide := f.width(word, r.style)
			if line != nil && room+space+wide > width {
				if fresh = true; !turn() {
					return f.shortened(lines, width), true
				}
			}
			for wide > width {
				head := f.fitting(word, r.style, width)
				line = append(line, piece{0, run{word[:head], r.style, r.ink}})
				word, fresh = word[head:], true
				if !turn() {
					return f.shortened(lines, width), true
				}
				wide = f.width(word, r.style)
			}
			if line != nil {
				room += space
			}
			if fresh || line == nil {
				line = append(line, piece{room, run{word, r.style, r.ink}})
			} else {
				line[len(line)-1].text += " " + word
			}
			fresh = false
			room += wide
		}
	}
	if line != nil {
		lines = append(lines, line)
	}
	return lines, false
}

// fitting is how many bytes of a word fit the width, at least one rune.
func (f faces) fitting(word string, s style, width float64) int {
	total := 0.0
	for i, r := range word {
		total += f.at(s).of(r).width * s.size * point
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
