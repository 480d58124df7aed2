package tabular

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Table is a sheet to write: a header that stays in sight and can be filtered by,
// and rows below it.
type Table struct {
	Name    string // of the sheet, at most 31 characters
	Columns []string
	Rows    [][]any // a string, a whole number or float64, a Day, or nil for nothing
}

// Day is a day as workbooks count them: from 1899-12-30, which is 0 (ECMA-376,
// 18.17.4.1).
type Day int

// Styles of cells, in the order they are written in styles.xml.
const (
	plainCell = iota
	headCell
	dayCell
	longCell // texts of several lines
)

const head = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>` + "\n"

// The parts that are the same for every workbook.
const (
	types  = head + `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/>%s</Types>`
	links  = head + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">%s</Relationships>`
	link   = `<Relationship Id="rId%d" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/%s" Target="%s"/>`
	main   = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`
	styles = head + `<styleSheet ` + main + `><numFmts count="1"><numFmt numFmtId="164" formatCode="yyyy\-mm\-dd"/></numFmts><fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="4"><xf/><xf fontId="1" applyFont="1"><alignment wrapText="1" vertical="top"/></xf><xf numFmtId="164" applyNumberFormat="1"/><xf applyAlignment="1"><alignment wrapText="1" vertical="top"/></xf></cellXfs></styleSheet>`
)

// WriteWorkbook writes tables as the sheets of a workbook. Texts are texts: none
// becomes a formula. The same tables give the same bytes.
func WriteWorkbook(w io.Writer, tables ...Table) error {
	z := zip.NewWriter(w)
	var parts, sheets, names strings.Builder
	for i, t := range tables {
		file := fmt.Sprintf("worksheets/sheet%d.xml", i+1)
		fmt.Fprintf(&parts, `<Override PartName="/xl/%s" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>`, file)
		fmt.Fprintf(&sheets, link, i+1, "worksheet", file)
		fmt.Fprintf(&names, `<sheet name="%s" sheetId="%d" r:id="rId%d"/>`, escaped(sheetName(t.Name)), i+1, i+1)
	}
	list := [][2]string{
		{"[Content_Types].xml", fmt.Sprintf(types, parts.String())},
		{"_rels/.rels", fmt.Sprintf(links, fmt.Sprintf(link, 1, "officeDocument", "xl/workbook.xml"))},
		{"xl/workbook.xml", head + `<workbook ` + main + ` xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets>` + names.String() + `</sheets></workbook>`},
		{"xl/_rels/workbook.xml.rels", fmt.Sprintf(links, sheets.String()+fmt.Sprintf(link, len(tables)+1, "styles", "styles.xml"))},
		{"xl/styles.xml", styles},
	}
	for i, t := range tables {
		list = append(list, [2]string{fmt.Sprintf("xl/worksheets/sheet%d.xml", i+1), t.sheet()})
	}
	for _, part := range list {
		out, err := z.Create(part[0])
		if err == nil {
			_, err = io.WriteString(out, part[1])
		}
		if err != nil {
			return fmt.Errorf("write the workbook: %w", err)
		}
	}
	return z.Close()
}

// sheet is a table as a sheet.
func (t *Table) sheet() string {
	var b strings.Builder
	b.WriteString(head + `<worksheet ` + main + `><sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><cols>`)
	for i := range t.Columns {
		fmt.Fprintf(&b, `<col min="%d" max="%d" width="%d" customWidth="1"/>`, i+1, i+1, t.width(i))
	}
	b.WriteString(`</cols><sheetData>`)
	heads := make([]any, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = c
	}
	for n, row := range append([][]any{heads}, t.Rows...) {
		fmt.Fprintf(&b, `<row r="%d">`, n+1)
		for i, v := range row {
			writeCell(&b, CellName(i, n+1), v, n == 0)
		}
		b.WriteString(`</row>`)
	}
	b.WriteString(`</sheetData>`)
	if len(t.Columns) > 0 {
		fmt.Fprintf(&b, `<autoFilter ref="A1:%s"/>`, CellName(len(t.Columns)-1, len(t.Rows)+1))
	}
	b.WriteString(`</worksheet>`)
	return b.String()
}

// width is how wide a column is, in characters: as its longest line, within bounds.
func (t *Table) width(i int) int {
	const least, most = 8, 48
	wide := max(least, utf8.RuneCountInString(t.Columns[i])+3) // and the arrow of the filter
	for _, row := range t.Rows {
		if i < len(row) {
			for line := range strings.SplitSeq(fmt.Sprint(row[i]), "\n") {
				wide = max(wide, min(utf8.RuneCountInString(line)+1, most))
			}
			if _, is := row[i].(Day); is {
				wide = max(wide, len("2026-11-28")+2)
			}
		}
	}
	return min(wide, most)
}

func writeCell(b *strings.Builder, place string, v any, heading bool) {
	number := func(text string, style int) { fmt.Fprintf(b, `<c r="%s" s="%d"><v>%s</v></c>`, place, style, text) }
	switch v := v.(type) {
	case int:
		number(strconv.Itoa(v), plainCell)
	case float64:
		if !math.IsInf(v, 0) && !math.IsNaN(v) { // what is no number is not known
			number(strconv.FormatFloat(v, 'g', -1, 64), plainCell)
		}
	case Day:
		number(strconv.Itoa(int(v)), dayCell)
	case string:
		style := plainCell
		if strings.Contains(v, "\n") {
			style = longCell
		}
		if heading {
			style = headCell
		}
		if v != "" {
			fmt.Fprintf(b, `<c r="%s" s="%d" t="inlineStr"><is><t xml:space="preserve">%s</t></is></c>`, place, style, escaped(v))
		}
	}
}

// escaped is a text as XML holds it, without the characters it cannot hold.
func escaped(s string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(strings.Map(func(r rune) rune {
		if r < ' ' && r != '\n' && r != '\t' {
			return -1
		}
		return r
	}, s))) // into memory; it cannot fail
	return b.String()
}

// sheetName is a name that a sheet may have.
func sheetName(name string) string {
	name = strings.Trim(strings.NewReplacer("/", "-", `\`, "-", "?", "", "*", "", "[", "(", "]", ")", ":", "").Replace(name), "' ")
	if r := []rune(name); len(r) > 31 {
		name = string(r[:31])
	}
	if name == "" {
		return "1"
	}
	return name
}
