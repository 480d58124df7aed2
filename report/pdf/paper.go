package pdf

import "fmt"

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
