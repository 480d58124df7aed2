// Command pack builds what is handed out: the program for every system it is
// made for, a Debian package, the licences of all that is built in, what each
// program is made of, and the checksums. Two builds of one commit with one version of Go give the same
// bytes, on whichever machine. Run it from the repository:
//
//	go run ./cmd/pack dist
//
// With -count it builds nothing and tells how heavy the source is, with -bench what
// the program takes of the processor.
package main

import (
	"bytes"
	"crypto/sha256"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run builds into the folder named and returns the exit status.
func run(args []string, out, errs io.Writer) int {
	f := flag.NewFlagSet("pack", flag.ContinueOnError)
	f.SetOutput(errs)
	f.Usage = func() {
		fmt.Fprintln(errs, "usage: go run ./cmd/pack [-only SYSTEM/PROCESSOR,...] FOLDER\n       go run ./cmd/pack -count|-bench")
		f.PrintDefaults()
	}
	only := f.String("only", "", "build these alone, such as linux/amd64,windows/arm64")
	counting := f.Bool("count", false, "tell the lines, packages and functions of the source, and build nothing")
	timing := f.Bool("bench", false, "tell what the program takes beside its floors, write it into DEVELOPERS.md, and build nothing")
	if err := f.Parse(args); err != nil || (*counting || *timing) == (f.NArg() == 1) {
		if err == nil {
			f.Usage()
		}
		return 2
	}
	work := func() error { return pack(f.Arg(0), *only, out) }
	if *counting {
		work = func() error { return count(out) }
	}
	if *timing {
		work = func() error { return figures(out) }
	}
	if err := work(); err != nil {
		fmt.Fprintln(errs, "pack:", err)
		return 1
	}
	return 0
}

// chosen are the targets named, or all of them.
func chosen(only string) ([]target, error) {
	if only == "" {
		return targets, nil
	}
	var list []target
	for name := range strings.SplitSeq(only, ",") {
		i := slices.IndexFunc(targets, func(t target) bool { return t.String() == name })
		if i < 0 {
			return nil, fmt.Errorf("%q is not built here; one of %s", name, strings.Trim(fmt.Sprint(targets), "[]"))
		}
		list = append(list, targets[i])
	}
	return list, nil
}

// pack builds everything into dir, which must be empty or not there: what lies
// in it afterwards is all of one build.
func pack(dir, only string, out io.Writer) error {
	list, err := chosen(only)
	if err != nil {
		return err
	}
	if entries, err := os.ReadDir(dir); err == nil && len(entries) > 0 {
		return fmt.Errorf("%s is not empty; name another folder, or empty it", dir)
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	for _, t := range list {
		if err := t.build(dir); err != nil {
			return err
		}
	}
	text, err := notices(list...)
	if err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(dir, noticesFile), text, 0o644); err != nil {
		return err
	}
	if err := writeBOMs(dir, list); err != nil {
		return err
	}
	if err := packages(dir, list); err != nil {
		return err
	}
	return summed(dir, out)
}

// packages makes a Debian package of each Linux program.
func packages(dir string, list []target) error {
	collected := sync.OnceValues(collect)
	for _, t := range list {
		if t.os != "linux" {
			continue
		}
		more, err := collected()
		if err == nil {
			err = t.debian(dir, more)
		}
		if err != nil {
			return fmt.Errorf("package for %s: %w", t, err)
		}
	}
	return nil
}

// sumsFile is read by sha256sum --check, and by shasum -a 256 --check.
const sumsFile = "SHA256SUMS"

// summed writes the checksums of every file in dir, by name, and tells out what
// was made.
func summed(dir string, out io.Writer) error {
	files, err := read(dir)
	if err != nil {
		return err
	}
	var sums bytes.Buffer
	for _, f := range files {
		fmt.Fprintf(&sums, "%x  %s\n", sha256.Sum256(f.data), f.path)
		fmt.Fprintf(out, "%5.1f MB  %s\n", float64(len(f.data))/1e6, filepath.Join(dir, f.path))
	}
	return os.WriteFile(filepath.Join(dir, sumsFile), sums.Bytes(), 0o644)
}

// read are the files of a folder, by name.
func read(dir string) ([]entry, error) {
	files, err := os.ReadDir(dir) // sorted by name
	var list []entry
	for _, f := range files {
		if f.IsDir() {
			continue
		}
		data, err := os.ReadFile(filepath.Join(dir, f.Name()))
		if err != nil {
			return nil, err
		}
		list = append(list, entry{path: f.Name(), data: data})
	}
	return list, err
}
