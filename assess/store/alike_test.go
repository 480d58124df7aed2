package store

import "testing"

func TestAlike(t *testing.T) {
	for _, row := range [][]string{
		{"page.pdf", "Page.PDF", "page.pdf ", "page.pdf.", "ｐage.pdf"},
		{"café.pdf", "cafe\u0301.pdf", "CAFÉ.pdf"},
		{"cafe.pdf"},
		{"\u0441af\u00e9.pdf"}, // Cyrillic es: no system takes it for another
	} {
		for _, name := range row {
			if Alike(name) != Alike(row[0]) {
				t.Errorf("%q and %q are told apart", name, row[0])
			}
		}
	}
	if Alike("café.pdf") == Alike("cafe.pdf") || Alike("café.pdf") == Alike("\u0441af\u00e9.pdf") {
		t.Error("names of different letters are taken for one")
	}
}
