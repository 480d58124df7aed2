package screen

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// bound is one binding as it stands in the source.
type bound struct {
	where, does string
	keys        []string
}

// bindings reads the keys of every screen out of their source.
func bindings(t *testing.T) []bound {
	t.Helper()
	files, _ := filepath.Glob("*/*.go")
	own, _ := filepath.Glob("*.go")
	var all []bound
	for _, file := range append(files, own...) {
		tree, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			if b, ok := binding(n); ok && !strings.HasSuffix(file, "_test.go") {
				b.where = file
				all = append(all, b)
			}
			return true
		})
	}
	if len(all) < 40 {
		t.Fatalf("only %d keys found", len(all))
	}
	return all
}

// binding reads a call that makes one: Bind, here or from outside.
func binding(n ast.Node) (b bound, ok bool) {
	call, isCall := n.(*ast.CallExpr)
	if !isCall {
		return b, false
	}
	name := ""
	switch f := call.Fun.(type) {
	case *ast.Ident:
		name = f.Name
	case *ast.SelectorExpr:
		name = f.Sel.Name
	}
	texts := literals(call.Args)
	if name != "Bind" || len(texts) < 2 {
		return b, false
	}
	return bound{does: texts[0], keys: texts[1:]}, true
}

func literals(args []ast.Expr) []string {
	var texts []string
	for _, a := range args {
		if lit, ok := a.(*ast.BasicLit); ok {
			text, _ := strconv.Unquote(lit.Value)
			texts = append(texts, text)
		}
	}
	return texts
}

// follow are the keys whose meaning follows what has the focus, or that only come
// beside others. Each has one meaning all the same, in the words of its place.
var follow = map[string]string{
	"enter": "takes what has the focus, and goes on with it", "ctrl+j": "is Enter, in what is pasted",
	" ": "does the one thing a step or a row is about", "x": "does something to a row",
	"tab": "goes on to what is beside",
	"esc": "goes one step back, or takes back the last thing", "shift+tab": "goes back", "left": "goes back", "right": "goes on",
	"up": "moves", "down": "moves", "pgup": "moves", "pgdown": "moves", "home": "moves", "end": "moves",
	"g": "is about a group", "c": "opens a list, and closes it", "ctrl+l": "opens the list, and closes it",
}

// TestOneKeyOneAction: the same key has the same word on every screen, but for
// those that follow the focus, and ways to leave.
func TestOneKeyOneAction(t *testing.T) {
	all := bindings(t)
	for i, a := range all {
		for _, b := range all[:i] {
			for _, k := range a.keys {
				leaves := strings.HasPrefix(a.does, "leave") && strings.HasPrefix(b.does, "leave")
				if slices.Contains(b.keys, k) && a.does != b.does && follow[k] == "" && !leaves {
					t.Errorf("%s is %q in %s and %q in %s", k, a.does, a.where, b.does, b.where)
				}
			}
		}
	}
}

// TestOneActionOneKey: the same word is behind the same key on every screen.
func TestOneActionOneKey(t *testing.T) {
	all := bindings(t)
	for i, a := range all {
		for _, b := range all[:i] {
			if a.does == b.does && a.does != "leave" && !slices.ContainsFunc(a.keys, func(k string) bool { return slices.Contains(b.keys, k) }) {
				t.Errorf("%q is %q in %s and %q in %s", a.does, a.keys, a.where, b.keys, b.where)
			}
		}
	}
}

// TestWordsOfKeys: short enough to be read aloud in one breath, beginning small,
// and without the names of other keys.
func TestWordsOfKeys(t *testing.T) {
	for _, b := range bindings(t) {
		if words := strings.Fields(b.does); len(words) > 6 || strings.ToLower(b.does[:1]) != b.does[:1] {
			t.Errorf("%q is for %s in %s", b.does, b.keys, b.where)
		}
		if controls := regexp.MustCompile(`\^|ctrl|Ctrl`); controls.MatchString(b.does) {
			t.Errorf("%q names a key in %s", b.does, b.where)
		}
	}
}
