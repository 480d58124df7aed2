package main

import (
	"cmp"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// variable names the mutant that a test program is to be.
const variable = "MUTATE"

// A test is the test program of one package with all mutants in it.
type test struct {
	root, dir string
	only      string         // the tests to run, as the go command takes them
	skip      string         // those to leave out
	work      string         // where programs and texts are put
	number    map[string]int // of the mutants in it, by name
	program   string
	usual     time.Duration // what it takes on the processor
}

// build makes the test programs of a package and of others with all mutants of the
// package that Go takes; the others lose their kind and are built one by one.
func (t *trial) build(dir string, all []*mutant, also []string) {
	work := must(os.MkdirTemp("", "mutate"))
	number := map[string]int{}
	for i, m := range all {
		number[m.name] = i + 1
	}
	t.tests = nil
	for _, d := range append([]string{dir}, also...) {
		d, only, _ := strings.Cut(d, ":")
		t.tests = append(t.tests, &test{root: t.root, dir: d, only: only, skip: t.skip, work: work, number: number})
	}
	for refused := true; refused; {
		refused = t.tests[0].refused(all, must(compile(t.root, dir, filepath.Join(work, "t0"), texts(work, all))))
	}
	overlay := texts(work, all)
	for i, test := range t.tests {
		test.program = filepath.Join(work, fmt.Sprint("t", i))
		if out := must(compile(t.root, test.dir, test.program, overlay)); out != "" {
			must(0, fmt.Errorf("%s: %s", test.dir, out))
		}
		ok, spent := test.passes(test.program, 0, time.Hour)
		if !ok {
			must(0, fmt.Errorf("the tests of %s fail as it is", test.dir))
		}
		test.usual = spent
	}
}

var position = regexp.MustCompile(`(?m)([\w.-]+\.go):(\d+)(?::\d+)?: `)

// refused takes out the mutants of the lines that the compiler complains about.
func (t *test) refused(all []*mutant, out string) bool {
	if out == "" {
		return false
	}
	found := false
	for _, at := range position.FindAllStringSubmatch(out, -1) {
		for _, m := range all {
			if m.kind != "" && strings.HasPrefix(m.name, fmt.Sprintf("%s/%s:%s:", filepath.ToSlash(m.dir), at[1], at[2])) {
				m.kind, found = "", true
			}
		}
	}
	if !found {
		must(0, fmt.Errorf("%s: %s", t.dir, out))
	}
	return true
}

// texts writes the files with all mutants in them, and returns what to put instead
// of what.
func texts(work string, all []*mutant) map[string]string {
	overlay := map[string]string{}
	files := map[string][]int{}
	for i, m := range all {
		files[m.file] = append(files[m.file], i)
	}
	for file, list := range files {
		source := must(os.ReadFile(file))
		w := &weaver{source: source, all: all}
		for _, i := range list {
			if all[i].kind != "" {
				w.list = append(w.list, i)
			}
		}
		slices.SortFunc(w.list, func(a, b int) int { return cmp.Or(all[a].from-all[b].from, all[b].to-all[a].to) })
		put(overlay, work, file, w.weave(0, len(source)))
		switcher := filepath.Join(filepath.Dir(file), "mutate_switch.go")
		name := regexp.MustCompile(`(?m)^package \w+`).FindString(string(source))
		put(overlay, work, switcher, name+fmt.Sprintf(`
import ("os"; "strconv")
var mutateNow = func() int { n, _ := strconv.Atoi(os.Getenv(%q)); return n }()
func mutate[T any](n int, was, now T) T { if n == mutateNow { return now }; return was }
`, variable))
	}
	return overlay
}

func put(overlay map[string]string, work, file, text string) {
	to := filepath.Join(work, filepath.Base(file))
	must(0, os.WriteFile(to, []byte(text), 0o600))
	overlay[file] = to
}

// weaver puts the mutants of one file in, the outer ones around the inner ones.
type weaver struct {
	source []byte
	all    []*mutant
	list   []int // from left to right, outer before inner
}

// weave is the text from one byte to another with the mutants within.
func (w *weaver) weave(from, to int) string {
	var b strings.Builder
	for len(w.list) > 0 && w.all[w.list[0]].from >= from && w.all[w.list[0]].to <= to {
		i := w.list[0]
		m := w.all[i]
		w.list = w.list[1:]
		b.Write(w.source[from:m.from])
		plain := strings.ReplaceAll(string(w.source[m.from:m.at])+m.text+string(w.source[m.end:m.to]), "\n", " ")
		inner := w.weave(m.from, m.to)
		switch {
		case m.from == m.at && m.to == m.end: // a figure, a truth
			fmt.Fprintf(&b, "mutate[%s](%d, %s, %s)", m.kind, i+1, inner, plain)
		case m.kind == "bool":
			fmt.Fprintf(&b, "(mutateNow == %d && (%s) || mutateNow != %d && (%s))", i+1, plain, i+1, inner)
		default:
			fmt.Fprintf(&b, "func() %s { if mutateNow == %d { return %s }; return %s }()", m.kind, i+1, plain, inner)
		}
		from = m.to
	}
	b.Write(w.source[from:to])
	return b.String()
}

// compile builds a test program, and returns what the compiler complains about.
func compile(root, dir, program string, overlay map[string]string) (string, error) {
	instead := program + ".json"
	if err := os.WriteFile(instead, must(json.Marshal(map[string]any{"Replace": overlay})), 0o600); err != nil {
		return "", err
	}
	cmd := exec.Command("go", "test", "-c", "-vet=off", "-gcflags=-e", "-overlay", instead, "-o", program, "./"+dir)
	cmd.Dir = root
	out, err := cmd.CombinedOutput()
	if err != nil {
		return string(out), nil
	}
	return "", nil
}

// run runs the tests over one mutant.
func (t *test) run(m *mutant) string {
	program, number := t.program, t.number[m.name]
	if m.kind == "" {
		program, number = filepath.Join(t.work, "alone"), 0
		overlay := map[string]string{}
		put(overlay, t.work, m.file, string(m.apply(must(os.ReadFile(m.file)))))
		if must(compile(t.root, t.dir, program, overlay)) != "" {
			return unviable
		}
	}
	if ok, _ := t.passes(program, number, 4*t.usual+2*time.Second); !ok {
		return noticed
	}
	return survived
}

// passes runs a test program, which may take so long on the processor and 6 GB; one
// that takes more is noticed.
func (t *test) passes(program string, number int, limit time.Duration) (ok bool, spent time.Duration) {
	seconds := strconv.Itoa(int(limit.Seconds()))
	cmd := exec.Command("sh", "-c", `ulimit -t "$1"; ulimit -v 6000000; exec "$0" -test.failfast -test.timeout 20m -test.run "$2" -test.skip "$3"`, program, seconds, t.only, t.skip)
	cmd.Dir = filepath.Join(t.root, t.dir)
	cmd.Env = append(os.Environ(), variable+"="+strconv.Itoa(number))
	ok = cmd.Run() == nil
	return ok, cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
}
