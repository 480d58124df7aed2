package catalog

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
)

// harmful reports a character that could steer a terminal or turn a line round.
func harmful(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) }

// FuzzRead: whatever a book holds and whatever is said by it, what is said is
// fit for a terminal if the text was, and keeps what is not ours to word.
func FuzzRead(f *testing.F) {
	f.Add("english,words\n"+few, "Rated for 12 mm; the work needs 10 mm.", "needs 12 mm and a \"clean cut\"")
	f.Add("english,words\n\"{1}, {2} and {3}\",\"{3}, {1} {2} {2}\"\n@unit mm,Milli\n@decimal mark,space\n", "a, b, c and d and 1.5 mm, 12,000 mm", "1.5")
	f.Add("words,english\nzurück|z {1},@word back\nkeins,@answer none\n", "(back [none]): x; y – z", "z 4")
	f.Add("english,words\n{1},x\n{2} a,b\n", "Stop. Go on. {1}", "\xff")
	f.Fuzz(func(t *testing.T, csv, text, kept string) {
		b, findings := Read(strings.NewReader(csv), "fuzz")
		for _, found := range findings {
			if !tabular.Flaw(found.Column).IsEmpty() || strings.ContainsFunc(found.Problem.String()+found.Accepted.String(), harmful) {
				t.Errorf("not fit for a terminal: %q", found)
			}
		}
		if len(text) > 300 || len(kept) > 100 || !utf8.ValidString(text) || !utf8.ValidString(kept) || strings.ContainsFunc(text+kept, harmful) {
			return // no such text comes through the gate
		}
		said := b.Print(message.New("needs {1}, gives {2}", message.Name(kept), message.Figure(text)))
		if strings.ContainsFunc(said, harmful) || !utf8.ValidString(said) {
			t.Errorf("%q is said as %q", text, said)
		}
		if !strings.Contains(said, kept) {
			t.Errorf("%q is lost in %q", kept, said)
		}
		for _, heard := range []string{b.Word(text), b.Answer(text)} {
			if strings.ContainsFunc(heard, harmful) {
				t.Errorf("%q is heard as %q", text, heard)
			}
		}
	})
}
