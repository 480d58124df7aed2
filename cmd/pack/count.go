package main

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// counts is how heavy the source is. A package that no command needs, because
// only tests import it, is not in it.
type counts struct {
	packages, lines, commandLines int
	functions                     []int // lines of each, with its braces
}

// count tells out how heavy the source is. It runs below the folder of go.mod.
func count(out io.Writer) error {
	const form = "{{if .Module}}{{if .Module.Main}}{{.ImportPath}}\t{{.Dir}}{{end}}{{end}}"
	listed, err := exec.Command("go", "list", "-deps", "-f", form, ours+"/cmd/...").Output()
	if err != nil {
		return fmt.Errorf("list the packages: %w", err)
	}
	var c counts
	for line := range strings.Lines(string(listed)) {
		path, dir, _ := strings.Cut(strings.TrimSpace(line), "\t")
		before := c.lines
		if err := c.addPackage(dir); err != nil {
			return err
		}
		if path == program {
			c.commandLines = c.lines - before
		}
	}
	page, err := os.ReadFile("DEVELOPERS.md")
	if err != nil {
		return err
	}
	slices.Sort(c.functions)
	at := func(percent int) int { return c.functions[(len(c.functions)-1)*percent/100] }
	_, err = fmt.Fprintf(out, "%6d lines of Go, without tests\n%6d packages\n%6d lines in cmd/cutbrief\n%6d bytes in DEVELOPERS.md\n%6d lines in the median function, of %d\n%6d lines in the function at the 90th percentile\n",
		c.lines, c.packages, c.commandLines, len(page), at(50), len(c.functions), at(90))
	return err
}

// addPackage counts one folder: the files for every system, and no tests.
func (c *counts) addPackage(dir string) error {
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	c.packages++
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		data, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		c.lines += bytes.Count(data, []byte("\n"))
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, name, data, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		for _, d := range tree.Decls {
			if f, ok := d.(*ast.FuncDecl); ok {
				c.functions = append(c.functions, set.Position(f.End()).Line-set.Position(f.Pos()).Line+1)
			}
		}
	}
	return err
}
