package system

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/tabular"
	"cutbrief/rules/unit"
)

// header and good are a file whose only row is sound: invented for the test.
// U2 = 80 + 0.4·45 = 98 V, 4.41 kW; 200 V · 30 A = 6 kVA; 30·√0.5 = 21.2 A.
const header = "id,name,rated_mm,clean_max_mm,severance_mm,pierce_mm,rated_other_metals," +
	"output_min_a,output_max_a,duty,supplies,air_flow_l_min,air_pressure_bar,weight_kg,price_eur," +
	"holds_gaps,gouges,contact_tip,mechanised"

// good returns the sound row's cells with some replaced: "duty", "45 A at 50 %".
func good(replace ...string) []string {
	cells := []string{"shop-45", "Shop 45", "12", "16", "22", "8", "stainless 10 mm",
		"20", "45", "45 A at 50 %; 32 A at 100 %", "1 phase 200-240 V max 30 A eff 22 A", "140", "5", "14", "1950",
		"yes", "no", "no", "no"}
	for i, name := range strings.Split(header, ",") {
		for k := 0; k < len(replace); k += 2 {
			if replace[k] == name {
				cells[i] = replace[k+1]
			}
		}
	}
	return cells
}

// fileOf writes rows under the header as a file: the header is line 1.
func fileOf(rows ...[]string) string {
	var b strings.Builder
	b.WriteString(header + "\n")
	w := csv.NewWriter(&b)
	_ = w.WriteAll(rows)
	return b.String()
}

func read(text string) (Range, []Finding) { return Read(strings.NewReader(text), "test.csv") }

// said lists findings as "line column severity" for comparison.
func said(findings []Finding) []string {
	var all []string
	for _, f := range findings {
		all = append(all, fmt.Sprint(f.Line, " ", f.Column, " ", f.Severity))
	}
	return all
}

func same(t *testing.T, findings []Finding, want ...string) {
	t.Helper()
	if got := said(findings); strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("found %q, want %q", got, want)
		for _, f := range findings {
			t.Log(f)
		}
	}
}

func TestReadsEveryColumn(t *testing.T) {
	r, findings := read(fileOf(good("gouges", "yes", "supplies", "1 phase 230 V max 30 A eff 22 A; 3 phase 380–415 V max 9 A eff 6.5 A")))
	same(t, findings)
	s := r.Systems[0]
	pierce, _ := s.Pierce.Get()
	price, _ := s.Price.Get()
	got := fmt.Sprint(s.ID, s.Name, s.Rated, s.CleanMax, s.Severance, pierce, s.PerMetal[metal.Stainless], s.OutputMin, s.OutputMax,
		s.Duty, s.Supplies, s.AirFlow, s.AirPressure, s.Weight, price, s.HoldsGaps, s.Gouges, s.ContactTip, s.Mechanised)
	want := fmt.Sprint("shop-45", "Shop 45", 12, 16, 22, 8, 10, 20, 45,
		[]DutyPoint{{45, 50}, {32, 100}}, []Supply{{1, 230, 230, 30, 22}, {3, 380, 415, 9, 6.5}}, 140, 5, 14, 1950, true, true, false, false)
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if r.Name != "test.csv" || r.Currency != "EUR" || r.Invented || r.LineOf("shop-45") != 2 {
		t.Errorf("range %q, %q, invented %v, line %d", r.Name, r.Currency, r.Invented, r.LineOf("shop-45"))
	}
}

// 1/2 in is 12.7 mm and 5/8 in 15.875 mm exactly (25.4 mm to the inch, NIST
// SP 811); 150 psi is 10.34 bar, which is past the usual 9 bar.
func TestCellsMayCarryTheirUnit(t *testing.T) {
	r, findings := read(fileOf(good("rated_mm", "1/2 in", "clean_max_mm", `5/8"`, "air_pressure_bar", "150 psi")))
	same(t, findings, "2 air_pressure_bar warning")
	if s := r.Systems[0]; s.Rated != 12.7 || s.CleanMax != 15.875 {
		t.Errorf("rated %v, clean %v", s.Rated, s.CleanMax)
	}
}

// Blank is not known: never zero, and said where something is taken instead.
func TestBlankIsNotKnown(t *testing.T) {
	r, findings := read(fileOf(good("pierce_mm", "", "price_eur", "", "rated_other_metals", "", "holds_gaps", "")))
	same(t, findings, "2 pierce_mm note", "2 holds_gaps note")
	s := r.Systems[0]
	if s.Pierce.IsKnown() || s.Price.IsKnown() || len(s.PerMetal) != 0 || s.HoldsGaps {
		t.Errorf("%+v", s)
	}
}

// Each case: what is replaced in the sound row, and the findings by hand.
func TestFindings(t *testing.T) {
	type cells = []string
	for name, c := range map[string]struct {
		replace cells
		want    cells
	}{
		"id in capitals":         {cells{"id", "Shop-45"}, cells{"2 id error"}},
		"id blank":               {cells{"id", ""}, cells{"2 id error"}},
		"id too long":            {cells{"id", strings.Repeat("a", 41)}, cells{"2 id error"}},
		"name is a formula":      {cells{"name", "=1+1"}, cells{"2 name error"}},
		"name too long":          {cells{"name", strings.Repeat("a", 61)}, cells{"2 name error"}},
		"escape in name":         {cells{"name", "Shop\x1b[31m"}, cells{"2 name error"}},
		"bidi override":          {cells{"name", "Shop \u202e45"}, cells{"2 name error"}},
		"not UTF-8":              {cells{"name", "Shop \xff"}, cells{"2 name error"}},
		"cell too long":          {cells{"rated_other_metals", strings.Repeat("x", 301)}, cells{"2 rated_other_metals error"}},
		"wrong unit":             {cells{"rated_mm", "12 kg"}, cells{"2 rated_mm error"}},
		"zero thickness":         {cells{"rated_mm", "0"}, cells{"2 rated_mm error"}},
		"negative":               {cells{"weight_kg", "-14"}, cells{"2 weight_kg error"}},
		"blank thickness":        {cells{"rated_mm", ""}, cells{"2 rated_mm error"}},
		"beyond belief":          {cells{"severance_mm", "2200"}, cells{"2 severance_mm error"}},
		"rated over clean":       {cells{"clean_max_mm", "11.9"}, cells{"2 clean_max_mm error"}},
		"rated is clean":         {cells{"clean_max_mm", "12"}, nil},
		"clean over severance":   {cells{"severance_mm", "15.9"}, cells{"2 severance_mm error"}},
		"severance too far":      {cells{"severance_mm", "31"}, cells{"2 severance_mm warning"}}, // 2.58 times
		"severance too near":     {cells{"clean_max_mm", "12.5", "severance_mm", "14"}, cells{"2 severance_mm warning"}},
		"pierce over clean":      {cells{"pierce_mm", "17"}, cells{"2 pierce_mm warning"}},
		"pierce over sever":      {cells{"pierce_mm", "23"}, cells{"2 pierce_mm error"}},
		"metal unknown":          {cells{"rated_other_metals", "wood 10 mm"}, cells{"2 rated_other_metals error"}},
		"metal mild steel":       {cells{"rated_other_metals", "mild steel 10 mm"}, cells{"2 rated_other_metals error"}},
		"metal twice":            {cells{"rated_other_metals", "copper 5 mm; brass 6 mm"}, cells{"2 rated_other_metals error"}},
		"metal alone":            {cells{"rated_other_metals", "copper"}, cells{"2 rated_other_metals error"}},
		"metal too good":         {cells{"rated_other_metals", "aluminium 14 mm"}, cells{"2 rated_other_metals warning"}},
		"output backwards":       {cells{"output_min_a", "45", "duty", "45 A at 50 %"}, cells{"2 output_max_a error"}},
		"duty above output":      {cells{"duty", "46 A at 50 %"}, cells{"2 duty error"}},
		"duty below output":      {cells{"duty", "45 A at 50 %; 19 A at 100 %"}, cells{"2 duty error", "2 duty warning"}}, // I²X 36100 : 101250
		"duty not monotone":      {cells{"duty", "45 A at 50 %; 32 A at 40 %"}, cells{"2 duty error"}},
		"duty twice":             {cells{"duty", "45 A at 50 %; 45 A at 60 %"}, cells{"2 duty error"}},
		"duty over 100 %":        {cells{"duty", "45 A at 101 %"}, cells{"2 duty error"}},
		"duty without at":        {cells{"duty", "45 A 50 %"}, cells{"2 duty error"}},
		"duty blank":             {cells{"duty", ""}, cells{"2 duty error"}},
		"duty empty":             {cells{"duty", ";"}, cells{"2 duty error"}},
		"duty in any order":      {cells{"duty", "32 A at 100 %; 45 A at 50 %"}, nil},
		"duty not at full":       {cells{"duty", "32 A at 100 %"}, cells{"2 duty warning", "2 supplies warning"}}, // eff 22 A of 30 A at 100 %
		"duty inconsistent":      {cells{"duty", "45 A at 50 %; 40 A at 100 %"}, cells{"2 duty warning"}},         // 160000 : 101250
		"supply phases":          {cells{"supplies", "2 phase 200-240 V max 30 A eff 22 A"}, cells{"2 supplies error"}},
		"supply without max":     {cells{"supplies", "1 phase 200-240 V eff 22 A"}, cells{"2 supplies error"}},
		"supply without eff":     {cells{"supplies", "1 phase 200-240 V max 30 A"}, cells{"2 supplies error"}},
		"supply backwards":       {cells{"supplies", "1 phase 240-200 V max 30 A eff 22 A"}, cells{"2 supplies error"}},
		"supply in kW":           {cells{"supplies", "1 phase 200-240 V max 6 kW eff 22 A"}, cells{"2 supplies error"}},
		"supply too high":        {cells{"supplies", "1 phase 2000 V max 30 A eff 22 A"}, cells{"2 supplies error"}},
		"supply eff over max":    {cells{"supplies", "1 phase 200-240 V max 30 A eff 31 A"}, cells{"2 supplies error"}},
		"supply eff low":         {cells{"supplies", "1 phase 200-240 V max 30 A eff 19 A"}, cells{"2 supplies warning"}}, // 21.2 A less a tenth
		"supply too weak":        {cells{"supplies", "1 phase 200-240 V max 22 A eff 16 A"}, cells{"2 supplies warning"}}, // 4.40 kVA for 4.41 kW
		"supply just enough":     {cells{"supplies", "1 phase 200-240 V max 22.1 A eff 16 A"}, nil},                       // 4.42 kVA
		"supply too strong":      {cells{"supplies", "1 phase 200-240 V max 56 A eff 40 A"}, cells{"2 supplies warning"}}, // 11.2 kVA, 2.54 times
		"supplies overlap":       {cells{"supplies", "1 phase 200-240 V max 30 A eff 22 A; 1 phase 230 V max 27 A eff 20 A"}, cells{"2 supplies warning"}},
		"flow odd":               {cells{"air_flow_l_min", "5"}, cells{"2 air_flow_l_min warning"}},
		"pressure in millibar":   {cells{"air_pressure_bar", "5000"}, cells{"2 air_pressure_bar error"}},
		"price zero":             {cells{"price_eur", "0"}, cells{"2 price_eur error"}},
		"price grouped":          {cells{"price_eur", "1.950"}, cells{"2 price_eur error"}},
		"price with words":       {cells{"price_eur", "ask"}, cells{"2 price_eur error"}},
		"flag with a word":       {cells{"gouges", "perhaps"}, cells{"2 gouges error"}},
		"a name at its longest":  {cells{"name", strings.Repeat("é", 60)}, nil},
		"a price at its highest": {cells{"price_eur", "1000000000"}, nil},
		"a price beyond belief":  {cells{"price_eur", "1000000000.01"}, cells{"2 price_eur error"}},
		"duty of nothing":        {cells{"duty", "45 A at 0 %"}, cells{"2 duty error"}},
		"duty not read":          {cells{"duty", "x at 100 %"}, cells{"2 duty error"}}, // and nothing of the supply
		"duty of full output":    {cells{"duty", "45 A at 100 %; 20 A at 100 %", "supplies", "1 phase 200-240 V max 30 A eff 30 A"}, nil},
		"duty alike":             {cells{"duty", "45 A at 50 %; 40 A at 50 %"}, nil},                                                                                                                // 80000 : 101250 = 0.79
		"duty off by a third":    {cells{"output_max_a", "21", "duty", "20 A at 75 %; 15 A at 100 %", "output_min_a", "10", "supplies", "1 phase 200 V max 10 A eff 9 A"}, cells{"2 duty warning"}}, // 22500 : 30000 = 0.75; not at full output
		"duty off by more":       {cells{"duty", "45 A at 50 %; 38 A at 100 %"}, cells{"2 duty warning"}},                                                                                           // 144400 : 101250 = 1.43
		"output in volts":        {cells{"output_min_a", "20 V"}, cells{"2 output_min_a error"}},
		"supplies meet":          {cells{"supplies", "1 phase 200-240 V max 30 A eff 22 A; 1 phase 240-260 V max 27 A eff 20 A"}, cells{"2 supplies warning"}},
		"supplies meet below":    {cells{"supplies", "1 phase 240-260 V max 27 A eff 20 A; 1 phase 200-240 V max 30 A eff 22 A"}, cells{"2 supplies warning"}},
		"piercing sheet":         {cells{"pierce_mm", "0.9"}, nil},
		"several at once": {cells{"rated_mm", "x", "duty", "y", "weight_kg", "z"},
			cells{"2 rated_mm error", "2 duty error", "2 weight_kg error"}},
	} {
		t.Run(name, func(t *testing.T) {
			r, findings := read(fileOf(good(c.replace...)))
			same(t, findings, c.want...)
			if kept := len(r.Systems) == 1; kept != (tabular.Count(findings, Error) == 0) {
				t.Errorf("%d systems kept", len(r.Systems))
			}
		})
	}
}

// A refusal tells what would be accepted.
func TestErrorsSayWhatIsAccepted(t *testing.T) {
	_, findings := read(fileOf(good("rated_mm", "12 kg", "duty", "45", "gouges", "perhaps")))
	for i, want := range []string{
		`line 2, column rated_mm: error: "12 kg" is not a thickness; accepted: a thickness such as 12, 12 mm or 1/2 in`,
		`line 2, column duty: error: "45" has no "at" between current and duty cycle; accepted: pairs such as 45 A at 50 %; 32 A at 100 %`,
		`line 2, column gouges: error: "perhaps" is neither yes nor no; accepted: yes, no or blank`,
	} {
		if got := findings[i].String(); got != want {
			t.Errorf("got  %s\nwant %s", got, want)
		}
	}
}

// A damaged row is refused alone: rows before and after it stay.
func TestDamagedRowsTakeNoOthersAlong(t *testing.T) {
	row := func(id string) string { return strings.Join(good("id", id, "name", id), ",") }
	r, findings := read(strings.Join([]string{
		"# a comment with an open \" quote",
		header,
		row("a"),
		`b,"open quote,12`,
		row("c"),
		`d,in "the" middle,12`,
		`e,"after" it,12`,
		"f,too,few",
		row("g") + ",,",
		row("h") + ",one too many",
		",,,,",
		`"# a comment, quoted by a spreadsheet",,,`,
		"",
		row("i"),
	}, "\r\n"))
	same(t, findings, "4 name error", "6 name error", "7 name error", "8  error", "10  error")
	var ids []string
	for _, s := range r.Systems {
		ids = append(ids, s.ID)
	}
	if got := strings.Join(ids, " "); got != "a c g i" {
		t.Errorf("kept %s, want a c g i", got)
	}
}

func TestDuplicates(t *testing.T) {
	_, findings := read(fileOf(good(), good("name", "Other"), good("id", "third", "name", "SHOP 45")))
	same(t, findings, "3 id error", "4 name warning")
	if !strings.Contains(findings[0].Problem.String(), "line 2") {
		t.Errorf("%s does not name the first line", findings[0])
	}
}

// An id of a refused row still counts: repairing it must not bring up a clash.
func TestDuplicateOfARefusedRow(t *testing.T) {
	_, findings := read(fileOf(good("rated_mm", "x"), good("name", "Other")))
	same(t, findings, "2 rated_mm error", "3 id error")
}

func TestHeader(t *testing.T) {
	row := strings.Join(good(), ",") + "\n"
	for name, c := range map[string]struct {
		text string
		want []string
		kept int
	}{
		"empty file":       {"", []string{"0  error"}, 0},
		"comments only":    {"# nothing\n\n", []string{"0  error"}, 0},
		"no rows":          {header + "\n", []string{"0  error"}, 0},
		"byte order mark":  {"\ufeff" + header + "\n" + row, nil, 1},
		"capitals, spaces": {strings.Replace(header, "rated_mm", " Rated mm", 1) + "\n" + row, nil, 1},
		"semicolons":       {strings.ReplaceAll(header, ",", ";") + "\n" + row, []string{"1  error"}, 0},
		"tabs":             {strings.ReplaceAll(header, ",", "\t") + "\n" + row, []string{"1  error"}, 0},
		"UTF-16":           {"\xff\xfei\x00d\x00", []string{"0  error"}, 0},
		"open quote":       {"id,\"name\n" + row, []string{"1  error"}, 0},
		"unknown column":   {header + ",colour\n" + strings.Join(good(), ",") + ",red\n", []string{"1 colour warning"}, 1},
		"nameless column":  {header + ",\n" + strings.Join(good(), ",") + ",red\n", nil, 1},
		"column twice":     {header + ",gouges\n" + strings.Join(good(), ",") + ",no\n", []string{"1 gouges error"}, 0},
		"escape in header": {header + ",\x1b[31m\n" + strings.Join(good(), ",") + ",no\n", []string{"1  error"}, 0},
		"required missing": {strings.Replace(header, "duty", "duties", 1) + "\n" + row, []string{"1 duties warning", "1 duty error"}, 0},
		"id missing":       {strings.Replace(header, "id", "ids", 1) + "\n" + row, []string{"1 ids warning", "1 id error"}, 0},
		"name missing":     {strings.Replace(header, "name", "named", 1) + "\n" + row, []string{"1 named warning", "1 name error"}, 0},
		"supplies missing": {strings.Replace(header, "supplies", "supply", 1) + "\n" + row, []string{"1 supply warning", "1 supplies error"}, 0},
		"a code alone":     {header + ",usd\n" + strings.Join(good(), ",") + ",9\n", []string{"1 usd warning"}, 1},
		"optional missing": {strings.Replace(header, "pierce_mm", "pierces", 1) + "\n" + row, []string{"1 pierces warning", "1 pierce_mm note"}, 1},
		"no currency":      {strings.Replace(header, "price_eur", "price", 1) + "\n" + row, []string{"1 price warning"}, 1},
		"other currency":   {strings.Replace(header, "price_eur", "Price USD", 1) + "\n" + row, nil, 1},
		"two prices":       {header + ",price_usd\n" + strings.Join(good(), ",") + ",9\n", []string{"1 price_usd error"}, 0},
		"too many columns": {header + strings.Repeat(",x", 42) + "\n" + row, []string{"1  error"}, 0},
	} {
		t.Run(name, func(t *testing.T) {
			r, findings := read(c.text)
			same(t, findings, c.want...)
			if len(r.Systems) != c.kept {
				t.Errorf("kept %d systems, want %d", len(r.Systems), c.kept)
			}
		})
	}
}

// With a broken header the rows are checked all the same.
func TestBrokenHeaderStillChecksRows(t *testing.T) {
	_, findings := read(strings.Replace(fileOf(good("gouges", "perhaps")), "weight_kg", "heft", 1))
	same(t, findings, "1 heft warning", "1 weight_kg error", "2 gouges error")
}

func TestInventedRowsMarkTheRange(t *testing.T) {
	text := header + ",invented\n" + strings.Join(good(), ",") + ",\n"
	if r, _ := read(text); r.Invented {
		t.Error("blank marks the range as invented")
	}
	if r, _ := read(strings.TrimSuffix(text, "\n") + "yes\n"); !r.Invented {
		t.Error("yes does not mark the range as invented")
	}
}

func TestTooManySystems(t *testing.T) {
	var rows [][]string
	for i := range 502 { // of 500
		rows = append(rows, good("id", fmt.Sprint("s-", i), "name", fmt.Sprint("S ", i)))
	}
	r, findings := read(fileOf(rows...))
	same(t, findings, "502  error") // the header is line 1
	if len(r.Systems) != 500 {
		t.Errorf("kept %d", len(r.Systems))
	}
}

// endless gives the same bytes for ever and counts what was taken.
type endless struct{ taken int }

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = "a,\n"[i%3]
	}
	e.taken += len(p)
	return len(p), nil
}

func TestLargeFileIsRefusedUnread(t *testing.T) {
	e := &endless{}
	_, findings := Read(e, "endless")
	same(t, findings, "0  error")
	if e.taken > MaxBytes+1 {
		t.Errorf("took %d bytes", e.taken)
	}
}

func TestReaderThatFails(t *testing.T) {
	_, findings := Read(io.MultiReader(strings.NewReader(header), iotest.ErrReader(errors.New("disk gone"))), "x")
	same(t, findings, "0  error")
	if !strings.Contains(findings[0].Problem.String(), "disk gone") {
		t.Error(findings[0])
	}
}

func TestMergePutsOutsideFindingsInPlace(t *testing.T) {
	r, findings := read(fileOf(good("air_flow_l_min", "5"), good("id", "b", "name", "B"), good("id", "c", "name", "C", "air_flow_l_min", "5")))
	outside := []Finding{{Row: "b", Column: "rated_mm", Severity: Warning, Problem: message.New("too good")}}
	same(t, r.Merge(findings, outside), "2 air_flow_l_min warning", "3 rated_mm warning", "4 air_flow_l_min warning")
	if outside[0].Line != 0 {
		t.Error("the caller's list was changed")
	}
	// A line that is given stays, and what is about no row has none.
	same(t, r.Merge([]Finding{{Row: "b", Line: 7, Severity: Note}, {Severity: Note}}), "0  note", "7  note")
}

func TestFind(t *testing.T) {
	r, _ := read(fileOf(good()))
	if s, ok := r.Find("shop-45"); !ok || s.Rated != unit.Millimetre(12) {
		t.Error("shop-45 not found")
	}
	if _, ok := r.Find("shop-46"); ok {
		t.Error("shop-46 found")
	}
}
