package pdf

import (
	"bytes"
	"strings"
	"testing"
)

// Codes of Windows code page 1252: é is 233, € 128, … 133, • 149 (the code page
// as its maker published it, from memory); the signs beside it are our own.
func TestCodesOfTexts(t *testing.T) {
	for text, want := range map[string]string{
		"12 mm": "12 mm", "caf\u00e9": "caf\xe9", "€ 5…": "\x80 5\x85", "•\u00a0µg": "\x95\xa0\xb5g", "−3 ≤ √9 ≥ 2 ≈ 2": "\x813 \x8f \x8d9 \x90 2 \x9d 2", "": "",
	} {
		got, ok := codes(text)
		if !ok || got != want {
			t.Errorf("%q: %q, %v, want %q", text, got, ok, want)
		}
		back := ""
		for i := range len(got) {
			back += string(runeAt(got[i]))
		}
		if back != text {
			t.Errorf("%q comes back as %q", text, back)
		}
	}
	for _, text := range []string{"Łódź", "Слесарная", "a ⅔ b"} {
		if got, ok := codes(text); ok {
			t.Errorf("%q has codes: %q", text, got)
		}
	}
}

// A line with a character beyond the cut fonts is drawn with the whole font, as
// UTF-16; a page without one has no such font in its file.
func TestWholeFontOnlyWhereNeeded(t *testing.T) {
	b := sample()
	plain, err := render(b, A4, false)
	if err != nil || bytes.Contains(plain, []byte("/Type0")) {
		t.Errorf("an ordinary page has a whole font in it (%v)", err)
	}
	b.Who[0].Value = "Łódź"
	other, err := render(b, A4, false)
	if err != nil || bytes.Count(other, []byte("/Subtype /Type0")) != 1 || !bytes.Contains(other, utf16be("Łódź")) {
		t.Errorf("the line is not drawn with one whole font (%v)", err)
	}
}

// An independent reader finds the words of both kinds of font, and the signs.
func TestIndependentReaderFindsEveryScript(t *testing.T) {
	b := sample()
	b.Who[0].Value, b.Need, b.Headline = "Слесарная Łódź", "You cut 3 mm ≥ 2 mm ≤ 5 mm, −3 °C, √9 ≈ 3, €5, “so”…", "Café Größe"
	said := strings.ReplaceAll(outside(t, b, A4, "pdftotext", "-layout", "FILE", "-"), "\u00a0", " ")
	for _, want := range []string{"Слесарная Łódź", "3 mm ≥ 2 mm ≤ 5 mm, −3 °C, √9 ≈ 3, €5, “so”…", "Café Größe"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in\n%s", want, said)
		}
	}
}
