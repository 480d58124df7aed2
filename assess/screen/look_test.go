package screen

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// levels are the six steps of a channel in the cube of colours 16 to 231, from
// memory of the table in the source of the terminal that introduced them.
var levels = [6]float64{0, 95, 135, 175, 215, 255}

// luminance is the relative luminance of a colour of the cube, as WCAG 2.1
// defines it: 0.2126 R + 0.7152 G + 0.0722 B of the linear channels.
// Check: 16 is black, 0; 231 is white, 1.
func luminance(number int) float64 {
	linear := func(step int) float64 {
		c := levels[step] / 255
		if c <= 0.03928 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	n := number - 16
	return 0.2126*linear(n/36) + 0.7152*linear(n/6%6) + 0.0722*linear(n%6)
}

// Text needs a contrast of 4.5 : 1 (WCAG 2.1, success criterion 1.4.3). By hand
// for green, 29, which is 0/135/95: linear 0, 0.2423, 0.1144; luminance 0.1816;
// against white 1.05/0.2316 = 4.53, against black 0.2316/0.05 = 4.63.
func TestColoursAreReadOnBlackAndOnWhite(t *testing.T) {
	if l := luminance(29); math.Abs(l-0.1816) > 0.0001 || luminance(16) != 0 || math.Abs(luminance(231)-1) > 1e-9 {
		t.Fatalf("29 has %.4f", l)
	}
	for _, number := range []string{violet, green, red} {
		n, err := strconv.Atoi(number)
		if err != nil || n < 16 || n > 231 {
			t.Fatalf("%q is not in the cube", number)
		}
		l := luminance(n)
		onBlack, onWhite := (l+0.05)/0.05, 1.05/(l+0.05)
		if min(onBlack, onWhite) < 4.5 {
			t.Errorf("%s: %.2f on black, %.2f on white", number, onBlack, onWhite)
		}
	}
}

// styles are all styles of the look, drawn on a text.
func styles(profile termenv.Profile) string {
	was := lipgloss.ColorProfile()
	lipgloss.SetColorProfile(profile)
	defer lipgloss.SetColorProfile(was)
	look := NewLook()
	var all strings.Builder
	for _, s := range []lipgloss.Style{look.Strong, look.Dim, look.Accent, look.Good, look.Bad, look.Cursor.Reverse(true)} {
		all.WriteString(s.Render("x"))
	}
	return all.String()
}

// SGR 30 to 37 and 90 to 97 colour text, 38;5 takes one of 256, 40 to 49 and 100
// to 107 paint the background (ECMA-48, 8.3.117, and common practice).
func TestOnlyColoursThatAreSure(t *testing.T) {
	for name, test := range map[string]struct {
		profile termenv.Profile
		want    string
	}{
		"256": {termenv.ANSI256, "\x1b[1mx\x1b[0m\x1b[2mx\x1b[0m\x1b[38;5;98mx\x1b[0m\x1b[38;5;29mx\x1b[0m\x1b[1;38;5;131mx\x1b[0m\x1b[7mx\x1b[0m"},
		"16":  {termenv.ANSI, "\x1b[1mx\x1b[0m\x1b[2mx\x1b[0m\x1b[1mx\x1b[0mx\x1b[1mx\x1b[0m\x1b[7mx\x1b[0m"},
		"0":   {termenv.Ascii, "xxxxx|x"},
	} {
		if got := styles(test.profile); got != test.want {
			t.Errorf("%s colours: %q, want %q", name, got, test.want)
		}
	}
}
