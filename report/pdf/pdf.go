package pdf

import (
	"bytes"
	"fmt"
	"time"

	"cutbrief/report"

	"github.com/jung-kurt/gofpdf"
)

// Render draws the brief on one page, and behind it the checklists and the
// working where the brief holds them. The same brief gives the same bytes. It
// fails on an unknown paper and if a page cannot be made to fit; it does not
// panic, whatever the texts hold.
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
	clean := c.brief(b)
	pg, err := fit(f, &clean, p, c.said())
	if err != nil {
		return nil, err
	}
	behind, err := more(f, &clean, p)
	if err != nil {
		return nil, err
	}
	return draw(append([]*page{pg}, behind...), p, compress)
}

// draw copies the marks into a document. The library keeps its first error,
// hence one check at the end.
func draw(pages []*page, p Paper, compress bool) ([]byte, error) {
	width, height, err := p.size()
	if err != nil {
		return nil, err
	}
	doc := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: width, Ht: height}})
	doc.SetCompression(compress)
	doc.SetAutoPageBreak(false, 0)
	doc.SetCatalogSort(true)
	doc.SetCreationDate(dated(pages[0].brief.Date))
	doc.SetModificationDate(dated(pages[0].brief.Date))
	doc.SetTitle(pages[0].brief.Title, true)
	doc.SetProducer("cutbrief", true)
	addFonts(doc, pages)
	for _, pg := range pages {
		doc.AddPage()
		for _, m := range pg.marks {
			m.draw(doc)
		}
	}
	var buf bytes.Buffer
	if err := doc.Output(&buf); err != nil {
		return nil, fmt.Errorf("write the page: %w", err)
	}
	return buf.Bytes(), nil
}

// dated is the date written into the file. The library takes the clock's for a
// missing one, and then no two files are alike; the epoch stands for it.
func dated(t time.Time) time.Time {
	if t.IsZero() {
		return time.Unix(0, 0).UTC()
	}
	return t.UTC()
}

// Thickness of lines in mm, and of the distance between hatch lines.
const (
	hairline  = 0.18
	hatchStep = 1.1
	thick     = 0.5
	dashOn    = 1.5
	dashOff   = 1.0
)

func (m mark) draw(doc *gofpdf.Fpdf) {
	switch m.kind {
	case textMark:
		m.write(doc)
	case fillMark:
		doc.SetFillColor(m.ink.r, m.ink.g, m.ink.b)
		doc.Rect(m.x, m.y, m.w, m.h, "F")
	case ruleMark:
		m.pen(doc)
		doc.Line(m.x, m.y, m.x+m.w, m.y+m.h)
	case boxMark:
		m.pen(doc)
		doc.Rect(m.x, m.y, m.w, m.h, "D")
	case hatchMark:
		m.hatch(doc)
	case lineMark, dashMark:
		m.stroke(doc)
	}
}

func (m mark) pen(doc *gofpdf.Fpdf) {
	doc.SetDrawColor(m.ink.r, m.ink.g, m.ink.b)
	doc.SetLineWidth(hairline)
}

// write puts a line of text. The baseline lies at 0.8 of the line's box, which
// leaves room for descenders.
func (m mark) write(doc *gofpdf.Fpdf) {
	u := use{bold: m.style.bold}
	text, ok := codes(m.text)
	if !ok {
		text, u.wide = m.text, true
	}
	doc.SetFont(u.family(), u.weight(), m.style.size)
	doc.SetTextColor(m.ink.r, m.ink.g, m.ink.b)
	doc.Text(m.x, m.y+m.h*0.8, text)
}

// hatch draws an outlined box with slanted lines, so that it differs from a
// solid one without colour.
func (m mark) hatch(doc *gofpdf.Fpdf) {
	m.pen(doc)
	doc.ClipRect(m.x, m.y, m.w, m.h, false)
	for x := m.x - m.h; x < m.x+m.w; x += hatchStep {
		doc.Line(x, m.y+m.h, x+m.h, m.y)
	}
	doc.ClipEnd()
	doc.Rect(m.x, m.y, m.w, m.h, "D")
}

// stroke draws a piece of a curve, solid or in dashes.
func (m mark) stroke(doc *gofpdf.Fpdf) {
	m.pen(doc)
	doc.SetLineWidth(thick)
	if m.kind == dashMark {
		doc.SetDashPattern([]float64{dashOn, dashOff}, m.phase)
	}
	doc.Line(m.x, m.y, m.x+m.w, m.y+m.h)
	doc.SetDashPattern(nil, 0)
}
