package main

import (
	"cmp"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// room is one package: what it is for, which of ours it may import, and which
// libraries. A name ending in "/..." stands for everything below it too.
type room struct {
	path      string
	purpose   string
	ours      []string
	libraries []string
}

// layout is the layering. DEVELOPERS.md shows the same table without the
// libraries; a test compares.
var layout = []room{
	{"rules/unit", "quantities, read as people write them; not known as a value", []string{"rules/message"}, nil},
	{"rules/cite", "the register of sources", []string{"rules/message"}, nil},
	{"rules/cite/reference", "for tests: values from outside", nil, nil},
	{"rules/tabular", "lists and tables as CSV or workbooks (.xlsx): read with findings, written", nil, nil},
	{"rules/metal", "the metals", nil, nil},
	{"rules/system", "the range of systems: reading and checking it", []string{"rules/tabular", "rules/metal"}, nil},
	{"rules/size", "one function a formula", []string{"rules/metal", "rules/system"}, nil},
	{"rules", "a Job in, a Result out", []string{"rules/metal", "rules/system", "rules/size"}, nil},
	{"rules/demonstration", "cuts, settings and cautions of the demonstration", []string{"rules", "rules/metal", "rules/system", "rules/size"}, nil},
	{"rules/cost", "what cutting costs, as ranges; the price list", []string{"rules", "rules/metal", "rules/tabular", "rules/system", "rules/size"}, nil},
	{"assess/sanitize", "the one way in for text from outside", nil, []string{"github.com/charmbracelet/x/ansi", "golang.org/x/text/..."}},
	{"rules/message", "messages, and the catalogs that print them", nil, []string{"golang.org/x/text/..."}},
	{"rules/message/catalog", "other languages, built in or a firm's own file", []string{"rules/tabular"}, []string{"golang.org/x/text/..."}},
	{"assess", "the visit, the questions and their order, answers to a Job", []string{"rules/system", "assess/sanitize", "rules", "rules/metal"}, nil},
	{"assess/store", "visits in a folder: saved, loaded, listed, inspected; files put in place whole or not at all", []string{"assess", "assess/sanitize", "rules/..."}, []string{"golang.org/x/sys/windows", "golang.org/x/text/..."}},
	{"assess/review", "a folder as rows: flags, filter, order, index", []string{"assess", "assess/sanitize", "rules/..."}, []string{"golang.org/x/sys/unix"}},
	{"report", "the brief: every fact of the page, worded and rounded once", []string{"assess", "assess/sanitize", "rules/..."}, nil},
	{"report/text", "the brief as text for a terminal and as Markdown", []string{"assess", "report", "rules"}, []string{"github.com/mattn/go-runewidth", "github.com/charmbracelet/x/ansi", "golang.org/x/text/..."}},
	{"report/html", "the brief as a web page", []string{"report", "rules"}, nil},
	{"report/pdf", "the brief and a team's summary as printed pages", []string{"report", "report/export", "rules"}, []string{"github.com/jung-kurt/gofpdf", "golang.org/x/image/...", "golang.org/x/text/..."}},
	{"report/export", "reviews, lists, accounts, next steps: tables, CSV, JSON, workbooks, calendars", []string{"assess", "assess/casebook", "assess/review", "assess/sanitize", "assess/store", "report", "report/text", "rules/..."}, []string{"github.com/mattn/go-runewidth"}},
	{"report/handbook", "rules, file formats, help and manual as documents", []string{"assess", "assess/review", "assess/casebook", "report", "report/text", "rules/..."}, []string{"github.com/spf13/cobra", "github.com/spf13/pflag"}},
	{"assess/screen/background", "settles the background colour early", nil, []string{"github.com/charmbracelet/lipgloss"}},
	{"assess/screen", "the kit of the screens: look, keys, frame", []string{"assess", "assess/sanitize", "assess/screen/background", "rules", "rules/system", "rules/tabular"}, drawing},
	{"assess/screen/rehearse", "the demonstration with a clock, and its record", []string{"assess", "assess/sanitize", "assess/screen", "assess/screen/background", "report", "rules/..."}, drawing},
	{"assess/screen/interview", "the interview, on a full screen and in lines", []string{"assess", "assess/sanitize", "assess/screen", "assess/screen/background", "rules/...", "report", "report/text"}, drawing},
	{"assess/screen/review", "a folder of visits on a full screen", []string{"assess", "assess/sanitize", "assess/review", "assess/screen", "assess/screen/background", "rules/...", "report", "report/text"}, drawing},
	{"assess/casebook", "what is invented: demo visits; practice, its customers, mark, progress", []string{"assess", "assess/sanitize", "assess/store", "rules/...", "report", "report/text"}, nil},
	{"assess/screen/practice", "the practice, on a full screen and in lines", []string{"assess", "assess/sanitize", "assess/casebook", "assess/screen", "report", "report/text", "rules/..."}, drawing},
	{"assess/screen/screentest", "for tests: drives a screen", nil, append([]string{"github.com/creack/pty"}, drawing...)},
	{"cmd/cutbrief", "flags, paths, clock; one row a command", []string{"assess/...", "report/...", "rules/..."}, []string{"github.com/spf13/cobra", "github.com/spf13/pflag", "golang.org/x/term"}},
	{"cmd/pack", "builds what is handed out; counts and measures", nil, nil},
}

// ground are the rooms that every other may import.
var ground = []string{"rules/message", "rules/unit", "rules/cite"}

// drawing are the libraries that draw on a terminal.
var drawing = []string{"github.com/charmbracelet/...", "github.com/muesli/...", "github.com/mattn/go-runewidth"}

// TestLayering reads the imports of every file that is built into the program
// and fails on an arrow that is not in the layout.
func TestLayering(t *testing.T) {
	for _, f := range sources(t) {
		dir := filepath.ToSlash(filepath.Dir(f.name))
		row := slices.IndexFunc(layout, func(r room) bool { return r.path == dir })
		if row < 0 {
			t.Errorf("%s: package %s has no row in the layout", f.name, dir)
			continue
		}
		for _, path := range f.imports() {
			if !layout[row].allows(path) {
				t.Errorf("%s: %s may not import %s", f.name, dir, path)
			}
		}
	}
}

// support are the packages that only tests may import.
var support = []string{"assess/screen/screentest", "rules/cite/reference"}

// TestSupportStaysInTests keeps what helps tests out of the program, also where
// a row of the layout allows everything below a name.
func TestSupportStaysInTests(t *testing.T) {
	for _, f := range sources(t) {
		for _, path := range f.imports() {
			if slices.Contains(support, strings.TrimPrefix(path, "cutbrief/")) {
				t.Errorf("%s imports %s, which is for tests only", f.name, path)
			}
		}
	}
}

// TestLayoutIsCurrent finds rows of packages that are gone.
func TestLayoutIsCurrent(t *testing.T) {
	for _, r := range layout {
		if _, err := os.Stat(filepath.Join("..", "..", r.path)); err != nil {
			t.Errorf("the layout has a row for %s: %v", r.path, err)
		}
	}
}

// TestRulesAreTimeless keeps the ground floor free of files, clock, chance and
// printing, so that it can be tested and trusted alone.
func TestRulesAreTimeless(t *testing.T) {
	forbidden := []string{"os", "os/exec", "time", "log", "log/slog", "math/rand", "math/rand/v2", "crypto/rand", "net", "net/http", "syscall", "unsafe"}
	for _, f := range sources(t) {
		if !strings.HasPrefix(filepath.ToSlash(f.name), "rules/") {
			continue
		}
		for _, path := range f.imports() {
			if slices.Contains(forbidden, path) {
				t.Errorf("%s imports %s", f.name, path)
			}
		}
		for _, call := range f.prints() {
			t.Errorf("%s calls %s", f.name, call)
		}
	}
}

// TestLayoutIsDocumented compares the table with the one contributors read, and
// with -update writes that one anew.
func TestLayoutIsDocumented(t *testing.T) {
	const page, head, foot = "../../DEVELOPERS.md", "| Package | Room for | Imports besides the ground |\n|---|---|---|\n", "\n\n"
	data, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, ok := strings.Cut(string(data), head)
	written, after, closed := strings.Cut(rest, foot)
	if !ok || !closed {
		t.Fatal("DEVELOPERS.md has no table of the layout")
	}
	var rows []string
	for _, r := range layout {
		rows = append(rows, r.markdown())
	}
	want := strings.Join(rows, "\n")
	switch {
	case written == want:
	case *update:
		if err := os.WriteFile(page, []byte(before+head+want+foot+after), 0o666); err != nil {
			t.Fatal(err)
		}
	default:
		t.Error("DEVELOPERS.md shows another table of the layout; write it anew with: go test ./cmd/cutbrief -run Layout -update")
	}
}

// named is a file or folder of ours as DEVELOPERS.md names one.
var named = regexp.MustCompile("`((?:assess|cmd|report|rules|testdata)/[^` ]+)`")

// TestDevelopersNamesWhatIsThere follows every path that contributors are sent
// to; a star stands for any name.
func TestDevelopersNamesWhatIsThere(t *testing.T) {
	data, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range named.FindAllStringSubmatch(string(data), -1) {
		name := strings.TrimSuffix(m[1], "/...")
		if found, _ := filepath.Glob(filepath.Join("..", "..", name)); len(found) == 0 {
			t.Errorf("DEVELOPERS.md names %s, which is not there", m[1])
		}
	}
}

// allows reports whether the room may import path. The standard library is
// open to all; its paths have no dot in the first element.
func (r room) allows(path string) bool {
	first, _, _ := strings.Cut(path, "/")
	switch {
	case first == "cutbrief":
		path = strings.TrimPrefix(path, "cutbrief/")
		return covers(r.ours, path) || slices.Contains(ground, path) && !slices.Contains(ground, r.path)
	case strings.Contains(first, "."):
		return covers(r.libraries, path)
	}
	return path != "C"
}

func covers(list []string, path string) bool {
	return slices.ContainsFunc(list, func(name string) bool {
		base, below := strings.CutSuffix(name, "/...")
		return path == base || below && strings.HasPrefix(path, base+"/")
	})
}

func (r room) markdown() string {
	var short []string // the last part of a path tells the rooms apart
	for _, path := range r.ours {
		name := filepath.Base(path)
		if name == "sanitize" || name == "background" {
			continue // said below the table
		}
		if base, all := strings.CutSuffix(path, "/..."); all {
			name = "all of " + base
		}
		short = append(short, name)
	}
	return fmt.Sprintf("| `%s` | %s | %s |", r.path, r.purpose, cmp.Or(strings.Join(short, ", "), "–"))
}

// source is one parsed file, named from the top of the repository.
type source struct {
	name string
	tree *ast.File
}

// sources parses every Go file of the program that is not a test.
func sources(t *testing.T) []source {
	t.Helper()
	var list []source
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || d.Name() == ".git") {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		tree, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		name, err := filepath.Rel(root, path)
		list = append(list, source{name, tree})
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return list
}

func (s source) imports() []string {
	var list []string
	for _, spec := range s.tree.Imports {
		path, _ := strconv.Unquote(spec.Path.Value)
		list = append(list, path)
	}
	return list
}

// prints lists the calls that write to standard output.
func (s source) prints() []string {
	var list []string
	ast.Inspect(s.tree, func(n ast.Node) bool {
		sel, ok := n.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		pkg, ok := sel.X.(*ast.Ident)
		if ok && pkg.Name == "fmt" && strings.HasPrefix(sel.Sel.Name, "Print") {
			list = append(list, "fmt."+sel.Sel.Name)
		}
		return true
	})
	return list
}
