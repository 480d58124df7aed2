package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
)

// benchmark is one row of the table of figures: a benchmark that has its floor
// beside it from the same run, and how many times the floor is aimed at.
type benchmark struct {
	name, says string
	aim        float64
}

// benchmarks are the rows by the package and the pattern that run them.
var benchmarks = []struct {
	pkg, pattern, times string
	rows                []benchmark
}{
	{"./assess/review", "Folder/(decode|first|distinct|index|remembered)$", "5x", []benchmark{
		{"Folder/decode", "a visit decoded", 1.5},
		{"Folder/first", "a visit judged for the first time", 3},
		{"Folder/distinct", "the same, no two with the same answers", 4},
		{"Folder/index", "a visit unchanged since the index", 0.35},
		{"Folder/remembered", "a visit as the index has it, unseen", 0.35},
	}},
	{"./cmd/cutbrief", "Start", "30x", []benchmark{
		{"Start/version", "`version`", 3},
		{"Start/--help", "`--help`", 3},
		{"Start/why-topic", "`why FILE TOPIC`", 3},
		{"Start/brief", "`brief FILE`, the page", 6},
	}},
}

// figures tells what the program takes, and writes the table of DEVELOPERS.md anew.
// It runs below the folder of go.mod.
func figures(out io.Writer) error {
	var table strings.Builder
	table.WriteString("| Processor time | takes | times its floor | aim |\n|---|---|---|---|\n")
	for _, b := range benchmarks {
		text, err := exec.Command("go", "test", b.pkg, "-run", "^$", "-bench", b.pattern, "-benchtime", b.times).CombinedOutput()
		if err != nil {
			return fmt.Errorf("benchmarks of %s: %w\n%s", b.pkg, err, text)
		}
		for _, row := range b.rows {
			line, err := row.line(string(text))
			if err != nil {
				return err
			}
			fmt.Fprint(out, line)
			table.WriteString(line)
		}
	}
	const document = "DEVELOPERS.md"
	data, err := os.ReadFile(document)
	if err != nil {
		return err
	}
	if data, err = withTable(data, table.String()); err != nil {
		return fmt.Errorf("%s: %w", document, err)
	}
	return os.WriteFile(document, data, 0o644)
}

// line is the row of the table that the output of a benchmark gives.
func (b benchmark) line(output string) (string, error) {
	found := regexp.MustCompile(`(?m)^Benchmark` + regexp.QuoteMeta(b.name) + `(?:-\d+)?\s+\d+\s+(.*)$`).FindStringSubmatch(output)
	if found == nil {
		return "", fmt.Errorf("no benchmark %s", b.name)
	}
	figures := map[string]float64{}
	words := strings.Fields(found[1])
	for i := 0; i+1 < len(words); i += 2 {
		figures[words[i+1]], _ = strconv.ParseFloat(words[i], 64) // 0 is told below
	}
	takes, times := fmt.Sprintf("%.1f ms", figures["ms"]), figures["x-floor"]
	if each, byFile := figures["cpu-us/file"]; byFile {
		takes, times = fmt.Sprintf("%.1f µs", each), figures["x-floor-cpu"]
	}
	if times == 0 {
		return "", fmt.Errorf("benchmark %s names no floor", b.name)
	}
	return fmt.Sprintf("| %s | %s | %.2f | %g |\n", b.says, takes, times, b.aim), nil
}

// withTable puts a table in the place of the one a document has.
func withTable(document []byte, table string) ([]byte, error) {
	begin, end := []byte("| Processor time |"), []byte("\n\n")
	from := bytes.Index(document, begin)
	if from < 0 {
		return nil, fmt.Errorf("there is no table of figures")
	}
	to := bytes.Index(document[from:], end)
	if to < 0 {
		return nil, fmt.Errorf("the table of figures has no end")
	}
	return append(append(bytes.Clone(document[:from]), table...), document[from+to+1:]...), nil
}
