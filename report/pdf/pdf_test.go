package pdf

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"
	"unicode/utf16"

	"cutbrief/report"

	"github.com/jung-kurt/gofpdf"
	"golang.org/x/image/font/gofont/goregular"
)

// utf16be is how the file holds a text.
func utf16be(s string) []byte {
	var b []byte
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return b
}

var placed = regexp.MustCompile(`BT ([\d.-]+) ([\d.-]+) Td`)

// The uncompressed file has one page, the texts expected, and no baseline
// under the bottom margin.
func TestFileHoldsThePage(t *testing.T) {
	for _, p := range papers {
		out, err := render(sample(), p, false)
		if err != nil {
			t.Fatal(err)
		}
		if n := bytes.Count(out, []byte("/Type /Page\n")); n != 1 {
			t.Errorf("%s: %d pages", p, n)
		}
		for _, text := range []string{"Demo 65, 65", "Low distortion", "Supply: single", "Brook Farm", "shade", "Representative"} {
			if !bytes.Contains(out, []byte(text)) {
				t.Errorf("%s: %q is not in the file", p, text)
			}
		}
		lowest := 1e9
		for _, m := range placed.FindAllSubmatch(out, -1) {
			y, _ := strconv.ParseFloat(string(m[2]), 64)
			lowest = min(lowest, y)
		}
		if least := bottomMargin / point; lowest < least {
			t.Errorf("%s: lowest baseline %.1f pt, margin %.1f pt", p, lowest, least)
		}
	}
}

func TestSameBriefSameBytes(t *testing.T) {
	first, err := Render(sample(), A4)
	if err != nil {
		t.Fatal(err)
	}
	var wait sync.WaitGroup
	for range 4 {
		wait.Go(func() {
			if again, err := Render(sample(), A4); err != nil || !bytes.Equal(first, again) {
				t.Errorf("other bytes the next time (%v)", err)
			}
		})
	}
	wait.Wait()
}

// A brief without a date does not take the clock's.
func TestNoDateIsNotToday(t *testing.T) {
	out, err := render(report.Brief{Title: "x"}, A4, false)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(out, []byte("D:19700101000000")) || bytes.Contains(out, []byte(time.Now().Format("D:20060102"))) {
		t.Error("the date in the file is not fixed")
	}
}

func TestUnknownPaper(t *testing.T) {
	if _, err := Render(sample(), "a5"); err == nil || !strings.Contains(err.Error(), `"a5"`) {
		t.Errorf("error %v does not name the paper", err)
	}
}

// Our measure of a text agrees with the library that draws it, which rounds
// each width to a thousandth of the size.
func TestMeasuresAsTheLibraryDraws(t *testing.T) {
	f, err := newFaces()
	if err != nil {
		t.Fatal(err)
	}
	doc := gofpdf.New("P", "mm", "A4", "")
	doc.AddUTF8FontFromBytes("page", "", bytes.Clone(goregular.TTF))
	doc.SetFont("page", "", 10)
	for _, text := range []string{"Cutting recommendation", "needs 12.7 mm × 1.5 ≥ 19 mm", "Слесарная Łódź", "iiiiiiiiii"} {
		got, want := f.width(text, style{false, 10}), doc.GetStringWidth(text)
		if got < want*0.995 || got > want*1.005 {
			t.Errorf("%q: %.3f mm, the library draws %.3f mm", text, got, want)
		}
	}
}

// Hostile texts reach the file without a panic of the library.
func TestHostileTextsAreDrawn(t *testing.T) {
	for _, text := range hostile {
		b := sample()
		b.Title, b.Headline, b.Need = text, text, text
		b.Who[0].Value, b.Cautions[0].Value, b.Plan[0].Cut = text, text, text
		if _, err := Render(b, Letter); err != nil {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// Drawing adds encoding to layout, which the property above covers; a few of
// its briefs are enough.
func TestAnyBriefIsDrawn(t *testing.T) {
	for seed := range 20 {
		if _, err := Render(briefs().Example(seed), papers[seed%len(papers)]); err != nil {
			t.Errorf("brief %d: %v", seed, err)
		}
	}
}

// outside runs an independent reader over the page, if there is one.
func outside(t *testing.T, b report.Brief, p Paper, program string, args ...string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		t.Skipf("%s is not installed: the page is not read by an independent program", program)
	}
	out, err := Render(b, p)
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "page.pdf")
	if err := os.WriteFile(file, out, 0o600); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		if a == "FILE" {
			args[i] = file
		}
	}
	said, err := exec.Command(path, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", program, err, said)
	}
	return string(said)
}

func TestIndependentReaderFindsTheText(t *testing.T) {
	said := outside(t, sample(), A4, "pdftotext", "-layout", "FILE", "-")
	for _, text := range []string{"Cutting recommendation", "needs 12 mm", "µg/m³", "To confirm before ordering", "5 to 10°"} {
		if !strings.Contains(strings.ReplaceAll(said, "\u00a0", " "), text) {
			t.Errorf("%q is not in\n%s", text, said)
		}
	}
}

func TestIndependentCheckerIsContent(t *testing.T) {
	for _, p := range papers {
		outside(t, sample(), p, "qpdf", "--check", "FILE")
	}
}

func BenchmarkRender(b *testing.B) {
	brief := sample()
	for b.Loop() {
		if _, err := Render(brief, A4); err != nil {
			b.Fatal(err)
		}
	}
}
