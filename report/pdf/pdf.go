package pdf

import (
	"bytes"
	"fmt"
	"time"

	"cutbrief/report"
	"cutbrief/report/page"
	"cutbrief/rules/message"

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
	clean := cleaned(&c, b)
	pg, err := fit(f, &clean, p, c.said())
	if err != nil {
		return nil, err
	}
	sheets, err := behind(f, &clean, p)
	if err != nil {
		return nil, err
	}
	return draw(append([]*leaf{pg}, sheets...), about{title: clean.Title, subject: clean.Need, check: clean.Check, date: clean.Date, words: clean.Words}, p, compress)
}

// about is what a file says of itself.
type about struct {
	title, subject string
	check          string
	date           time.Time
	words          *message.Catalog
}

// draw copies the marks into a document. The library keeps its first error,
// hence one check at the end.
func draw(leaves []*leaf, of about, p Paper, compress bool) ([]byte, error) {
	width, height, err := p.size()
	if err != nil {
		return nil, err
	}
	doc := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: width, Ht: height}})
	doc.SetCompression(compress)
	doc.SetAutoPageBreak(false, 0)
	doc.SetCatalogSort(true)
	doc.SetCreationDate(dated(of.date))
	doc.SetModificationDate(dated(of.date))
	doc.SetTitle(of.title, true)
	doc.SetSubject(of.subject, true)
	doc.SetProducer("cutbrief", true)
	doc.SetXmpMetadata(of.xmp())
	addFonts(doc, leaves)
	for _, l := range leaves {
		doc.AddPage()
		for i := range l.marks {
			l.marks[i].draw(doc)
		}
	}
	var buf bytes.Buffer
	if err := doc.Output(&buf); err != nil {
		return nil, fmt.Errorf("write the page: %w", err)
	}
	return spoken(buf.Bytes(), of.language()), nil
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

// draw puts a mark into the document.
func (m *mark) draw(doc *gofpdf.Fpdf) {
	switch m.kind {
	case textMark:
		m.write(doc)
	case fillMark:
		doc.SetFillColor(m.ink.of())
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
	case signMark:
		m.signal(doc)
	}
}

// of is a colour as the library takes it.
func (i ink) of() (r, g, b int) { return int(i.r), int(i.g), int(i.b) }

func (m *mark) pen(doc *gofpdf.Fpdf) {
	doc.SetDrawColor(m.ink.of())
	doc.SetLineWidth(hairline)
}

// write puts a line of text. Its baseline lies on the grid, above the end of the
// line's box, which leaves room for descenders.
func (m *mark) write(doc *gofpdf.Fpdf) {
	u := use{bold: m.style.bold}
	text, ok := codes(m.text)
	if !ok {
		text, u.wide = m.text, true
	}
	doc.SetFont(u.family(), u.weight(), m.style.size)
	doc.SetTextColor(m.ink.of())
	doc.Text(m.x, m.y+m.h-0.4*row, text)
}

// hatch draws an outlined box with slanted lines, so that it differs from a
// solid one without colour.
func (m *mark) hatch(doc *gofpdf.Fpdf) {
	m.pen(doc)
	doc.ClipRect(m.x, m.y, m.w, m.h, false)
	for x := m.x - m.h; x < m.x+m.w; x += hatchStep {
		doc.Line(x, m.y+m.h, x+m.h, m.y)
	}
	doc.ClipEnd()
	doc.Rect(m.x, m.y, m.w, m.h, "D")
}

// stroke draws a line from point to point, solid or in dashes.
func (m *mark) stroke(doc *gofpdf.Fpdf) {
	m.pen(doc)
	doc.SetLineWidth(thick)
	if m.kind == dashMark {
		doc.SetDashPattern([]float64{dashOn, dashOff}, 0)
	}
	for i, p := range m.points {
		if i == 0 {
			doc.MoveTo(p.x, p.y)
		} else {
			doc.LineTo(p.x, p.y)
		}
	}
	doc.DrawPath("D")
	doc.SetDashPattern(nil, 0)
}

// signal draws a safety sign into its box.
func (m *mark) signal(doc *gofpdf.Fpdf) {
	scale := m.w / page.Side
	doc.SetLineJoinStyle("round")
	for i := range m.sign.Shapes {
		s := &m.sign.Shapes[i]
		doc.SetFillColor(s.Ink.R, s.Ink.G, s.Ink.B)
		doc.SetDrawColor(s.Ink.R, s.Ink.G, s.Ink.B)
		doc.SetLineWidth(s.Line * scale)
		x := func(v float64) float64 { return m.x + v*scale }
		y := func(v float64) float64 { return m.y + v*scale }
		for _, step := range s.Steps() {
			switch at := step.At; step.Op {
			case 'M':
				doc.MoveTo(x(at[0]), y(at[1]))
			case 'L':
				doc.LineTo(x(at[0]), y(at[1]))
			case 'C':
				doc.CurveBezierCubicTo(x(at[0]), y(at[1]), x(at[2]), y(at[3]), x(at[4]), y(at[5]))
			case 'Z':
				doc.ClosePath()
			case 'O':
				doc.Circle(x(at[0]), y(at[1]), at[2]*scale, "F")
			}
		}
		switch {
		case s.Path[0] == 'O':
		case s.Line > 0:
			doc.DrawPath("D")
		default:
			doc.DrawPath("F")
		}
	}
	doc.SetLineJoinStyle("miter")
}
