package cost

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"strings"
	"testing"

	"cutbrief/rules/cite"
)

// Every formula that may refuse says where it holds, what it rests on, and a
// value to check it by; the sources of this room are in the register.
func TestFormulasSayWhatTheyRestOn(t *testing.T) {
	set := token.NewFileSet()
	noTests := func(f fs.FileInfo) bool { return !strings.HasSuffix(f.Name(), "_test.go") }
	packages, err := parser.ParseDir(set, ".", noTests, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, f := range packages["cost"].Files {
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || !fn.Name.IsExported() || !refuses(fn) {
				continue
			}
			n++
			for _, word := range []string{"Valid", "Source", "Check:"} {
				if !strings.Contains(fn.Doc.Text(), word) {
					t.Errorf("%s does not say %q", fn.Name.Name, word)
				}
			}
		}
	}
	if n < 14 {
		t.Errorf("%d formulas", n)
	}
	for _, id := range []string{"aws-oxyfuel", "navy-steelworker", "faa-8083-31", "doe-air", "nist-135", "gum", "carvill", "nist-sp-811", "practice", "physics", "geometry"} {
		if _, ok := (cite.Ref{Source: id}).Find(); !ok {
			t.Errorf("%q is not registered", id)
		}
	}
}

// refuses reports whether a function returns an error last.
func refuses(fn *ast.FuncDecl) bool {
	if fn.Type.Results == nil {
		return false
	}
	list := fn.Type.Results.List
	id, ok := list[len(list)-1].Type.(*ast.Ident)
	return ok && id.Name == "error"
}
