package message

import (
	"errors"
	"strings"
	"testing"
)

// A packed message says the same after it is unpacked, in every language; what is
// not one, or is cut short, is a text as it stands.
func TestPack(t *testing.T) {
	german := NewCatalog(Source{Rows: []Row{{"needs {1}, {2} gives {3}", "braucht {1}, {2} gibt {3}"}, {"{1} more", "noch {1}"}, {"one more", "noch eins"}, {"thickness", "Dicke"}}})
	for _, m := range []Message{
		{}, Text("as typed; 5:"), New("needs {1}, {2} gives {3}", Figure("12.7 mm"), Name("Demo 45"), ID("thickness")),
		Counted(1, "one more", "{1} more"), Counted(3, "one more", "{1} more").Sentence(),
		Join("; ", ID("thickness").Message(), Message{}, And(Text("a"), Text("b"), New("{1} more", errors.New("x")))).Capital(),
	} {
		text := m.Pack()
		back := Unpack(text)
		if back.String() != m.String() || german.Print(back) != german.Print(m) || strings.Contains(text, "\n") {
			t.Errorf("%q came back as %q", m, back)
		}
		for i := 1; i < len(text); i++ {
			if got := Unpack(text[:i]).String(); got != text[:i] {
				t.Errorf("%q, cut short, says %q", text[:i], got)
			}
		}
	}
	if got := Unpack("not asked").String(); got != "not asked" {
		t.Error(got)
	}
}
