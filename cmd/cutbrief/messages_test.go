package main

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/types"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"golang.org/x/tools/go/packages"

	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
)

// identifiers are the identifiers of all messages in the program: every constant
// that is a message.ID where it stands, and all the places it stands at.
func identifiers(t *testing.T) map[message.ID][]string {
	t.Helper()
	found, err := allIdentifiers()
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// allIdentifiers loads the program once.
var allIdentifiers = sync.OnceValues(func() (map[message.ID][]string, error) {
	loaded, err := packages.Load(&packages.Config{
		Mode: packages.NeedName | packages.NeedFiles | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo | packages.NeedImports,
		Dir:  "../..",
	}, "./...")
	if err != nil || packages.PrintErrors(loaded) > 0 {
		return nil, fmt.Errorf("the program does not load: %w", err)
	}
	found := map[message.ID][]string{}
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
					found[message.ID(id)] = append(found[message.ID(id)], p.Fset.Position(e.Pos()).String())
				}
				return true
			})
		}
	}
	return found, nil
})

func isID(t types.Type) bool {
	named, ok := t.(*types.Named)
	return ok && named.Obj().Name() == "ID" && named.Obj().Pkg() != nil && named.Obj().Pkg().Path() == "cutbrief/rules/message"
}

var letter = regexp.MustCompile(`\pL`)

// Every message of the program has German words: an identifier that is written
// anywhere and has no row is found here, before anybody meets it on a screen.
func TestEveryMessageIsInGerman(t *testing.T) {
	needWords(t, "de", func(string) bool { return true })
}

// spokenRooms are the packages whose messages the interview, the page, the cautions
// and the letter are made of, and a single file of one that is not.
var spokenRooms = []string{"assess", "assess/store/farewell.go", "assess/screen", "assess/screen/interview", "rules", "rules/cite", "rules/cost", "rules/demonstration", "rules/metal", "rules/size", "rules/unit", "report", "report/pdf"}

// elsewhere are files of these packages that none of them leads to.
var elsewhere = map[string][]string{
	"assess":     {"decode.go", "decoder.go", "demonstration.go", "encode.go", "format.go", "interviewtime.go", "kind.go", "object.go", "recommendation.go", "when.go"},
	"report":     {"account.go", "accuracy.go", "checkcode.go", "compare.go"},
	"rules/cost": {"price.go", "pricelist.go"},
}

// Interview, page, cautions and letter are whole in every language there is, by
// its file alone: every message written in their packages has a row.
func TestInterviewAndPageAreInEveryLanguage(t *testing.T) {
	for _, tag := range catalog.Languages() {
		needWords(t, tag, func(file string) bool {
			file, _ = filepath.Rel(filepath.Join("..", ".."), file)
			file = filepath.ToSlash(file)
			folder, name := path.Split(file)
			folder = path.Clean(folder)
			return slices.Contains(spokenRooms, file) || slices.Contains(spokenRooms, folder) && !slices.Contains(elsewhere[folder], name)
		})
	}
}

// needWords fails for every message in some files that a language has no row for.
func needWords(t *testing.T, tag string, in func(file string) bool) {
	t.Helper()
	root, err := filepath.Abs(".")
	if err != nil {
		t.Fatal(err)
	}
	var lacking []string
	held := 0
	for id, places := range identifiers(t) {
		here := slices.IndexFunc(places, func(place string) bool {
			file, _, _ := strings.Cut(place, ":")
			file, err := filepath.Rel(root, file)
			return err == nil && in(file)
		})
		if here < 0 || !letter.MatchString(string(id)) || strings.HasPrefix(string(id), "@") {
			continue
		}
		if held++; !catalog.For(tag).Has(id) {
			lacking = append(lacking, places[here]+": "+string(id))
		}
	}
	slices.Sort(lacking)
	for _, l := range lacking {
		t.Errorf("no words of %s: %s", tag, l)
	}
	t.Logf("%s: %d messages", tag, held)
}
