package pdf

import (
	"strings"
	"unicode/utf8"
)

// ellipsis marks a text that was cut.
const ellipsis = "…"

// paragraph is a text to be broken into lines, and broken what comes of it.
type (
	paragraph struct {
		text  string
		style style
		width float64
		most  int
	}
	broken struct {
		lines []string
		cut   bool
	}
)

// wrap breaks text into lines no wider than width, at spaces where it can. It
// returns at most most lines; a text that needs more ends in an ellipsis, and
// cut is true. The lines may not be changed.
func (f faces) wrap(text string, s style, width float64, most int) (lines []string, cut bool) {
	p := paragraph{text, s, width, most}
	b, ok := f.broken[p]
	if !ok {
		b.lines, b.cut = f.breakLines(text, s, width, most)
		f.broken[p] = b
	}
	return b.lines, b.cut
}

func (f faces) breakLines(text string, s style, width float64, most int) (lines []string, cut bool) {
	line, room := "", 0.0
	space := f.width(" ", s)
	add := func() bool {
		lines = append(lines, line)
		line, room = "", 0
		return len(lines) < most
	}
	for word := range strings.SplitSeq(text, " ") {
		if word == "" {
			continue
		}
		wide := f.width(word, s)
		if line != "" && room+space+wide > width {
			if !add() {
				return f.shortened(lines, s, width), true
			}
		}
		for wide > width {
			head := f.fitting(word, s, width)
			line, word = word[:head], word[head:]
			if !add() {
				return f.shortened(lines, s, width), true
			}
			wide = f.width(word, s)
		}
		if line != "" {
			line += " "
			room += space
		}
		line += word
		room += wide
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines, false
}

// fitting is how many bytes of a word fit the width, at least one rune.
func (f faces) fitting(word string, s style, width float64) int {
	total := 0.0
	for i, r := range word {
		total += f.width(string(r), s)
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
func (f faces) shortened(lines []string, s style, width float64) []string {
	last := lines[len(lines)-1]
	for last != "" && f.width(last+ellipsis, s) > width {
		_, size := utf8.DecodeLastRuneInString(last)
		last = last[:len(last)-size]
	}
	lines[len(lines)-1] = strings.TrimRight(last, " ,;:") + ellipsis
	return lines
}
