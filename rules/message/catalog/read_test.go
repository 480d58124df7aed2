package catalog

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
)

// bookOf is a book with a header and some lines.
func bookOf(t *testing.T, rows string) *message.Catalog {
	t.Helper()
	b, findings := Read(strings.NewReader("english,words\n"+rows), "test")
	for _, f := range findings {
		t.Fatal(f)
	}
	return b
}

const few = `@decimal mark,","
@thousands mark,.
@unit in,Zoll
mild steel,Baustahl
stainless,nichtrostender Stahl
clean cut,sauberer Schnitt
needs {1},braucht {1}
gives {1},kann {1}
"{1}, most days",meist {1}
Rated for {1}; the work needs {2}.,"Die Arbeit braucht {2}, ausgelegt ist es für {1}."
The manual decides.,Die Anleitung entscheidet.
{1} and {2},{1} und {2}
thickest regular clean cut,dickster regelmäßiger sauberer Schnitt
Range: {1}.,Sortiment: {1}.
`

// Worked by hand from the rows above.
func TestPrint(t *testing.T) {
	b := bookOf(t, few)
	figure := func(s string) message.Message { return message.Number(s) }
	for _, c := range []struct {
		m     message.Message
		words string
	}{
		{message.New("mild steel"), "Baustahl"},
		{message.New("Mild steel."), "Baustahl."},
		{message.New("Clean cut"), "Sauberer Schnitt"},
		{message.New("The manual decides."), "Die Anleitung entscheidet."},
		{figure("12.5 mm"), "12,5 mm"},
		{figure("1,950"), "1.950"},
		{figure("1,950.5 kg"), "1.950,5 kg"},
		{figure("3/8 in"), "3/8 Zoll"},
		{figure("EUR 4.98"), "EUR 4,98"},
		{message.And(message.New("mild steel"), message.New("stainless")), "Baustahl und nichtrostender Stahl"},
		{message.New("{1}, most days", message.New("{1} {2}", message.Figure("6 mm"), message.ID("mild steel"))), "meist 6 mm Baustahl"},
		{message.New("Rated for {1}; the work needs {2}.", message.Figure("12.5 mm"), message.Figure("10 mm")), "Die Arbeit braucht 10 mm, ausgelegt ist es für 12,5 mm."},
		{message.New("needs {1}", message.Name("mild steel; needs 10.5 mm")), "braucht mild steel; needs 10.5 mm"},
		{message.New("nobody said {1}", message.ID("mild steel")), "nobody said Baustahl"},
	} {
		if got := b.Print(c.m); got != c.words {
			t.Errorf("got %q, want %q", got, c.words)
		}
	}
}

// What is not ours to word comes out as it went in, whatever it says, in a
// message with words and in one without.
func TestNamesAreKept(t *testing.T) {
	b := bookOf(t, few)
	pieces := []string{"mild steel", "; needs 10.5 mm", ". The manual decides. ", " and ", "{1}", `"`, "(", "]", ", most days", "é", " ", "1,950", "%", "%d", "%[2]v", "${"}
	rapid.Check(t, func(t *rapid.T) {
		name := strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 1, 6).Draw(t, "name"), "")
		for _, c := range []*message.Catalog{nil, b} {
			for _, id := range []message.ID{"needs {1}", "{1} and {2}", "nobody says {1}"} {
				args := []any{message.Name(name), message.Name("x")}[:len(message.Holes(string(id)))]
				plain := append([]any{message.Name("@@")}, args[1:]...)
				if got, want := c.Print(message.New(id, args...)), strings.Replace(c.Print(message.New(id, plain...)), "@@", name, 1); got != want {
					t.Fatalf("%q in %q: %q, want %q", name, id, got, want)
				}
			}
		}
	})
}

// A message printed without a row is told.
func TestWatched(t *testing.T) {
	var lacking []message.ID
	c := Watched("de", func(id message.ID) { lacking = append(lacking, id) })
	c.Print(message.Join("; ", message.New("mild steel"), message.New("no row has {1}", message.Figure("1"))))
	if len(lacking) != 1 || lacking[0] != "no row has {1}" {
		t.Error(lacking)
	}
}

func TestReadFinds(t *testing.T) {
	for _, c := range []struct{ rows, problem string }{
		{"a {1},b", "holes"},
		{"a,b {1}", "holes"},
		{"a {1} {2},b {2} {1}", ""},
		{"a {1},b {2}", "holes"},
		{"a,b\na,c", "line 2 already"},
		{"a", "has 1 cells where the header has 2"},
		{"a,b,c", "3 cells"},
		{"a,\"b", "quote"},
		{"a,b\x1b[31m", "invisible"},
		{"a,b\u202e", "invisible"},
		{"a," + strings.Repeat("x", 301), "longer than 300"},
		{"{1},x {1}", "nothing but holes"},
		{"Fire watch 30 min.,-", "says nothing"}, // a caution is not to be blanked
		{"@colour,red", "not a row"},
		{"@decimal mark,;", "not a mark"},
		{"@word go {1},gehe", "other holes"},
		{"a,", ""},
		{strings.Repeat("a,\n", maxRows+1), "more than"},
	} {
		_, findings := Read(strings.NewReader("english,words\n"+c.rows), "test")
		got := ""
		for _, f := range findings {
			if f.Severity == tabular.Error {
				got += f.String()
			}
		}
		if (c.problem == "") != (got == "") || !strings.Contains(got, c.problem) {
			t.Errorf("%.40q: %q, want %q", c.rows, got, c.problem)
		}
	}
	for text, faults := range map[string]int{"": 1, "a,b\nc,d": 2, "\xff\xfe": 1} { // of a,b both columns are missing
		if _, findings := Read(strings.NewReader(text), "test"); tabular.Count(findings, tabular.Error) != faults {
			t.Errorf("%q: %v", text, findings)
		}
	}
}

// What may be typed, from the rows below by hand.
func TestTyped(t *testing.T) {
	b := bookOf(t, "@word back,zurück|z\n@word go {1},gehe zu {1}|gehe {1}\n@answer none,keine|kein\n@answer {1} a day,{1} am Tag\n@answer about {1},etwa {1}\n")
	for typed, ours := range map[string]string{
		"zurück": "back", " Zurück ": "back", "z": "back", "gehe 4": "go 4", "Gehe zu 4": "go 4", "back": "back", "Zurückhaltung": "Zurückhaltung",
	} {
		if got := b.Word(typed); got != ours {
			t.Errorf("%q: %q", typed, got)
		}
	}
	for typed, ours := range map[string]string{"Keine": "none", "40 m am Tag": "40 m a day", "etwa 40 m am Tag": "about 40 m a day", "12,5": "12,5", "am Tag": "am Tag", " am Tag": " am Tag"} {
		if got := b.Answer(typed); got != ours {
			t.Errorf("%q: %q", typed, got)
		}
	}
}

// Every built-in catalog can be read without a finding, and says what it is.
func TestBuiltIn(t *testing.T) {
	for _, tag := range Languages() {
		if c, findings := Read(strings.NewReader(text(tag)), tag); len(findings) > 0 || c.Language == "" || len(c.IDs()) == 0 {
			t.Errorf("%s: %v", tag, findings)
		}
	}
	if For("de") == nil || For("de") != For("de") || For("xx") != nil {
		t.Error("a catalog is read once, and none is there for a language without a file")
	}
}

// A caution says the same in every language: every figure in it is in the words
// too, and a language has the words for all of them or for none.
func TestFiguresOfCautionsAreKept(t *testing.T) {
	number := regexp.MustCompile(`[0-9]+`)
	for _, tag := range Languages() {
		c := For(tag)
		for _, id := range c.IDs() {
			words := c.Print(message.New(message.ID(id)))
			if want, got := number.FindAllString(id, -1), number.FindAllString(words, -1); strings.HasSuffix(id, ".") && len(message.Holes(id)) == 0 && len(want) != len(got) {
				t.Errorf("%s: %q has figures %v, %q has %v", tag, id, want, words, got)
			}
		}
	}
}

// No catalog words a message that the program no longer says.
func TestNoStaleRows(t *testing.T) {
	for _, tag := range Languages() {
		for _, id := range For(tag).IDs() {
			if !For(complete).Has(message.ID(id)) {
				t.Errorf("%s: nothing says %q any more", tag, id)
			}
		}
	}
}

// A message without Spanish words is English, and its arguments are Spanish.
func TestUnfinishedLanguage(t *testing.T) {
	m := message.New("nobody words {1} in this", message.ID("mild steel"))
	if got, want := For("es").Print(m), "nobody words acero al carbono in this"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
