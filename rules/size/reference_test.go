package size

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"cutbrief/rules/cite/reference"
)

var update = flag.Bool("update", false, "write the table of checks in testdata/reference/README.md")

// check is one value worked out against one from outside.
type check struct {
	name, source, trust string
	want, got           float64
	tolerance           float64
	why                 string // why the tolerance is not half of the last printed digit, or ""
	unit                string
}

// open reads a file of testdata/reference.
func open(t *testing.T, name string) reference.Table {
	t.Helper()
	return reference.Read(t, os.DirFS("../../testdata/reference"), name)
}

// number reads a figure and half of its last printed digit.
func number(t *testing.T, text string) (value, half float64) {
	t.Helper()
	value = reference.Number(t, text)
	digits := 0
	if i := strings.IndexByte(text, '.'); i >= 0 {
		digits = len(text) - i - 1
	}
	return value, 0.5*math.Pow(10, -float64(digits)) + 1e-12
}

// numbers finds the plain figures in a text such as "1/4 in, 25 ft, 80 psig".
func numbers(text string) []float64 {
	var list []float64
	for _, word := range strings.Fields(text) {
		word = strings.TrimRight(word, ",:%")
		if a, b, ok := strings.Cut(word, "/"); ok {
			x, err1 := strconv.ParseFloat(a, 64)
			y, err2 := strconv.ParseFloat(b, 64)
			if err1 == nil && err2 == nil {
				list = append(list, x/y)
			}
			continue
		}
		if x, err := strconv.ParseFloat(word, 64); err == nil {
			list = append(list, x)
		}
	}
	return list
}

// trustOf words the way a row is known as the register of sources does.
func trustOf(howKnown string) string {
	switch howKnown {
	case "looked up":
		return "published source"
	case "from memory", "common practice, no source":
		return howKnown
	}
	return "?"
}

// against makes a check of a row's printed figure.
func against(t *testing.T, row map[string]string, name, printed string, got float64, err error, unit string) check {
	t.Helper()
	if err != nil {
		t.Errorf("%s: %v", name, err)
	}
	want, half := number(t, printed)
	return check{name: name, source: row["source"], trust: trustOf(row["how_known"]), want: want, got: got, tolerance: half, unit: unit}
}

// loosely widens a check to a share of what is wanted, for a stated reason.
func (c check) loosely(share float64, why string) check {
	c.tolerance, c.why = math.Abs(c.want)*share, why
	return c
}

// allChecks runs every table.
func allChecks(t *testing.T) []check {
	var all []check
	for _, table := range []func(*testing.T) []check{
		multiplierChecks, breakerChecks, cordChecks, dropChecks, practiceChecks,
		dewChecks, flowChecks, hoseChecks, altitudeChecks, receiverChecks,
		propertyChecks, meltChecks, mechanisedChecks, heatChecks, shapeChecks,
		edgeChecks, oxyFuelChecks, coefficientChecks, ampacityChecks, conversionChecks, gaugeChecks,
	} {
		all = append(all, table(t)...)
	}
	return all
}

func TestAgainstTheOutside(t *testing.T) {
	all := allChecks(t)
	for _, c := range all {
		if !(math.Abs(c.got-c.want) <= c.tolerance) {
			t.Errorf("%s: got %.6g, want %.6g ± %.2g %s (%s)", c.name, c.got, c.want, c.tolerance, c.unit, c.source)
		}
		if c.trust == "?" || c.source == "" {
			t.Errorf("%s: does not say what it rests on", c.name)
		}
	}
	if n := len(published(all)); len(all) < 120 || n < 15 {
		t.Errorf("%d checks over %d published documents, want at least 120 over 15", len(all), n)
	}
}

// documents are what the published rows were read in, by a word of their source.
// The code for electrical installations counts once, however many clauses.
var documents = []string{
	"NEC", "IEC 60228", "IEC 60287", "IEC 60038", "AWS online glossary", "ISO 8573-1", "IAPWS-IF97",
	"general compressed-air texts", "engineer's spreadsheet", "AWS Welding Handbook typical PAC conditions",
	"Carvill", "ISO 9013", "NIST SP 811", "15 USC 206", "SMACNA", "ASTM B258", "public gauge tables",
}

// published lists the documents that published checks rest on.
func published(all []check) []string {
	var list []string
	for _, name := range documents {
		for _, c := range all {
			if c.trust == "published source" && strings.Contains(c.source, name) {
				list = append(list, name)
				break
			}
		}
	}
	return list
}

// TestTableOfChecks keeps the readable table beside the reference files fresh.
func TestTableOfChecks(t *testing.T) {
	path := filepath.Join("..", "..", "testdata", "reference", "README.md")
	want := tableOf(allChecks(t))
	if *update {
		if err := os.WriteFile(path, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	have, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if strings.ReplaceAll(string(have), "\r\n", "\n") != want {
		t.Error("the table of checks is stale: go test ./rules/size -run TestTableOfChecks -update")
	}
}

// tableOf writes the checks as Markdown.
func tableOf(all []check) string {
	var b strings.Builder
	b.WriteString("# Checks against the outside\n\n")
	b.WriteString("The files here hold reference values with their source and how far each is known. ")
	b.WriteString("The table below is written by the test of `rules/size`, which fails when it is stale: ")
	b.WriteString("`go test ./rules/size -run TestTableOfChecks -update`.\n\n")
	b.WriteString("A value is met when it agrees to half of the last printed digit, or to the tolerance whose reason is given. ")
	b.WriteString("\"From memory\" means that no one read the value at its source; such a value guards against slips, it proves nothing.\n\n")
	names := published(all)
	fmt.Fprintf(&b, "%d checks; the published ones rest on %d documents: %s.\n\n", len(all), len(names), strings.Join(names, "; "))
	b.WriteString("| check | source | trust | expected | computed | deviation | allowed |\n|---|---|---|---:|---:|---:|---|\n")
	for _, c := range all {
		allowed := fmt.Sprintf("± %.2g", c.tolerance)
		if c.why != "" {
			allowed += ": " + c.why
		}
		fmt.Fprintf(&b, "| %s | %s | %s | %.5g %s | %.5g | %s | %s |\n", cell(c.name), cell(c.source), c.trust, c.want, c.unit, c.got, deviation(c), cell(allowed))
	}
	return b.String()
}

func cell(text string) string { return strings.ReplaceAll(text, "|", "/") }

// deviation is in % of what is expected, to a digit that does not differ from
// one kind of processor to another.
func deviation(c check) string {
	if c.want == 0 {
		return fmt.Sprintf("%.2f", c.got)
	}
	d := fmt.Sprintf("%+.2f %%", 100*(c.got-c.want)/c.want)
	if d == "-0.00 %" || d == "+0.00 %" {
		return "0.00 %"
	}
	return d
}
