// Package pdf lays a brief out on one printed page, A4 or Letter, readable in
// black and white. It measures before it draws: of all ways to word, merge and
// place the parts of the page it takes the one that loses least, and the page
// says what stands elsewhere. It words nothing and computes no figure. Commands
// and screens import it.
//
// The page uses the Go fonts, cut to the common characters in the folder font;
// their licence is in FONT-LICENSE.
package pdf

import (
	"fmt"

	"cutbrief/report"
)

// Paper is a sheet size.
type Paper string

// The papers.
const (
	A4     Paper = "a4"
	Letter Paper = "letter"
)

// size is the width and height of the sheet in mm: ISO 216 for A4, 8½ by 11 in
// for Letter.
func (p Paper) size() (width, height float64, err error) {
	switch p {
	case A4:
		return 210, 297, nil
	case Letter:
		return 215.9, 279.4, nil
	}
	return 0, 0, fmt.Errorf("paper %q is not known: a4 or letter", string(p))
}

// Margins in mm: most printers leave 6 mm blank, and a page filed in a folder
// needs more at the sides.
const (
	sideMargin   = 13.0
	topMargin    = 12.0
	bottomMargin = 12.0
)

// leaf is a page that is laid out.
type leaf struct {
	marks []mark
	gone  []gone   // what it leaves to the representative's sheet
	cuts  []string // what a team's page leaves out
	loss  int
	step  float64 // of its grid, in mm
}

// Render draws the brief on one page, and behind it the checklists and the
// working where the brief holds them. The same brief gives the same bytes. It
// fails on an unknown paper and if a page cannot be made to fit; it does not
// panic, whatever the texts hold. It may be called from many goroutines.
func Render(b report.Brief, p Paper) ([]byte, error) { return render(b, p, true) }

func render(b report.Brief, p Paper, compress bool) (out []byte, err error) {
	defer func() {
		if r := recover(); r != nil { // the library panics on texts it cannot encode
			out, err = nil, fmt.Errorf("draw the page: %v", r)
		}
	}()
	f, err := newFaces()
	if err != nil {
		return nil, err
	}
	c := cleaner{faces: f}
	clean := cleaned(&c, b)
	pg, err := fit(f, &clean, p, c.said())
	if err != nil {
		return nil, err
	}
	sheets, err := behind(f, &clean, p)
	if err != nil {
		return nil, err
	}
	return draw(append([]*leaf{pg}, sheets...), about{clean.Title, clean.Need, clean.Check, clean.Date, clean.Words}, p, compress)
}
