package main

import (
	"bytes"
	"cmp"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// Every command waits until all packages are initialised. A list that is parsed or
// an expression that is compiled there shows in how often memory is asked for: a
// small expression takes hundreds of times. All of ours together take some 250; a
// third more is left to them. This package is left out: here its tests are in it.
// The ten that take longest, ours or not, are logged.
func TestNothingIsWorkedOutBeforeItIsAskedFor(t *testing.T) {
	const mostOfOne, mostOfAll = 200, 600
	cmd := exec.Command("cutbrief", "version")
	cmd.Env = append(os.Environ(), "GODEBUG=inittrace=1")
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	type initialisation struct {
		name   string
		ms     float64
		allocs int
	}
	var list []initialisation
	all := 0
	for _, line := range regexp.MustCompile(`init (\S+) @.*, ([0-9.]+) ms clock, .* (\d+) allocs`).FindAllStringSubmatch(string(out), -1) {
		one := initialisation{name: line[1]}
		one.ms, _ = strconv.ParseFloat(line[2], 64)
		if one.allocs, err = strconv.Atoi(line[3]); err != nil {
			t.Fatal(err)
		}
		list = append(list, one)
		room, ours := strings.CutPrefix(one.name, "cutbrief/")
		if !ours || strings.HasPrefix(room, "cmd/") {
			continue
		}
		if all += one.allocs; one.allocs > mostOfOne {
			t.Errorf("%s asks for memory %d times before it is used, want %d or fewer", one.name, one.allocs, mostOfOne)
		}
	}
	if all == 0 || all > mostOfAll {
		t.Errorf("our packages ask for memory %d times before they are used, want %d or fewer", all, mostOfAll)
	}
	slices.SortFunc(list, func(a, b initialisation) int { return cmp.Compare(b.ms, a.ms) })
	for _, one := range list[:10] {
		t.Logf("%-45s %6.3f ms, memory asked for %d times", one.name, one.ms, one.allocs)
	}
	t.Logf("ours ask for memory %d times", all)
}

// BenchmarkStart holds what a command takes of the processor, as a process, to an
// empty Go program, turn by turn in one run; both as they are handed out, without C.
func BenchmarkStart(b *testing.B) {
	dir := b.TempDir()
	compile := func(name, pkg string) string {
		out := filepath.Join(dir, name)
		cmd := exec.Command("go", "build", "-o", out, pkg)
		cmd.Env = append(os.Environ(), "CGO_ENABLED=0", "GOFLAGS=")
		if text, err := cmd.CombinedOutput(); err != nil {
			b.Skipf("there is no compiler: %v\n%s", err, text)
		}
		return out
	}
	source := filepath.Join(dir, "empty.go")
	if err := os.WriteFile(source, []byte("package main\n\nfunc main() {}\n"), 0o600); err != nil {
		b.Fatal(err)
	}
	empty, program := compile("empty", source), compile("program", ".")
	visit := filepath.Join(dir, "visit.json")
	sample := exec.Command(program, "sample", "kitchen-fitter", "--save", visit)
	sample.Dir = dir
	if out, err := sample.CombinedOutput(); err != nil {
		b.Fatalf("%v\n%s", err, out)
	}
	for _, args := range [][]string{{"version"}, {"--help"}, {"why", visit, "clean-cut"}, {"why", visit}, {"brief", visit, "--force", "--out", filepath.Join(dir, "page.pdf")}} {
		name := strings.TrimSuffix(strings.Join(append(args[:1:1], map[int][]string{3: {"topic"}}[len(args)]...), "-"), "-")
		b.Run(name, func(b *testing.B) {
			floor, least := time.Duration(1<<62), time.Duration(1<<62)
			for b.Loop() {
				floor = min(floor, processTime(b, empty))
				least = min(least, processTime(b, program, args...))
			}
			b.ReportMetric(float64(floor.Microseconds())/1000, "floor-ms")
			b.ReportMetric(float64(least.Microseconds())/1000, "ms")
			b.ReportMetric(float64(least)/float64(floor), "x-floor")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// processTime runs a program and returns what it took of the processor.
func processTime(b *testing.B, program string, args ...string) time.Duration {
	cmd := exec.Command(program, args...)
	var out bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &out
	if err := cmd.Run(); err != nil {
		b.Fatalf("%v\n%s", err, out.Bytes())
	}
	return cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
}
