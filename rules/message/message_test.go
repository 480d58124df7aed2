package message

import (
	"strings"
	"sync"
	"testing"
)

// polish has four plural forms (Unicode CLDR: one, few, many, other), and turns
// arguments round; the words are a dictionary's.
const polish = `english,words
@language,polski
@language tag,pl
@decimal mark,","
@thousands mark,space
"{1} system","{1} system"
"{1} systems","{1} systemu"
"@few {1} systems","{1} systemy"
"@many {1} systems","{1} systemów"
"{1} and {2}","{1} i {2}"
"needs {1}, gives {2}","daje {2}, trzeba {1}"
not known,nie wiadomo
`

func TestPrint(t *testing.T) {
	pl, findings := Read(strings.NewReader(polish), "polish")
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	systems := func(n int) Message { return Counted(n, "{1} system", "{1} systems") }
	for _, c := range []struct {
		m      Message
		en, pl string
	}{
		{Message{}, "", ""},
		{ID("not known").Message(), "not known", "nie wiadomo"},
		{ID("not known").Message().Sentence(), "Not known.", "Nie wiadomo."},
		{ID("Not known.").Message(), "Not known.", "Nie wiadomo."}, // a row serves for a capital and a full stop
		{New("needs {1}, gives {2}", Figure("12.5 mm"), Figure("9 mm")), "needs 12.5 mm, gives 9 mm", "daje 9 mm, trzeba 12,5 mm"},
		{New("needs {1}, gives {2}", Name("12.5 {2}%"), ID("not known")), "needs 12.5 {2}%, gives not known", "daje nie wiadomo, trzeba 12.5 {2}%"},
		{systems(1), "1 system", "1 system"},
		{systems(3), "3 systems", "3 systemy"},
		{systems(5), "5 systems", "5 systemów"},
		{systems(0), "0 systems", "0 systemów"},
		{And(), "", ""},
		{And(Text("a")), "a", "a"},
		{And(Text("a"), Message{}, Text("b"), systems(3)), "a, b and 3 systems", "a, b i 3 systemy"},
		{Join("; ", systems(1), Message{}, ID("not known").Message()).Sentence(), "1 system; not known.", "1 system; nie wiadomo."},
		{New("{1} ({2})", systems(5), Number("1,950")), "5 systems (1,950)", "5 systemów (1\u00a0950)"},
		{Text("100 % {1}").Capital(), "100 % {1}", "100 % {1}"},
	} {
		if got := (*Catalog)(nil).Print(c.m); got != c.en {
			t.Errorf("English: got %q, want %q", got, c.en)
		}
		if got := pl.Print(c.m); got != c.pl {
			t.Errorf("Polish: got %q, want %q", got, c.pl)
		}
	}
}

// Screens and pages print at the same time.
func TestPrintAtOnce(t *testing.T) {
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			for n := range 50 {
				if got := German().Print(Counted(n, "{1} phrase", "{1} phrases")); got == "" {
					t.Error("nothing printed")
				}
			}
		})
	}
	all.Wait()
}

func BenchmarkPrint(b *testing.B) {
	m := New("needs {1}, gives {2}", Figure("12.5 mm"), Figure("9 mm"))
	for b.Loop() {
		_ = German().Print(m)
	}
}
