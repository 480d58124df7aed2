package size

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"regexp"
	"strings"
	"testing"

	"cutbrief/rules/cite"
)

// parsed reads the package's own files, without its tests.
func parsed(t *testing.T) []*ast.File {
	t.Helper()
	set := token.NewFileSet()
	noTests := func(f fs.FileInfo) bool { return !strings.HasSuffix(f.Name(), "_test.go") }
	packages, err := parser.ParseDir(set, ".", noTests, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	var files []*ast.File
	for _, f := range packages["size"].Files {
		files = append(files, f)
	}
	return files
}

// Every formula says where it holds, what it rests on, and a value to check it
// by: in its own words, so that a reader needs no other page.
func TestEveryFormulaSaysWhatItRestsOn(t *testing.T) {
	for _, f := range parsed(t) {
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || !fn.Name.IsExported() || !mayRefuse(fn) {
				continue
			}
			for _, word := range []string{"Valid", "Source", "Check:"} {
				if !strings.Contains(fn.Doc.Text(), word) {
					t.Errorf("%s does not say %q", fn.Name.Name, word)
				}
			}
		}
	}
}

// mayRefuse reports whether a function returns an error: the formulas do.
func mayRefuse(fn *ast.FuncDecl) bool {
	if fn.Type.Results == nil {
		return false
	}
	for _, r := range fn.Type.Results.List {
		if id, ok := r.Type.(*ast.Ident); ok && id.Name == "error" {
			return true
		}
	}
	return false
}

// A source named in a comment is in the register, and a source of the register
// that is named here keeps its name.
func TestSourcesAreRegistered(t *testing.T) {
	known, rooms := map[string]bool{}, map[string]bool{}
	for _, s := range cite.All() {
		known[s.ID] = true
		rooms[strings.SplitN(s.ID, "-", 2)[0]] = true
	}
	id := regexp.MustCompile(`\b[a-z]+(-[a-z0-9]+)+\b`)
	for _, f := range parsed(t) {
		for _, group := range f.Comments {
			for _, word := range id.FindAllString(group.Text(), -1) {
				room := strings.SplitN(word, "-", 2)[0]
				looksLikeOne := strings.ContainsAny(word, "0123456789") && rooms[room]
				if looksLikeOne && !known[word] {
					t.Errorf("source %q is not in the register", word)
				}
			}
		}
	}
}
