// Mutate asks whether a test would notice: it changes one comparison, constant,
// arithmetic sign, factor or unit of a package at a time, runs the package's tests
// and then those of others, and names the changes that none of them notices.
//
//	cd testdata/mutate && go run . -also rules,assess -log size.log rules/size
//
// All changes that Go allows to be chosen while a program runs are built into one
// test program, which takes the number of the change to make from the
// environment; what is left (declared constants) is built one by one. The go
// command is told to take other texts for the files, so the tree is left alone, but
// for what failing tests write: run it in a clone. With -log FILE it goes on where it
// was stopped. Changes listed in survivors.txt are argued there.
package main

import (
	"bufio"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// What became of a mutant.
const (
	noticed  = "noticed"
	survived = "SURVIVED"
	unviable = "no Go" // it does not compile, and so is none
)

func main() {
	also := flag.String("also", "", "packages whose tests are asked next, with commas between; behind a colon which tests")
	logged := flag.String("log", "", "file to keep the results in, and to go on from")
	root := flag.String("root", "../..", "the module the packages are in")
	again := flag.Bool("again", false, "try once more what survived by the log")
	only := flag.String("only", "", "the files to change, with commas between; all if empty")
	skip := flag.String("skip", "", "tests to leave out, as the go command takes them")
	part := flag.String("part", "0/1", "which of so many equal shares of the changes")
	argued := flag.String("argued", "survivors.txt", "the changes that no test should notice, and why")
	flag.Parse()
	t := &trial{root: *root, skip: *skip, again: *again, done: map[string]string{}}
	t.argue(*argued)
	t.resume(*logged)
	share, of := 0, 1
	fmt.Sscanf(*part, "%d/%d", &share, &of)
	for _, dir := range flag.Args() {
		all := mutants(*root, dir, strings.FieldsFunc(*only, func(r rune) bool { return r == ',' }))
		t.build(dir, all, strings.FieldsFunc(*also, func(r rune) bool { return r == ',' }))
		for i, m := range all {
			if i%of == share {
				t.try(m)
			}
		}
		t.score(dir, all)
	}
}

// must ends the program: without what it asks for there is nothing to tell.
func must[T any](v T, err error) T {
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
	return v
}

// trial runs mutants one after the other.
type trial struct {
	root  string
	skip  string            // tests to leave out
	again bool              // try once more what survived
	done  map[string]string // by id
	why   map[string]bool   // changes that are argued
	log   *os.File
	tests []*test // those of the package, then the others
}

// argue reads which changes are argued: package, function, line, change and reason,
// with tabs between.
func (t *trial) argue(name string) {
	t.why = map[string]bool{}
	data, _ := os.ReadFile(name)
	for line := range strings.Lines(string(data)) {
		if cells := strings.SplitN(strings.TrimSpace(line), "\t", 5); len(cells) == 5 {
			t.why[strings.Join(cells[:4], "\t")] = true
		}
	}
}

// resume reads what is known from a log, and opens it to add to it.
func (t *trial) resume(name string) {
	if name == "" {
		return
	}
	t.log = must(os.OpenFile(name, os.O_CREATE|os.O_RDWR|os.O_APPEND, 0o644))
	for lines := bufio.NewScanner(t.log); lines.Scan(); {
		if status, id, ok := strings.Cut(lines.Text(), "\t"); ok && (status != survived || !t.again) {
			t.done[id] = status
		}
	}
}

// try finds out what becomes of a mutant, unless it is known.
func (t *trial) try(m *mutant) {
	if _, known := t.done[m.id]; known {
		return
	}
	status := survived
	for _, test := range t.tests {
		if status = test.run(m); status != survived {
			break
		}
	}
	t.done[m.id] = status
	if t.log != nil {
		fmt.Fprintf(t.log, "%s\t%s\n", status, m.id)
	}
}

// score prints what survived without an argument, and the figures of a package.
func (t *trial) score(dir string, all []*mutant) {
	count, argued := map[string]int{}, 0
	for _, m := range all {
		status := t.done[m.id]
		if count[status]++; status == survived {
			if t.why[m.key] {
				argued++
			} else {
				fmt.Printf("%s\t%s\t%s\n", status, m.name, m.key)
			}
		}
	}
	tried := count[noticed] + count[survived]
	fmt.Printf("%s: %d of %d noticed (%.1f %%), %d argued, %d open; %d no Go, %d not tried\n", filepath.ToSlash(dir), count[noticed], tried,
		100*float64(count[noticed])/float64(max(tried, 1)), argued, count[survived]-argued, count[unviable], count[""])
}
