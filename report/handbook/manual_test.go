package handbook

import "testing"

// What man takes for a request, a macro or a command is shown as it stands:
// groff_man(7), from memory.
func TestRoff(t *testing.T) {
	for text, want := range map[string]string{
		"--plain":         `\-\-plain`,
		"a\n.json\n'b'":   "a\n\\&.json\n\\&'b'",
		`C:\visits`:       `C:\evisits`,
		"3/8 in, 9.5 mm.": "3/8 in, 9.5 mm.",
	} {
		if got := roff(text); got != want {
			t.Errorf("%q: got %q, want %q", text, got, want)
		}
	}
}
