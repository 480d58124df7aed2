package pdf

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"time"

	"cutbrief/report"
	"cutbrief/rules/message"

	"github.com/jung-kurt/gofpdf"
)

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
		d := drawing{Fpdf: doc, font: -1}
		for i := range l.marks {
			d.mark(&l.marks[i])
		}
	}
	var buf bytes.Buffer
	buf.Grow(usualFile)
	if err := doc.Output(&buf); err != nil {
		return nil, fmt.Errorf("write the page: %w", err)
	}
	return spoken(buf.Bytes(), of.words.Tag()), nil
}

// usualFile is more than a file of one page has, in bytes: it is not moved while it
// is written.
const usualFile = 100 << 10

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

// drawing is one page while it is drawn, with what was last set.
type drawing struct {
	*gofpdf.Fpdf
	font   int
	size   float64
	letter ink
}

func (d *drawing) mark(m *mark) {
	switch r, g, b := int(m.ink.r), int(m.ink.g), int(m.ink.b); m.kind {
	case textMark:
		d.write(m)
		return
	case signMark:
		d.signal(m)
		return
	case fillMark:
		d.SetFillColor(r, g, b)
		d.Rect(m.x, m.y, m.w, m.h, "F")
		return
	default:
		d.SetDrawColor(r, g, b)
		d.SetLineWidth(hairline)
	}
	switch m.kind {
	case ruleMark:
		d.Line(m.x, m.y, m.x+m.w, m.y+m.h)
	case boxMark:
		d.Rect(m.x, m.y, m.w, m.h, "D")
	case hatchMark:
		d.hatch(m)
	case lineMark, dashMark:
		d.stroke(m)
	}
}

// write puts a line of text. Its baseline lies on the grid, above the end of the
// line's box, which leaves room for descenders.
func (d *drawing) write(m *mark) {
	font, text := fontOf(m.text, m.style)
	if font != d.font || m.style.size != d.size {
		d.font, d.size = font, m.style.size
		d.SetFont(fonts[font].family, fonts[font].weight, m.style.size)
	}
	if m.ink != d.letter {
		d.letter = m.ink
		d.SetTextColor(int(m.ink.r), int(m.ink.g), int(m.ink.b))
	}
	d.Text(m.x, m.y+m.h-0.4*row, text)
}

// hatch draws an outlined box with slanted lines, so that it differs from a
// solid one without colour.
func (d *drawing) hatch(m *mark) {
	d.ClipRect(m.x, m.y, m.w, m.h, false)
	for x := m.x - m.h; x < m.x+m.w; x += hatchStep {
		d.Line(x, m.y+m.h, x+m.h, m.y)
	}
	d.ClipEnd()
	d.Rect(m.x, m.y, m.w, m.h, "D")
}

// stroke draws a line from point to point, solid or in dashes.
func (d *drawing) stroke(m *mark) {
	d.SetLineWidth(thick)
	if m.kind == dashMark {
		d.SetDashPattern([]float64{dashOn, dashOff}, 0)
	}
	d.MoveTo(m.points[0].x, m.points[0].y)
	for _, p := range m.points[1:] {
		d.LineTo(p.x, p.y)
	}
	d.DrawPath("D")
	d.SetDashPattern(nil, 0)
}

// signal draws a safety sign into its box.
func (d *drawing) signal(m *mark) {
	scale := m.w / report.SignSide
	x := func(v float64) float64 { return m.x + v*scale }
	y := func(v float64) float64 { return m.y + v*scale }
	d.SetLineJoinStyle("round")
	for _, s := range m.sign.Shapes {
		d.SetFillColor(s.Ink.R, s.Ink.G, s.Ink.B)
		d.SetDrawColor(s.Ink.R, s.Ink.G, s.Ink.B)
		d.SetLineWidth(s.Line * scale)
		for _, step := range s.Steps {
			switch at := step.At; step.Op {
			case 'M':
				d.MoveTo(x(at[0]), y(at[1]))
			case 'L':
				d.LineTo(x(at[0]), y(at[1]))
			case 'C':
				d.CurveBezierCubicTo(x(at[0]), y(at[1]), x(at[2]), y(at[3]), x(at[4]), y(at[5]))
			case 'Z':
				d.ClosePath()
			case 'O':
				d.Circle(x(at[0]), y(at[1]), at[2]*scale, "F")
			}
		}
		switch {
		case s.Steps[0].Op == 'O':
		case s.Line > 0:
			d.DrawPath("D")
		default:
			d.DrawPath("F")
		}
	}
	d.SetLineJoinStyle("miter")
}

// xmp is what the file says of itself as XMP (ISO 16684-1).
func (a about) xmp() []byte {
	safe := func(s string) string {
		var b bytes.Buffer
		_ = xml.EscapeText(&b, []byte(s)) // into memory; it cannot fail
		return b.String()
	}
	check := ""
	if a.check != "" {
		check = "<dc:identifier>" + safe(a.check) + "</dc:identifier>"
	}
	return fmt.Appendf(nil, `<?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
<dc:format>application/pdf</dc:format><dc:language><rdf:Bag><rdf:li>%s</rdf:li></rdf:Bag></dc:language>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title><dc:description><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:description>
<xmp:CreateDate>%s</xmp:CreateDate><xmp:CreatorTool>cutbrief</xmp:CreatorTool>%s
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>`, safe(a.words.Tag()), safe(a.title), safe(a.subject), dated(a.date).Format(time.RFC3339), check)
}

// spoken writes into the catalogue of a file which language it is in, and where
// it says of itself what it is. The library has no call for the one and forgets
// the other; the catalogue is the last object it writes, the two before it are
// the information and the metadata, so that only where the table of objects
// starts changes.
func spoken(file []byte, language string) []byte {
	const catalogue, start, info = "/Type /Catalog\n", "startxref\n", "\n/Info "
	at, end, known := bytes.LastIndex(file, []byte(catalogue)), bytes.LastIndex(file, []byte(start)), bytes.LastIndex(file, []byte(info))
	if at < 0 || known < at || end < known {
		return file
	}
	var number, was int
	if _, err := fmt.Fscan(bytes.NewReader(file[known+len(info):]), &number); err != nil {
		return file
	}
	if _, err := fmt.Fscan(bytes.NewReader(file[end+len(start):]), &was); err != nil {
		return file
	}
	at += len(catalogue)
	entry := fmt.Sprintf("/Lang (%s)\n/Metadata %d 0 R\n", language, number-1)
	tail := fmt.Appendf([]byte(entry), "%s%s%d\n%%%%EOF\n", file[at:end], start, was+len(entry))
	return append(file[:at], tail...)
}
