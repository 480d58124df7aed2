package main

import "testing"

// The output of a benchmark, written down by hand, becomes a row.
func TestARowOfFigures(t *testing.T) {
	const output = "goos: linux\nBenchmarkFolder/decode-2  \t 20\t 21.50 cpu-us/file\t 93.18 floor-ms\t 232.7 ms\t 2.497 x-floor\t 2.572 x-floor-cpu\n" +
		"BenchmarkStart/--help-2 \t 30\t 0.9210 floor-ms\t 3.193 ms\t 3.467 x-floor\n"
	for name, want := range map[string]string{
		"Folder/decode": "| it | 21.5 µs | 2.57 | 3 |\n",
		"Start/--help":  "| it | 3.2 ms | 3.47 | 3 |\n",
	} {
		if got, err := (benchmark{name, "it", 3}).line(output); got != want || err != nil {
			t.Errorf("%s: %q, %v; want %q", name, got, err, want)
		}
	}
	if got, err := (benchmark{"Folder/first", "it", 3}).line(output); err == nil {
		t.Errorf("a row out of nothing: %q", got)
	}
}

func TestTheTableIsPutInItsPlace(t *testing.T) {
	got, err := withTable([]byte("a\n\n| Processor time | x |\n|---|---|\n| old | 1 |\n\nb\n"), "| Processor time | y |\n|---|---|\n")
	if want := "a\n\n| Processor time | y |\n|---|---|\n\nb\n"; string(got) != want || err != nil {
		t.Errorf("%q, %v; want %q", got, err, want)
	}
}
