package message_test

import (
	"strings"
	"sync"
	"testing"

	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
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
	pl, findings := catalog.Read(strings.NewReader(polish), "polish")
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	systems := func(n int) message.Message { return message.Counted(n, "{1} system", "{1} systems") }
	for _, c := range []struct {
		m      message.Message
		en, pl string
	}{
		{message.Message{}, "", ""},
		{message.ID("not known").Message(), "not known", "nie wiadomo"},
		{message.ID("not known").Message().Sentence(), "Not known.", "Nie wiadomo."},
		{message.ID("Not known.").Message(), "Not known.", "Nie wiadomo."}, // a row serves for a capital and a full stop
		{message.New("needs {1}, gives {2}", message.Figure("12.5 mm"), message.Figure("9 mm")), "needs 12.5 mm, gives 9 mm", "daje 9 mm, trzeba 12,5 mm"},
		{message.New("needs {1}, gives {2}", message.Name("12.5 {2}%"), message.ID("not known")), "needs 12.5 {2}%, gives not known", "daje nie wiadomo, trzeba 12.5 {2}%"},
		{systems(1), "1 system", "1 system"},
		{systems(3), "3 systems", "3 systemy"},
		{systems(5), "5 systems", "5 systemów"},
		{systems(0), "0 systems", "0 systemów"},
		{message.And(), "", ""},
		{message.And(message.Text("a")), "a", "a"},
		{message.And(message.Text("a"), message.Message{}, message.Text("b"), systems(3)), "a, b and 3 systems", "a, b i 3 systemy"},
		{message.Join("; ", systems(1), message.Message{}, message.ID("not known").Message()).Sentence(), "1 system; not known.", "1 system; nie wiadomo."},
		{message.New("{1} ({2})", systems(5), message.Number("1,950")), "5 systems (1,950)", "5 systemów (1\u00a0950)"},
		{message.Text("100 % {1}").Capital(), "100 % {1}", "100 % {1}"},
	} {
		if got := (*message.Catalog)(nil).Print(c.m); got != c.en {
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
				if got := catalog.For("de").Print(message.Counted(n, "{1} phrase", "{1} phrases")); got == "" {
					t.Error("nothing printed")
				}
			}
		})
	}
	all.Wait()
}

func BenchmarkPrint(b *testing.B) {
	m := message.New("needs {1}, gives {2}", message.Figure("12.5 mm"), message.Figure("9 mm"))
	for b.Loop() {
		_ = catalog.For("de").Print(m)
	}
}
