package tabular

import (
	"archive/zip"
	"bytes"
	"fmt"
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
