package pdf

import (
	"bytes"
	_ "embed" // the cut fonts lie beside the code

	"github.com/jung-kurt/gofpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/text/encoding/charmap"
)

// Two forms of the Go fonts are drawn with. The cut ones hold the characters of
// Windows code page 1252 and the signs below, are compressed already, and are put
// into the file as they are; a line that needs any other character is drawn with
// a whole font, which the library parses, cuts to the characters used and
// compresses, at some ten times the cost. Outlines and widths are the same.
// TestFontsAreCutFromTheGoFonts makes the cut ones.
var (
	//go:embed font/regular.json
	regularWidths []byte
	//go:embed font/regular.z
	regularOutlines []byte
	//go:embed font/bold.json
	boldWidths []byte
	//go:embed font/bold.z
	boldOutlines []byte
)

// signs are characters that Windows code page 1252 lacks and a page needs, at
// codes that page leaves free, with their names in the Adobe Glyph List, in the
// order of their codes.
var signs = [...]struct {
	code  byte
	shown rune
	name  string
}{
	{0x81, '−', "minus"}, {0x8D, '√', "radical"}, {0x8F, '≤', "lessequal"}, {0x90, '≥', "greaterequal"}, {0x9D, '≈', "approxequal"},
}

// runeAt is the character at a code of the cut fonts.
func runeAt(code byte) rune {
	for _, s := range signs {
		if s.code == code {
			return s.shown
		}
	}
	return charmap.Windows1252.DecodeByte(code)
}

func codeOf(r rune) (byte, bool) {
	for _, s := range signs {
		if s.shown == r {
			return s.code, true
		}
	}
	return charmap.Windows1252.EncodeRune(r)
}

// codes writes a text in the codes of the cut fonts; false if one of its
// characters is not in them.
func codes(text string) (string, bool) {
	if ascii(text) {
		return text, true
	}
	out := make([]byte, 0, len(text))
	for _, r := range text {
		code, ok := codeOf(r)
		if !ok {
			return "", false
		}
		out = append(out, code)
	}
	return string(out), true
}

func ascii(text string) bool {
	for i := range len(text) {
		if text[i] >= 0x80 {
			return false
		}
	}
	return true
}

// fonts are those a document may use, in a fixed order, by what the library calls
// them: a cut one with its widths, or a whole one.
var fonts = [...]struct {
	family, weight   string
	widths, outlines []byte
}{
	{"page", "", regularWidths, regularOutlines}, {"page", "B", boldWidths, boldOutlines},
	{"wide", "", nil, goregular.TTF}, {"wide", "B", nil, gobold.TTF},
}

// fontOf is the place in fonts of what a text is drawn with, and the text as it
// is written in it.
func fontOf(text string, st style) (font int, written string) {
	if written, ok := codes(text); ok {
		text = written
	} else {
		font = 2
	}
	if st.bold {
		font++
	}
	return font, text
}

// addFonts adds the fonts that are drawn with. The library writes into the bytes
// of a whole font, hence a copy.
func addFonts(doc *gofpdf.Fpdf, leaves []*leaf) {
	var used [len(fonts)]bool
	for _, pg := range leaves {
		for i := range pg.marks {
			if m := &pg.marks[i]; m.kind == textMark {
				font, _ := fontOf(m.text, m.style)
				used[font] = true
			}
		}
	}
	for i, f := range fonts {
		switch {
		case !used[i]:
		case f.widths == nil:
			doc.AddUTF8FontFromBytes(f.family, f.weight, bytes.Clone(f.outlines))
		default:
			doc.AddFontFromBytes(f.family, f.weight, f.widths, f.outlines)
		}
	}
}
