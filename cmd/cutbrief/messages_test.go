package main

import (
	"go/ast"
	"go/constant"
	"go/types"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/tools/go/packages"

	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
)

// identifiers are the identifiers of all messages in the program: every constant
// that is a message.ID where it stands, and where that is.
func identifiers(t *testing.T) map[message.ID]string {
	t.Helper()
	loaded, err := packages.Load(&packages.Config{
		Mode: packages.NeedName | packages.NeedFiles | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo | packages.NeedImports,
		Dir:  "../..",
	}, "./...")
	if err != nil || packages.PrintErrors(loaded) > 0 {
		t.Fatal("the program does not load:", err)
	}
	found := map[message.ID]string{}
	for _, p := range loaded {
		for _, file := range p.Syntax {
			ast.Inspect(file, func(n ast.Node) bool {
				e, ok := n.(ast.Expr)
				if !ok {
					return true
				}
				tv := p.TypesInfo.Types[e]
				if tv.Value == nil || tv.Value.Kind() != constant.String || !isID(tv.Type) {
					return true
				}
				if id := constant.StringVal(tv.Value); id != "" {
					found[message.ID(id)] = p.Fset.Position(e.Pos()).String()
				}
				return true
			})
		}
	}
	return found
}

func isID(t types.Type) bool {
	named, ok := t.(*types.Named)
	return ok && named.Obj().Name() == "ID" && named.Obj().Pkg() != nil && named.Obj().Pkg().Path() == "cutbrief/rules/message"
}

var letter = regexp.MustCompile(`\pL`)

// Every message of the program has German words: an identifier that is written
// anywhere and has no row is found here, before anybody meets it on a screen.
func TestEveryMessageIsInGerman(t *testing.T) {
	var lacking []string
	found := identifiers(t)
	for id, where := range found {
		if letter.MatchString(string(id)) && !strings.HasPrefix(string(id), "@") && !catalog.For("de").Has(id) {
			lacking = append(lacking, where+": "+string(id))
		}
	}
	slices.Sort(lacking)
	for _, l := range lacking {
		t.Errorf("no German words: %s", l)
	}
	t.Logf("%d messages", len(found))
}
