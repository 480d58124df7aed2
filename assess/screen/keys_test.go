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

	"github.com/charmbracelet/bubbles/key"
)

// bound is one binding as it stands in a screen's struct of keys.
type bound struct {
	where, shown, does string
	keys               []string
}

// usual are the bindings that screens share, by the name of their function.
var usual = map[string]key.Binding{
	"Accept": Accept(), "Keep": Keep(), "Back": Back(), "Leave": Leave(), "Quit": Quit(), "Move": Move(), "Scroll": Scroll(),
	"Later": Later(), "NotKnown": NotKnown(), "Explain": Explain(), "List": List(), "Why": Why(), "Page": Page(), "Done": Done(),
}

// bindings reads the keys of every screen out of their source: what is made by
// Bind or Key, and what is shared.
func bindings(t *testing.T) []bound {
	t.Helper()
	files, err := filepath.Glob("*/*.go")
	if err != nil || len(files) < 20 {
		t.Fatalf("found sources %v, %v", files, err)
	}
	var all []bound
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		tree, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			if b, ok := binding(n); ok {
				b.where = filepath.Dir(file)
				all = append(all, b)
			}
			return true
		})
	}
	if len(all) < 50 {
		t.Fatalf("only %d keys found", len(all))
	}
	return all
}

// binding reads a call that makes one.
func binding(n ast.Node) (b bound, ok bool) {
	call, isCall := n.(*ast.CallExpr)
	if !isCall {
		return b, false
	}
	name := ""
	if f, is := call.Fun.(*ast.SelectorExpr); is {
		if from, named := f.X.(*ast.Ident); named && from.Name == "screen" {
			name = f.Sel.Name
		}
	}
	texts := literals(call.Args)
	k, shared := usual[name]
	switch {
	case shared:
		return bound{shown: k.Help().Key, does: k.Help().Desc, keys: append(k.Keys(), texts...)}, true
	case name == "Key" && len(texts) > 2:
		return bound{shown: texts[0], does: minutes.ReplaceAllString(texts[1], ""), keys: texts[2:]}, true
	case name == "Bind" && len(texts) > 1:
		return bound{shown: label(texts[1:], false), does: minutes.ReplaceAllString(texts[0], ""), keys: texts[1:]}, true
	}
	return b, false
}

// minutes of the customer's time stand behind a word in the practice.
var minutes = regexp.MustCompile(` \([0-9]\)$`)

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

// letters are what a control key is shown as where no letters are typed. The
// letter for why is another: ^W takes a word away in every line that is typed,
// and ^Y sounds like it.
var letters = map[string]string{"^C": "q", "^L": "l", "^Y": "w"}

// onceEach are the keys whose meaning follows what has the focus. Each has one
// meaning all the same, in the words of its place.
var onceEach = map[string]string{
	"Enter": "takes what has the focus, and goes on with it",
	"Space": "does the one thing a step or a row is about",
	"Tab":   "goes on to what stands beside",
	"Esc":   "goes one step back, or takes back the last thing",
	"↑↓":    "moves",
}

func same(a, b string) bool { return a == b || letters[a] == b || letters[b] == a }

// TestOneActionOneKey: the same word is behind the same key on every screen, and
// the same key has the same word, but for those that follow the focus.
func TestOneActionOneKey(t *testing.T) {
	all := bindings(t)
	for i, a := range all {
		for _, b := range all[:i] {
			if a.does == b.does && !same(a.shown, b.shown) {
				t.Errorf("%q is %s in %s and %s in %s", a.does, a.shown, a.where, b.shown, b.where)
			}
			leaves := strings.HasPrefix(a.does, "leave") && strings.HasPrefix(b.does, "leave")
			if onceEach[a.shown] == "" && a.shown == b.shown && a.does != b.does && !leaves {
				t.Errorf("%s is %q in %s and %q in %s", a.shown, a.does, a.where, b.does, b.where)
			}
		}
	}
}

// TestOtherKeysAgreeToo: a key that is not shown but works does on no other
// screen what is called otherwise there.
func TestOtherKeysAgreeToo(t *testing.T) {
	all := bindings(t)
	for i, a := range all {
		for _, b := range all[:i] {
			if a.does == b.does || onceEach[a.shown] != "" || onceEach[b.shown] != "" {
				continue
			}
			for _, k := range a.keys {
				if slices.Contains(b.keys, k) && !strings.HasPrefix(a.does, "leave") {
					t.Errorf("%s is %q in %s and %q in %s", k, a.does, a.where, b.does, b.where)
				}
			}
		}
	}
}

// TestWordsOfKeys: short enough to be read aloud in one breath, beginning small,
// and without the names of other keys.
func TestWordsOfKeys(t *testing.T) {
	for _, b := range bindings(t) {
		if words := strings.Fields(b.does); len(words) > 6 || strings.ToLower(b.does[:1]) != b.does[:1] {
			t.Errorf("%s: %q is for %s in %s", b.shown, b.does, b.keys, b.where)
		}
		if controls := regexp.MustCompile(`\^|ctrl|Ctrl`); controls.MatchString(b.does) {
			t.Errorf("%s: %q names a key in %s", b.shown, b.does, b.where)
		}
	}
}
