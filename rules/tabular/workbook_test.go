package tabular

import (
	"archive/zip"
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"
)

// archive packs parts as they are.
func archive(t testing.TB, parts map[string]string) []byte {
	t.Helper()
	var buf bytes.Buffer
	z := zip.NewWriter(&buf)
	for name, text := range parts {
		out, err := z.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		out.Write([]byte(text))
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// bookOf is a workbook with one sheet of these rows, as an office program lays it
// out (ECMA-376, by hand): a part of shared texts, and one of styles of which the
// first shows a date and the second a number with a text in quotes.
func bookOf(t testing.TB, rows string) []byte {
	return archive(t, map[string]string{
		"xl/workbook.xml":            `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="a" sheetId="3" r:id="rId7"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Target="worksheets/other.xml"/><Relationship Id="rId7" Target="worksheets/sheet9.xml"/></Relationships>`,
		"xl/sharedStrings.xml":       `<sst><si><t>id</t></si><si><r><t>two </t></r><r><t>looks</t></r></si></sst>`,
		"xl/styles.xml":              `<styleSheet><numFmts><numFmt numFmtId="170" formatCode="0.0 &quot;days&quot;"/><numFmt numFmtId="171" formatCode="dd/mm/yyyy"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="170"/><xf numFmtId="171"/></cellXfs></styleSheet>`,
		"xl/worksheets/sheet9.xml":   `<worksheet><sheetData>` + rows + `</sheetData></worksheet>`,
	})
}

func TestReadsWhatAnOfficeProgramWrites(t *testing.T) {
	rows, err := ReadWorkbook(bookOf(t, `<row r="1"><c r="A1" t="s"><v>0</v></c><c r="C1" t="s"><v>1</v></c></row>`+
		`<row r="4"><c r="A4" t="inlineStr"><is><t>=1+1</t></is></c><c r="B4"><v>12.7</v></c><c r="C4" s="2"><v>1950</v></c><c r="D4" t="b"><v>1</v></c><c r="E4"><v>1E-3</v></c><c r="F4" t="str"><v>x</v></c></row>`))
	if err != nil || len(rows) != 2 {
		t.Fatal(rows, err)
	}
	if r := rows[0]; r.Number != 1 || !slices.Equal(r.Cells, []string{"id", "", "two looks"}) {
		t.Errorf("%+v", r)
	}
	if r := rows[1]; r.Number != 4 || !slices.Equal(r.Cells, []string{"=1+1", "12.7", "1950", "yes", "0.001", "x"}) || len(r.Why) != 0 {
		t.Errorf("%+v", r)
	}
}

// A formula, a date and an error of the spreadsheet are told apart from values.
func TestWhatIsNoValue(t *testing.T) {
	rows, err := ReadWorkbook(bookOf(t, `<row r="2"><c r="A2"><f>B2*2</f><v>4</v></c><c r="B2" s="1"><v>45000</v></c><c r="C2" s="3"><v>45000.5</v></c><c r="D2" t="e"><v>#REF!</v></c><c r="E2" t="s"><v>9</v></c><c r="F2"><v>many</v></c></row>`))
	if err != nil || len(rows) != 1 {
		t.Fatal(rows, err)
	}
	for i, want := range []string{"formula", "date", "date", "error", "not there", "no number"} {
		if why := string(rows[0].Why[i]); !strings.Contains(why, want) {
			t.Errorf("cell %d: %q, want %q", i, why, want)
		}
	}
}

// Hostile and broken files are refused, soon and in words.
func TestHostileWorkbooks(t *testing.T) {
	whole := bookOf(t, `<row/>`)
	big := strings.Repeat("<row></row>", 1<<20)
	for name, c := range map[string]struct {
		data []byte
		want string
	}{
		"nothing":     {nil, "damaged"},
		"cut short":   {whole[:len(whole)/2], "damaged"},
		"no workbook": {archive(t, map[string]string{"a.txt": "x"}), "no sheet"},
		"bomb":        {bookOf(t, strings.Repeat(" ", 9<<20)), "8 MiB"},
		"many rows":   {bookOf(t, big[:11*(maxRows+1)]), "rows"},
		"far cell":    {bookOf(t, `<row r="1"><c r="ZZZZZZ1"><v>1</v></c></row>`), "columns"},
		"no XML":      {bookOf(t, `<row><c></row>`), "damaged"},
		"entities":    {archive(t, map[string]string{"xl/workbook.xml": `<!DOCTYPE x [<!ENTITY a "aaaa">]><workbook>&a;</workbook>`}), "damaged"},
		"no such sheet": {archive(t, map[string]string{"xl/workbook.xml": `<workbook><sheets/></workbook>`,
			"xl/_rels/workbook.xml.rels": `<Relationships/>`}), "no sheet"},
	} {
		start := time.Now()
		_, err := ReadWorkbook(c.data)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
		if took := time.Since(start); took > 5*time.Second {
			t.Errorf("%s: %v", name, took)
		}
	}
}

// What is written is read again: texts stay texts, whatever they begin with, and
// the same tables give the same bytes.
func TestWrittenIsRead(t *testing.T) {
	const day Day = 46354 // 2026-11-28, counted by another program
	table := Table{Name: "a/b:[c]", Columns: []string{"name", "rated (mm)", "day", "n"},
		Rows: [][]any{{"=1+1", 12.7, day, 3}, {"@x \x01<&>\n2nd", nil, nil, -0.5}, {"", 0.0, nil, nil}}}
	var one, two bytes.Buffer
	if err := WriteWorkbook(&one, table, Table{Name: "empty"}); err != nil {
		t.Fatal(err)
	}
	if WriteWorkbook(&two, table, Table{Name: "empty"}); !bytes.Equal(one.Bytes(), two.Bytes()) {
		t.Error("other bytes the next time")
	}
	rows, err := ReadWorkbook(one.Bytes())
	if err != nil || len(rows) != 4 {
		t.Fatal(rows, err)
	}
	for i, want := range []string{"[name rated (mm) day n]", "[=1+1 12.7  3]", "[@x <&>\n2nd   -0.5]", "[ 0]"} {
		if got := fmt.Sprint(rows[i].Cells); got != want {
			t.Errorf("row %d: %q, want %q", i+1, got, want)
		}
	}
	if !strings.Contains(string(rows[1].Why[2]), "date") {
		t.Errorf("the day is none: %v", rows[1].Why)
	}
	var sheet bytes.Buffer
	z, _ := zip.NewReader(bytes.NewReader(one.Bytes()), int64(one.Len()))
	in, err := z.Open("xl/worksheets/sheet1.xml")
	if err != nil {
		t.Fatal(err)
	}
	sheet.ReadFrom(in)
	for _, want := range []string{`<v>46354</v>`, `state="frozen"`, `<autoFilter ref="A1:D4"/>`} {
		if !strings.Contains(sheet.String(), want) {
			t.Errorf("no %s in %s", want, sheet.String())
		}
	}
	if strings.Contains(sheet.String(), "<f>") {
		t.Error("a formula came out of a text")
	}
}

func TestPlace(t *testing.T) {
	for i, want := range map[int]string{0: "A7", 25: "Z7", 26: "AA7", 51: "AZ7", 52: "BA7", 701: "ZZ7"} {
		if got := CellName(i, 7); got != want || i < maxCols && column(got) != i {
			t.Errorf("%d: %s, back %d", i, got, column(got))
		}
	}
}

// bookStyled is bookOf with these formats as styles 0, 1, 2 and so on.
func bookStyled(t testing.TB, rows string, formats ...int) []byte {
	var cells strings.Builder
	for _, id := range formats {
		fmt.Fprintf(&cells, `<xf numFmtId="%d"/>`, id)
	}
	return archive(t, map[string]string{
		"xl/workbook.xml":            `<workbook xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet r:id="rId1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="rId1" Target="/other/sheet.xml"/></Relationships>`,
		"xl/styles.xml":              `<styleSheet><cellXfs>` + cells.String() + `</cellXfs></styleSheet>`,
		"other/sheet.xml":            `<worksheet><sheetData>` + rows + `</sheetData></worksheet>`,
	})
}

// Dates are shown by the formats 14 to 22 and 45 to 47 (ECMA-376, 18.8.30), and by no
// style that is not there; without styles there are none.
func TestFormatsOfDates(t *testing.T) {
	formats := []int{14, 0, 13, 22, 23, 44, 45, 47, 48}
	var cells strings.Builder
	for i := range len(formats) + 1 {
		fmt.Fprintf(&cells, `<c s="%d"><v>1</v></c>`, i)
	}
	cells.WriteString(`<c s="-1"><v>1</v></c>`)
	rows, err := ReadWorkbook(bookStyled(t, `<row>`+cells.String()+`</row>`, formats...))
	if err != nil || len(rows) != 1 {
		t.Fatal(rows, err)
	}
	for i := range len(formats) + 2 {
		want := slices.Contains([]int{0, 3, 6, 7}, i)
		if got := rows[0].Why[i] != ""; got != want {
			t.Errorf("style %d: date %t", i, got)
		}
	}
	if rows, err := ReadWorkbook(bookStyled(t, `<row><c><v>1</v></c></row>`)); err != nil || len(rows[0].Why) != 0 {
		t.Error(rows, err)
	}
}

// Rows without a number follow the one before, the first is 1; texts that are not
// there and numbers beyond all bounds are said; what stands in quotes, in brackets or
// behind a backslash makes no date.
func TestRowsAndCellsOfAWorkbook(t *testing.T) {
	rows, err := ReadWorkbook(bookOf(t, `<row><c><v>1</v></c></row><row/><row r="9"/><row><c t="s"><v>2</v></c><c t="s"><v>x</v></c><c t="s"><v>-1</v></c><c><v>1E999</v></c><c><v>NaN</v></c><c><v>-Inf</v></c><c><v>1E21</v></c><c r="H"><v>1</v></c></row>`))
	if err != nil || len(rows) != 4 || rows[0].Number != 1 || rows[1].Number != 2 || rows[2].Number != 9 || rows[3].Number != 10 {
		t.Fatalf("%+v %v", rows, err)
	}
	for i, want := range []string{"not there", "not there", "not there", "no number", "no number", "no number", "", ""} {
		if why := string(rows[3].Why[i]); !strings.Contains(why, want) || want == "" && why != "" {
			t.Errorf("cell %d: %q", i, why)
		}
	}
	if got := rows[3].Cells[6]; got != "1000000000000000000000" {
		t.Errorf("%q", got)
	}
	for code, want := range map[string]string{`0.0 "days"`: "0.0 ", `[h]:mm`: ":mm", `0\d0`: "00", `"a"yy"b"`: "yy", `y[$-407]y`: "yy"} {
		if got := plainCode(code); got != want {
			t.Errorf("%s is %q without what is said, want %q", code, got, want)
		}
	}
}

// The limits: 10,000 rows of 100 columns, of which CV is the last, and 8 MiB unpacked.
func TestLimitsOfAWorkbook(t *testing.T) {
	padded := func(size int) []byte {
		const shell = len(`<worksheet><sheetData></sheetData></worksheet>`)
		return bookStyled(t, strings.Repeat(" ", size-shell))
	}
	for name, c := range map[string]struct {
		data []byte
		fine bool
	}{
		"rows":               {bookStyled(t, strings.Repeat(`<row/>`, 10000)), true},
		"more rows":          {bookStyled(t, strings.Repeat(`<row/>`, 10001)), false},
		"last column":        {bookStyled(t, `<row><c r="CV1"><v>1</v></c></row>`), true},
		"one column more":    {bookStyled(t, `<row><c r="CW1"><v>1</v></c></row>`), false},
		"columns far beyond": {bookStyled(t, `<row><c r="CVA1"><v>1</v></c></row>`), false},
		"no sheets":          {archive(t, map[string]string{"xl/workbook.xml": `<workbook><sheets/></workbook>`, "xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="rId1" Target="a.xml"/></Relationships>`}), false},
		"no column":          {bookStyled(t, `<row><c r="1"><v>1</v></c></row>`), false},
		"8 MiB":              {padded(8388608), true},
		"8 MiB and a byte":   {padded(8388609), false},
		"row cut off":        {bookStyled(t, `<row><c>`), false},
		"sheet not there":    {archive(t, map[string]string{"xl/workbook.xml": `<workbook xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet r:id="rId2"/></sheets></workbook>`, "xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="rId1" Target="a.xml"/></Relationships>`}), false},
	} {
		if _, err := ReadWorkbook(c.data); (err == nil) != c.fine {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// part unpacks one part of a workbook.
func part(t testing.TB, book []byte, name string) string {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(book), int64(len(book)))
	if err != nil {
		t.Fatal(err)
	}
	in, err := z.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	b.ReadFrom(in)
	return b.String()
}

// What is written, by hand: sheets and their names, columns as wide as their longest
// line and one, a heading and three, from 8 to 48 and 12 for a day, and each cell in its
// place with its style.
func TestPartsWritten(t *testing.T) {
	long := strings.Repeat("x", 60)
	tables := []Table{
		{Name: "a/b:[c]", Columns: []string{"n", "rated (mm)", "day", "note", "long", "some"},
			Rows: [][]any{{1, math.Inf(1), Day(46354), "one\ntwenty letters of it", long, "x"}, {1e21, math.NaN(), nil, math.Inf(-1)}}},
		{Name: strings.Repeat("n", 32)}, {Name: "?"},
	}
	var out bytes.Buffer
	if err := WriteWorkbook(&out, tables...); err != nil {
		t.Fatal(err)
	}
	book := part(t, out.Bytes(), "xl/workbook.xml")
	for _, want := range []string{`<sheet name="a-b(c)" sheetId="1" r:id="rId1"/>`, `<sheet name="` + strings.Repeat("n", 31) + `" sheetId="2" r:id="rId2"/>`, `<sheet name="1" sheetId="3" r:id="rId3"/>`} {
		if !strings.Contains(book, want) {
			t.Errorf("no %s in %s", want, book)
		}
	}
	links := part(t, out.Bytes(), "xl/_rels/workbook.xml.rels") + part(t, out.Bytes(), "_rels/.rels")
	for id, target := range map[string]string{"rId1": "worksheets/sheet1.xml", "rId2": "worksheets/sheet2.xml", "rId3": "worksheets/sheet3.xml", "rId4": "styles.xml", "rId1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument": "xl/workbook.xml"} {
		if i := strings.Index(links, `Target="`+target+`"`); i < 0 || !strings.Contains(links[max(0, i-130):i], `Id="`+id) {
			t.Errorf("no %s to %s in %s", id, target, links)
		}
	}
	sheet := part(t, out.Bytes(), "xl/worksheets/sheet1.xml")
	for i, width := range []int{8, 13, 12, 21, 48, 8} {
		if want := fmt.Sprintf(`<col min="%d" max="%d" width="%d" customWidth="1"/>`, i+1, i+1, width); !strings.Contains(sheet, want) {
			t.Errorf("no %s in %s", want, sheet)
		}
	}
	for _, want := range []string{`<row r="1"><c r="A1" s="1" t="inlineStr">`, `<row r="2"><c r="A2" s="0"><v>1</v></c><c r="C2" s="2"><v>46354</v></c><c r="D2" s="3" t="inlineStr">`, `<c r="F2" s="0" t="inlineStr">`,
		`<row r="3"><c r="A3" s="0"><v>1e+21</v></c></row>`, `<autoFilter ref="A1:F3"/>`} {
		if !strings.Contains(sheet, want) {
			t.Errorf("no %s in %s", want, sheet)
		}
	}
	if strings.Contains(part(t, out.Bytes(), "xl/worksheets/sheet3.xml"), "autoFilter") {
		t.Error("a table without columns can be filtered")
	}
	one := []Table{{Name: "one", Columns: []string{"n"}}}
	out.Reset()
	if WriteWorkbook(&out, one...); !strings.Contains(part(t, out.Bytes(), "xl/worksheets/sheet1.xml"), `<autoFilter ref="A1:A1"/>`) {
		t.Error("a table of one column cannot be filtered")
	}
	if strings.Contains(part(t, out.Bytes(), "xl/worksheets/sheet1.xml"), "A2\" s=") {
		t.Error("a row came out of nothing")
	}
}
