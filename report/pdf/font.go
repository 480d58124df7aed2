package pdf

import (
	"bytes"
	"embed"

	"github.com/jung-kurt/gofpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// Two forms of the Go fonts are drawn with. The cut ones hold the characters of
// code.go, are compressed already, and are put into the file as they are; a line
// that needs any other character is drawn with a whole font, which the library
// parses, cuts to the characters used and compresses, at some ten times the
// cost. Outlines and widths are the same. TestFontsAreCutFromTheGoFonts makes
// the cut ones.
//
//go:embed font/*.json font/*.z
var cut embed.FS

// use is one font of a document.
type use struct{ wide, bold bool }

func (u use) family() string {
	if u.wide {
		return "wide"
	}
	return "page"
}

func (u use) weight() string {
	if u.bold {
		return "B"
	}
	return ""
}

// whole is the file of the whole font.
func (u use) whole() []byte {
	if u.bold {
		return gobold.TTF
	}
	return goregular.TTF
}

// file is the name of the cut font's files.
func (u use) file() string {
	if u.bold {
		return "font/bold"
	}
	return "font/regular"
}

// addFonts adds the fonts that are drawn with, in a fixed order. The library
// writes into the bytes of a whole font, hence a copy.
func addFonts(doc *gofpdf.Fpdf, leaves []*leaf) {
	used := map[use]bool{}
	for _, pg := range leaves {
		for i := range pg.marks {
			if m := &pg.marks[i]; m.kind == textMark {
				_, ok := codes(m.text)
				used[use{!ok, m.style.bold}] = true
			}
		}
	}
	for _, u := range []use{{false, false}, {false, true}, {true, false}, {true, true}} {
		switch {
		case !used[u]:
		case u.wide:
			doc.AddUTF8FontFromBytes(u.family(), u.weight(), bytes.Clone(u.whole()))
		default:
			described, err1 := cut.ReadFile(u.file() + ".json")
			outlines, err2 := cut.ReadFile(u.file() + ".z")
			if err1 != nil || err2 != nil {
				doc.SetErrorf("read the page's font: %v, %v", err1, err2)
				return
			}
			doc.AddFontFromBytes(u.family(), u.weight(), described, outlines)
		}
	}
}
