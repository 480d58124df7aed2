package catalog

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/csvfile"
	"cutbrief/rules/message"
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
func TestSay(t *testing.T) {
	b := bookOf(t, few)
	for _, c := range []struct{ english, words string }{
		{"", ""},
		{"mild steel", "Baustahl"},
		{"Mild steel.", "Baustahl."},
		{"Clean cut", "Sauberer Schnitt"},
		{"12.5 mm", "12,5 mm"},
		{"1,950", "1.950"},
		{"1,950.5 kg", "1.950,5 kg"},
		{"3/8 in", "3/8 Zoll"},
		{"6 mm mild steel", "6 mm Baustahl"},
		{"needs 12.7 mm, gives 16 mm", "braucht 12,7 mm, kann 16 mm"},
		{"mild steel and stainless", "Baustahl und nichtrostender Stahl"},
		{"6 mm mild steel, most days", "meist 6 mm Baustahl"},
		{"clean cut, mild steel: needs 2 mm [clean cut]", "sauberer Schnitt, Baustahl: braucht 2 mm [sauberer Schnitt]"},
		{"Rated for 12.5 mm; the work needs 10 mm.", "Die Arbeit braucht 10 mm, ausgelegt ist es für 12,5 mm."},
		{"Rated for 12 mm; the work needs 10 mm (thickest regular clean cut, mild steel).",
			"Die Arbeit braucht 10 mm (dickster regelmäßiger sauberer Schnitt, Baustahl), ausgelegt ist es für 12 mm."},
		{"The manual decides. Clean cut.", "Die Anleitung entscheidet. Sauberer Schnitt."},
		{"needs " + message.Keep("mild steel; needs 10.5 mm"), "braucht mild steel; needs 10.5 mm"},
		{"Range: " + message.Keep("A. The manual decides.") + ". The manual decides.", "Sortiment: A. The manual decides.. Die Anleitung entscheidet."},
		{`clean cut: "mild steel" needs 2 mm`, `sauberer Schnitt: "mild steel" braucht 2 mm`},
		{`clean cut: "2\" mm, mild steel, x\"" needs 2 mm`, `sauberer Schnitt: "2\" mm, mild steel, x\"" braucht 2 mm`}, // quoted as strconv does
		{"nobody said this", "nobody said this"},
		{"mild steel\nstainless", "Baustahl\nnichtrostender Stahl"},
	} {
		if got := b.Say(c.english); got != c.words {
			t.Errorf("%q\n got %q\nwant %q", c.english, got, c.words)
		}
	}
}

func TestToldSaysWhatIsMissing(t *testing.T) {
	b := bookOf(t, few)
	for english, missing := range map[string]string{
		"needs 2 mm":           "",
		"needs a rest":         "a rest",
		"mild steel and brass": "brass",
		message.Keep("brass") + ", " + "mild steel": "",
	} {
		if _, got := b.Told(english); strings.Join(got, "|") != missing {
			t.Errorf("%q: %q, want %q", english, got, missing)
		}
	}
}

// A book without rows, and none at all, say everything as it is.
func TestNoBook(t *testing.T) {
	var none *message.Catalog
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[ -~é]*`).Draw(t, "text")
		if got := none.Say(text + message.Keep(text)); got != text+text {
			t.Fatalf("%q", got)
		}
	})
}

// What is kept comes out as it went in, wherever it stands and whatever it
// says.
func TestKeptIsKept(t *testing.T) {
	b := bookOf(t, few)
	frames := []string{"needs %", "% and stainless", "mild steel, %", "Range: %.", "Rated for %; the work needs 10 mm.", "clean cut: % – needs 2 mm", "6 mm %", "(%)"}
	pieces := []string{"mild steel", "; needs 10.5 mm", ". The manual decides. ", " and ", "{1}", `"`, "(", "]", ", most days", "é", " ", "1,950"}
	rapid.Check(t, func(t *rapid.T) {
		kept := strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 1, 6).Draw(t, "kept"), "")
		frame := rapid.SampledFrom(frames).Draw(t, "frame")
		if got := b.Say(strings.Replace(frame, "%", message.Keep(kept), 1)); !strings.Contains(got, kept) {
			t.Fatalf("%q in %q: %q", kept, frame, got)
		}
		plain := b.Say(strings.Replace(frame, "%", message.Keep("x"), 1))
		if got := b.Say(strings.Replace(frame, "%", message.Keep(kept), 1)); got != strings.Replace(plain, "x", kept, 1) {
			t.Fatalf("%q in %q changes the words around it: %q against %q", kept, frame, got, plain)
		}
	})
}

// No text takes long or does harm, and the marks never come out.
func TestAnyText(t *testing.T) {
	b := bookOf(t, few)
	words := []string{"needs", "and", "mild steel", ",", ";", ".", "(", ")", "[", `"`, "12.5", "mm", "A", "\x02", "\x03", "{1}", "most days", ":", "–", " "}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(words), 0, 60).Draw(t, "words"), " ")
		if got := b.Say(text); strings.ContainsAny(got, "\x02\x03") {
			t.Fatalf("%q", got)
		}
	})
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
			if f.Severity == csvfile.Error {
				got += f.String()
			}
		}
		if (c.problem == "") != (got == "") || !strings.Contains(got, c.problem) {
			t.Errorf("%.40q: %q, want %q", c.rows, got, c.problem)
		}
	}
	for text, faults := range map[string]int{"": 1, "a,b\nc,d": 2, "\xff\xfe": 1} { // of a,b both columns are missing
		if _, findings := Read(strings.NewReader(text), "test"); csvfile.Count(findings, csvfile.Error) != faults {
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

// Text that is no UTF-8 does not come through the gate; if it did, nothing
// would break.
func TestFiguresInBrokenText(t *testing.T) {
	for _, text := range []string{"1.\xff", "3\xff mm", "12,\xe2\x82"} {
		if said := For("de").Say(text); said == "" {
			t.Errorf("%q is lost", text)
		}
	}
}

// Every built-in catalog can be read without a finding, and says what it is.
func TestBuiltIn(t *testing.T) {
	for _, tag := range Languages() {
		if c, findings := Read(strings.NewReader(text(tag)), tag); len(findings) > 0 || c.Language == "" || c.Rows() == 0 {
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
	if got, want := For("es").Say("it may trip in a long cut"), "it may trip in a long cut"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
