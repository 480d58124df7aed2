package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// A mutant is one change of one file.
type mutant struct {
	dir, file string
	from, to  int // the bytes of the expression
	at, end   int // those that are replaced, within it
	text      string
	kind      string // of the expression in Go; empty if it must be built alone
	name      string // dir/file:line:column: old -> new
	key       string // what it is known by when its line has moved: package, function, line, change
	id        string // the same, with the place in the line
}

// apply is the text of the whole file with the change made.
func (m *mutant) apply(source []byte) []byte {
	return slices.Concat(source[:m.at], []byte(m.text), source[m.end:])
}

// mutants are all changes of the files of a package that are no tests.
func mutants(root, dir string, only []string) []*mutant {
	set := token.NewFileSet()
	var trees []*ast.File
	for _, file := range sources(root, dir) {
		trees = append(trees, must(parser.ParseFile(set, file, nil, parser.ParseComments)))
	}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}}
	config := types.Config{Importer: importer.ForCompiler(set, "gc", exports(root, dir))}
	pkg := must(config.Check(dir, set, trees, info))
	var list []*mutant
	for _, tree := range trees {
		file := set.Position(tree.Pos()).Filename
		if len(only) > 0 && !slices.Contains(only, filepath.Base(file)) {
			continue
		}
		f := &finder{set: set, info: info, pkg: pkg, tree: tree, dir: dir, file: file, source: must(os.ReadFile(file))}
		ast.Inspect(tree, f.visit)
		list = append(list, f.found...)
	}
	return list
}

// sources are the files of a package for this system that are no tests.
func sources(root, dir string) (files []string) {
	cmd := exec.Command("go", "list", "-f", "{{range .GoFiles}}{{$.Dir}}/{{.}}\n{{end}}", "./"+dir)
	cmd.Dir = root
	return strings.Fields(string(must(cmd.Output())))
}

// exports finds what the packages that a package imports export.
func exports(root, dir string) importer.Lookup {
	cmd := exec.Command("go", "list", "-export", "-deps", "-json=ImportPath,Export", "./"+dir)
	cmd.Dir = root
	files := map[string]string{}
	for in := json.NewDecoder(bytes.NewReader(must(cmd.Output()))); in.More(); {
		var p struct{ ImportPath, Export string }
		must(p, in.Decode(&p))
		files[p.ImportPath] = p.Export
	}
	return func(path string) (io.ReadCloser, error) { return os.Open(files[path]) }
}

// finder collects the mutants of one file.
type finder struct {
	set       *token.FileSet
	info      *types.Info
	pkg       *types.Package
	tree      *ast.File
	dir, file string
	source    []byte
	found     []*mutant
	constant  int    // how deep in the declaration of constants
	function  string // the declaration at hand
}

func (f *finder) visit(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.ImportSpec:
		return false
	case *ast.ReturnStmt: // what stands beside an error is not used
		if last := len(n.Results) - 1; last > 0 && isError(n.Results[last]) {
			return false
		}
	case *ast.FuncDecl:
		f.function = n.Name.Name
	case *ast.GenDecl:
		if f.set.Position(n.Pos()).Column == 1 {
			f.function = n.Tok.String()
		}
		if n.Tok == token.CONST {
			f.constant++
			for _, spec := range n.Specs {
				ast.Inspect(spec, f.visit)
			}
			f.constant--
			return false
		}
	case ast.Expr:
		f.change(n)
	}
	return true
}

// change adds the mutant of an expression, if there is one.
func (f *finder) change(n ast.Expr) {
	at, old, text := f.other(n)
	if text == "" {
		return
	}
	p, offset := f.set.Position(at), func(p token.Pos) int { return f.set.Position(p).Offset }
	m := &mutant{dir: f.dir, file: f.file, from: offset(n.Pos()), to: offset(n.End()), at: p.Offset, end: p.Offset + len(old), text: text}
	m.name = fmt.Sprintf("%s/%s:%d:%d: %s -> %s", filepath.ToSlash(f.dir), filepath.Base(f.file), p.Line, p.Column, old, text)
	raw := strings.Split(string(f.source), "\n")[p.Line-1]
	line := strings.TrimSpace(raw)
	m.key = strings.Join([]string{filepath.ToSlash(f.dir), f.function, line, old + " -> " + text}, "\t")
	m.id = fmt.Sprintf("%s\t%d", m.key, p.Column-strings.Index(raw, line))
	if kind := f.info.Types[n].Type; kind != nil && f.constant == 0 && !bytes.Contains(f.source[m.from:m.to], []byte("//")) {
		m.kind = f.spell(types.Default(kind))
	}
	f.found = append(f.found, m)
}

// spell is a type as this file writes it; empty if it cannot.
func (f *finder) spell(t types.Type) string {
	known := true
	text := types.TypeString(t, func(p *types.Package) string {
		if p == f.pkg {
			return ""
		}
		for _, spec := range f.tree.Imports {
			if path, _ := strconv.Unquote(spec.Path.Value); path == p.Path() {
				if spec.Name != nil {
					return spec.Name.Name
				}
				return p.Name()
			}
		}
		known = false
		return p.Name()
	})
	if !known {
		return ""
	}
	return text
}

// isError reports a result that is an error for sure: one by that name, or a new one.
func isError(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name == "err" || strings.HasPrefix(e.Name, "Err") || strings.HasPrefix(e.Name, "err")
	case *ast.UnaryExpr:
		return e.Op == token.AND
	}
	return false
}

// others are what an operator is changed to.
var others = map[token.Token]string{
	token.LSS: "<=", token.LEQ: "<", token.GTR: ">=", token.GEQ: ">", token.EQL: "!=", token.NEQ: "==",
	token.LAND: "||", token.LOR: "&&", token.ADD: "-", token.SUB: "+", token.MUL: "/", token.QUO: "*",
}

// units are what a kind of quantity is changed to.
var units = map[string]string{
	"Thickness": "Length", "Length": "Thickness", "Speed": "Length", "Section": "Thickness", "Current": "Voltage", "Voltage": "Current",
	"Power": "ApparentPower", "ApparentPower": "Power", "Flow": "Volume", "Pressure": "Share", "Volume": "Flow", "Weight": "Length",
	"Share": "Pressure", "Angle": "Temperature", "Temperature": "Angle", "Time": "Length", "Price": "Count", "Count": "Price",
	"Up": "Down", "Down": "Up", "Metric": "Inch", "Inch": "Metric",
}

// other says what to put in place of a part of an expression; the text is empty if
// nothing, or nothing that Go takes there.
func (f *finder) other(n ast.Expr) (at token.Pos, old, text string) {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		if b, ok := f.info.Types[n].Type.Underlying().(*types.Basic); ok && b.Info()&types.IsString != 0 {
			return 0, "", "" // texts are put together, never taken apart
		}
		return n.OpPos, n.Op.String(), others[n.Op]
	case *ast.BasicLit:
		return n.Pos(), n.Value, figure(n)
	case *ast.Ident:
		if _, isConst := f.info.Uses[n].(*types.Const); isConst && (n.Name == "true" || n.Name == "false") {
			return n.Pos(), n.Name, strconv.FormatBool(n.Name == "false")
		}
	case *ast.SelectorExpr:
		x, ok := n.X.(*ast.Ident)
		if !ok || x.Name != "unit" || f.info.Types[n].IsType() {
			break
		}
		to := units[n.Sel.Name]
		if of := f.info.Uses[n.Sel]; to != "" && of != nil {
			if other := of.Pkg().Scope().Lookup(to); other != nil && types.Identical(of.Type(), other.Type()) {
				return n.Sel.Pos(), n.Sel.Name, to
			}
		}
	}
	return 0, "", ""
}

// figure is another figure: one more, or a tenth more where it has a point.
func figure(n *ast.BasicLit) string {
	switch n.Kind {
	case token.INT:
		if v, err := strconv.ParseInt(n.Value, 0, 64); err == nil {
			return strconv.FormatInt(v+1, 10)
		}
	case token.FLOAT:
		if v, err := strconv.ParseFloat(n.Value, 64); err == nil && v != 0 {
			return strconv.FormatFloat(v*1.1, 'g', -1, 64)
		}
	}
	return ""
}
