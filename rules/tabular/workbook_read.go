package tabular

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"path"
	"strconv"
	"strings"

	"cutbrief/rules/message"
)

// Limits of a file that is read. They keep a wrong or hostile one from costing
// memory: a part is never unpacked further than that.
const (
	maxPart = 8 << 20 // bytes of a part, unpacked
	maxRows = 10_000
	maxCols = 100
)

// IsWorkbook reports whether a file is a workbook, or at least an archive as one is.
func IsWorkbook(data []byte) bool { return bytes.HasPrefix(data, []byte("PK\x03\x04")) }

// WorkbookRow is a line of a sheet: its number, from 1, and what its cells say. Why says of
// a cell, from 0, why it cannot be read: a formula, a date, a fault.
type WorkbookRow struct {
	Number int
	Cells  []string
	Why    map[int]message.ID
}

// ReadWorkbook reads the first sheet of a workbook. Numbers come with all their digits and
// a decimal point, whatever they look like in the workbook.
func ReadWorkbook(data []byte) ([]WorkbookRow, error) {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, message.Errorf("is damaged: it cannot be unpacked")
	}
	b := book{zip: z}
	name, err := b.firstSheet()
	if err != nil {
		return nil, err
	}
	if err := b.part("xl/sharedStrings.xml", &b.shared); err != nil && !errors.Is(err, errMissing) {
		return nil, err
	}
	if err := b.part("xl/styles.xml", &b.styles); err != nil && !errors.Is(err, errMissing) {
		return nil, err
	}
	return b.rows(name)
}

// errMissing is said of a part that is not there.
var errMissing = message.Errorf("is no workbook: it has no sheet")

// book is a workbook while it is read.
type book struct {
	zip    *zip.Reader
	shared struct {
		Items []text `xml:"si"`
	}
	styles struct {
		Formats []struct {
			ID   int    `xml:"numFmtId,attr"`
			Code string `xml:"formatCode,attr"`
		} `xml:"numFmts>numFmt"`
		Cells []struct {
			Format int `xml:"numFmtId,attr"`
		} `xml:"cellXfs>xf"`
	}
}

// text is a text in one piece, or in pieces of several looks.
type text struct {
	One  string   `xml:"t"`
	Runs []string `xml:"r>t"`
}

func (t text) String() string { return t.One + strings.Join(t.Runs, "") }

// open is a part of the archive, cut at the limit.
func (b *book) open(name string) (io.ReadCloser, error) {
	for _, f := range b.zip.File {
		if !strings.EqualFold(f.Name, name) {
			continue
		}
		if f.UncompressedSize64 > maxPart {
			return nil, errLarge
		}
		r, err := f.Open()
		if err != nil {
			return nil, errDamaged
		}
		return r, nil
	}
	return nil, errMissing
}

var (
	errLarge   = message.Errorf("unpacks to more than 8 MiB")
	errDamaged = message.Errorf("is damaged: it cannot be unpacked")
)

// part reads a small part whole.
func (b *book) part(name string, into any) error {
	r, err := b.open(name)
	if err != nil {
		return err
	}
	defer r.Close() // only read: nothing to lose
	data, err := io.ReadAll(io.LimitReader(r, maxPart+1))
	switch {
	case len(data) > maxPart: // its own size was a lie
		return errLarge
	case err != nil || xml.Unmarshal(data, into) != nil:
		return errDamaged
	}
	return nil
}

// firstSheet is the name of the part that holds the first sheet.
func (b *book) firstSheet() (string, error) {
	var list struct {
		Sheets []struct {
			ID string `xml:"http://schemas.openxmlformats.org/officeDocument/2006/relationships id,attr"`
		} `xml:"sheets>sheet"`
	}
	var links struct {
		Links []struct {
			ID     string `xml:"Id,attr"`
			Target string `xml:"Target,attr"`
		} `xml:"Relationship"`
	}
	if err := b.part("xl/workbook.xml", &list); err != nil {
		return "", err
	}
	if err := b.part("xl/_rels/workbook.xml.rels", &links); err != nil {
		return "", err
	}
	for _, l := range links.Links {
		if len(list.Sheets) > 0 && l.ID == list.Sheets[0].ID {
			if strings.HasPrefix(l.Target, "/") {
				return l.Target[1:], nil
			}
			return path.Join("xl", l.Target), nil
		}
	}
	return "", errMissing
}

// rows reads a sheet row by row.
func (b *book) rows(name string) ([]WorkbookRow, error) {
	r, err := b.open(name)
	if err != nil {
		return nil, err
	}
	defer r.Close() // only read: nothing to lose
	in := &io.LimitedReader{R: r, N: maxPart + 1}
	d := xml.NewDecoder(in)
	var list []WorkbookRow
	for {
		token, err := d.Token()
		switch {
		case errors.Is(err, io.EOF):
			return list, nil
		case in.N <= 0:
			return nil, errLarge
		case err != nil:
			return nil, errDamaged
		}
		start, is := token.(xml.StartElement)
		if !is || start.Name.Local != "row" {
			continue
		}
		var raw rawRow
		if err := d.DecodeElement(&raw, &start); err != nil || in.N <= 0 {
			return nil, errDamaged
		}
		if len(list) >= maxRows {
			return nil, message.Errorf("has more than {1} rows", message.Figure(strconv.Itoa(maxRows)))
		}
		if raw.Number == 0 {
			raw.Number = 1
			if n := len(list); n > 0 {
				raw.Number = list[n-1].Number + 1
			}
		}
		row, err := b.row(raw)
		if err != nil {
			return nil, err
		}
		list = append(list, row)
	}
}

type rawRow struct {
	Number int       `xml:"r,attr"`
	Cells  []rawCell `xml:"c"`
}

type rawCell struct {
	Place   string  `xml:"r,attr"`
	Kind    string  `xml:"t,attr"`
	Style   int     `xml:"s,attr"`
	Formula *string `xml:"f"`
	Value   string  `xml:"v"`
	Inline  text    `xml:"is"`
}

// row puts the cells of a row in their columns.
func (b *book) row(raw rawRow) (WorkbookRow, error) {
	row := WorkbookRow{Number: raw.Number}
	for _, c := range raw.Cells {
		at := len(row.Cells)
		if c.Place != "" {
			at = column(c.Place)
		}
		if at < 0 || at >= maxCols {
			return row, message.Errorf("has a cell beyond {1} columns", message.Figure(strconv.Itoa(maxCols)))
		}
		for len(row.Cells) <= at {
			row.Cells = append(row.Cells, "")
		}
		said, why := b.cell(c)
		if row.Cells[at] = said; why != "" {
			if row.Why == nil {
				row.Why = map[int]message.ID{}
			}
			row.Why[at] = why
		}
	}
	return row, nil
}

// cell is what a cell says, or why that cannot be read.
func (b *book) cell(c rawCell) (said string, why message.ID) {
	switch {
	case c.Formula != nil:
		return "", "holds a formula; put its value there"
	case c.Kind == "e":
		return c.Value, "holds an error of the spreadsheet"
	case c.Kind == "b":
		return map[string]string{"1": "yes", "0": "no"}[c.Value], ""
	case c.Kind == "inlineStr":
		return c.Inline.String(), ""
	case c.Kind == "s":
		i, err := strconv.Atoi(c.Value)
		if err != nil || i < 0 || i >= len(b.shared.Items) {
			return "", "refers to a text that is not there"
		}
		return b.shared.Items[i].String(), ""
	case c.Kind != "" && c.Kind != "n" || c.Value == "":
		return c.Value, ""
	case b.dated(c.Style):
		return "", "is a date to the spreadsheet; format the cell as text or number"
	}
	v, err := strconv.ParseFloat(c.Value, 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
		return c.Value, "is no number"
	}
	return strconv.FormatFloat(v, 'f', -1, 64), ""
}

// dated reports whether numbers of a style are shown as dates or times: by the
// formats 14 to 22 and 45 to 47 (ECMA-376, 18.8.30), or by a code of their own.
func (b *book) dated(style int) bool {
	if style < 0 || style >= len(b.styles.Cells) {
		return false
	}
	id := b.styles.Cells[style].Format
	for _, f := range b.styles.Formats {
		if f.ID == id {
			return strings.ContainsAny(plainCode(f.Code), "yYdDhHsS")
		}
	}
	return id >= 14 && id <= 22 || id >= 45 && id <= 47
}

// plainCode is a format without what it says in quotes, brackets or behind a
// backslash.
func plainCode(code string) string {
	var b strings.Builder
	until := byte(0)
	for i := 0; i < len(code); i++ {
		switch c := code[i]; {
		case until != 0:
			if c == until {
				until = 0
			}
		case c == '"':
			until = '"'
		case c == '[':
			until = ']'
		case c == '\\':
			i++
		default:
			b.WriteByte(c)
		}
	}
	return b.String()
}

// column is the column of a place such as "AB12", from 0; −1 if it is none.
func column(place string) int {
	n := 0
	for i := 0; i < len(place) && place[i] >= 'A' && place[i] <= 'Z' && n <= maxCols; i++ {
		n = n*26 + int(place[i]-'A') + 1
	}
	return n - 1
}

// CellName names a cell by its column, from 0, and its row, from 1: "B7".
func CellName(column, row int) string {
	name := ""
	for n := column; n >= 0; n = n/26 - 1 {
		name = string(rune('A'+n%26)) + name
	}
	return name + strconv.Itoa(row)
}
