package tabular

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"cutbrief/rules/message"
)

// item is a row of a list made up for these tests: a name that must be there, a
// number that may be blank, and a remark that need not be there at all.
type item struct{ name, count, remark string }

func items() *Format[item] {
	name := TextColumn("name", "a name", func(i *item) *string { return &i.name })
	name.Required = true
	remark := TextColumn("remark", "", func(i *item) *string { return &i.remark })
	remark.Optional = true
	return &Format[item]{
		Columns: []Column[item]{name, {Name: "count", Accepts: "a plain number", Write: func(i *item) string { return i.count },
			Read: func(c *Cell, i *item) {
				if _, _, ok := Plain(c.Text); !ok && c.Text != "" {
					c.Refuse("{1} is no number", c.Quoted())
					return
				}
				i.count = c.Text
			}}, remark},
		MaxRows: 3, Missing: "is not there", Name: func(i *item) string { return i.name },
	}
}

// read gives the names of the rows kept, whether all was read, and the findings, all
// on one line each.
func read(f *Format[item], data string) string {
	list := f.Read(strings.NewReader(data))
	var b strings.Builder
	for i := range list.Rows {
		fmt.Fprintf(&b, "%s ", list.Rows[i].Value.name)
	}
	if fmt.Fprint(&b, list.Complete); len(list.Findings) > 0 {
		for _, found := range list.Findings {
			said, _, _ := strings.Cut(found.String(), "; accepted")
			fmt.Fprintf(&b, "\n%s", said)
		}
	}
	return b.String()
}

// What is read of a list and what is found, by hand. Lines count from 1.
func TestFormatRead(t *testing.T) {
	long := strings.Repeat("x", 41)
	for text, want := range map[string]string{
		"name,count\na,1\nb,\n":                 "a b true",
		"Count,NAME\n1,a\n":                     "a true",
		"# said\n\nname,count\n\"#,\n, \na,1":   "a true",
		"name,count,\na,1,x\n":                  "a true", // a column without a name is not read
		"name,count\na,1,,\n":                   "a true", // nor are blank cells behind the last
		"":                                      "false\nfile: error: has no header row",
		"name;count\n":                          "false\nline 1: error: has its cells separated by semicolons or tabs",
		"name\tcount\n":                         "false\nline 1: error: has its cells separated by semicolons or tabs",
		"name\na\n":                             "a true\nline 1, column count: note: is not there",
		"count\nx\n":                            "false\nline 1, column name: error: is missing, so no row can be used\nline 2, column count: error: \"x\" is no number",
		"\"name,count\na,1\n":                   "false\nline 1: error: opens a quote that is not closed on the same line",
		"name,count,count\na,1,2\n":             "false\nline 1, column count: error: is there twice",
		"name,count,colour\na,1,red\n":          "a true\nline 1, column colour: warning: is not a column this program knows, so it is not read",
		"name,count," + long + "\na,1,\n":       "a true\nline 1, column " + long[:39] + "…: warning: is not a column this program knows, so it is not read",
		"name,count," + long[:40] + "\na,1,\n":  "a true\nline 1, column " + long[:40] + ": warning: is not a column this program knows, so it is not read",
		"name,c\x1b\na,1\n":                     "false\nline 1: error: has a column name, \"c\\x1b\", that holds the invisible character '\\x1b'\nline 1, column count: note: is not there",
		"name,count\na,x\nb,2\n":                "b true\nline 2, column count: error: \"x\" is no number",
		"name,count\n,1\nb,2\n":                 "b true\nline 2, column name: error: is blank",
		"name,count\na\x1b,1\n":                 "true\nline 2, column name: error: \"a\\x1b\" holds the invisible character '\\x1b'",
		"name,count\na\nb,2\n":                  "b true\nline 2: error: has 1 cells where the header has 2",
		"name,count\na,1,x,\nb,2\n":             "b true\nline 2: error: has 3 cells where the header has 2",
		"name,count\na,b\"c\nb,2\n":             "b true\nline 2, column count: error: has a quote (\") in the middle",
		"name,count,\na,1,b\"c\n":               "true\nline 2, column no 3: error: has a quote (\") in the middle",
		"name\na,b\"c\n":                        "true\nline 1, column count: note: is not there\nline 2, column no 2: error: has a quote (\") in the middle",
		"name,count\na,1\nb,1\nc,1\n":           "a b c true",
		"name,count\na,1\nb,x\nc,1\nd,1\ne,1\n": "a c false\nline 3, column count: error: \"x\" is no number\nline 5: error: has more than 3 rows; this one and those after it were not read",
		"name,count" + strings.Repeat(",", 58) + "\na,1" + strings.Repeat(",", 58): "a true",
		"name,count" + strings.Repeat(",", 59) + "\n":                              "false\nline 1: error: has more than 60 columns",
	} {
		if got := read(items(), text); got != want {
			t.Errorf("%q:\n got %s\nwant %s", text, got, want)
		}
	}
}

// What a format may ask for besides.
func TestFormatAsks(t *testing.T) {
	ragged := items()
	ragged.Ragged, ragged.Empty = true, "holds nothing"
	blank := items()
	blank.Columns[0].Blank, blank.Base = true, func(heading string) string { return strings.TrimSuffix(heading, "_eur") }
	judging := items()
	judging.Headed = func(header []string) []Finding {
		return []Finding{{Column: header[1], Severity: Warning, Problem: message.New("is second")}}
	}
	judging.Check = func(r *Row[item]) {
		if r.Refused("count") == r.Sound() {
			t.Errorf("%s: refused and sound", r.Value.name)
		}
		if r.Sound() {
			r.Report(Finding{Severity: Note, Problem: message.New("is sound")})
		}
	}
	for _, c := range []struct {
		format     *Format[item]
		text, want string
	}{
		{ragged, "name,count\na\n", "a true"},
		{ragged, "name,count\na,1,x\n", "true\nline 2: error: has 3 cells where the header has 2"},
		{ragged, "name,count\n", "true\nfile: error: holds nothing"},
		{ragged, "", "false\nfile: error: has no header row"},
		{items(), "name,count\n", "true"},
		{blank, "name,count_eur\n,1\n", " true"},
		{judging, "name,count\na,1\nb,x\n", "a true\nline 1, column count: warning: is second\nline 2: note: is sound\nline 3, column count: error: \"x\" is no number"},
	} {
		if got := read(c.format, c.text); got != c.want {
			t.Errorf("%q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
	if found := items().Read(strings.NewReader("name,count\na,x\n")).Findings; found[0].Row != "a" || found[0].Accepted.String() != "a plain number" {
		t.Errorf("%+v", found[0])
	}
	if found := items().Read(strings.NewReader(strings.Repeat("x", 1<<20+1))).Findings; !strings.Contains(found[0].String(), "larger than 1 MiB; accepted: at most 3 rows") {
		t.Errorf("%+v", found)
	}
	var plain, titled bytes.Buffer
	rows := []item{{"a", "1", "so"}, {"b,c", "", ""}}
	if err := items().Write(&plain, nil, rows); err != nil || plain.String() != "name,count,remark\na,1,so\n\"b,c\",,\n" {
		t.Errorf("%v, %s", err, plain.String())
	}
	if err := items().Write(&titled, func(c *Column[item]) string { return "the " + c.Name }, nil); err != nil || titled.String() != "the name,the count,the remark\n" {
		t.Errorf("%v, %s", err, titled.String())
	}
}

// The same from the sheet of a workbook: findings name cells, what cannot be read is
// said, comments are passed over, and blank cells at the end are missing in the file.
func TestFormatReadsAWorkbook(t *testing.T) {
	cell := func(place, text string) string {
		return `<c r="` + place + `" t="inlineStr"><is><t>` + text + `</t></is></c>`
	}
	head := `<row r="2">` + cell("A2", "name") + cell("B2", "count") + `</row>`
	for rows, want := range map[string]string{
		`<row r="1">` + cell("A1", "# said") + `</row>` + head + `<row r="3">` + cell("A3", "a") + `</row><row r="5">` + cell("A5", "b") + `<c r="B5"><v>2</v></c></row>`: "a b true",
		head + `<row r="3">` + cell("A3", "a") + cell("B3", "x") + `</row>`:                                                                                               "true\ncell B3, column count: error: \"x\" is no number",
		head + `<row r="3">` + cell("A3", "a") + `<c r="B3"><f>1+1</f><v>2</v></c></row>`:                                                                                 "true\ncell B3, column count: error: holds a formula; put its value there",
		head + `<row r="3"><c r="B3"><f>1</f></c></row>`:                                                                                                                  "true\ncell A3, column name: error: is blank\ncell B3, column count: error: holds a formula; put its value there",
		head + `<row r="3">` + cell("A3", "a") + `</row><row r="4">` + cell("A4", "b") + cell("B4", "2") + cell("C4", "x") + `</row>`:                                     "a true\nline 4: error: has 3 cells where the header has 2",
		`<row r="1">` + cell("A1", "count") + `</row>`:                                                                                                                    "false\ncell A1, column name: error: is missing, so no row can be used",
		head + strings.Repeat(`<row>`+cell("", "a")+`</row>`, 4):                                                                                                          "a a a false\nline 6: error: has more than 3 rows; this one and those after it were not read",
	} {
		want = strings.ReplaceAll(want, "cell A1, column name", "line 1, column name") // a column that is not there has no cell
		if got := read(items(), string(bookOf(t, rows))); got != want {
			t.Errorf("%s:\n got %s\nwant %s", rows, got, want)
		}
	}
	if got := read(items(), "PK\x03\x04"); got != "false\nfile: error: is damaged: it cannot be unpacked" {
		t.Error(got)
	}
}
