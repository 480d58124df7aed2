// Mutate asks whether a test would notice: it changes one comparison, constant,
// arithmetic sign, factor or unit of a package at a time, runs the package's
// tests, and names the changes that none of them notices. The tree is left alone:
// the go command is told to take another text for the file.
//
//	cd testdata/mutate && go run . -sample 150 -seed 1 -also ./rules,./assess rules/size
//
// With -log FILE it goes on where it was stopped.
package main

import (
	"bufio"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"
)

// A mutant is one change of one file.
type mutant struct {
	file     string
	from, to int // the bytes that are replaced
	text     string
	name     string // file:line:column: old -> new
}

// What became of a mutant.
const (
	noticed  = "noticed"
	survived = "SURVIVED"
	unviable = "no Go" // it does not compile, and so is none
)

func main() {
	sample := flag.Int("sample", 0, "how many changes to try of each package, drawn at random; 0 tries all")
	seed := flag.Uint64("seed", 1, "of the draw")
	limit := flag.Duration("timeout", 90*time.Second, "for the tests of one change; one that takes longer is noticed")
	also := flag.String("also", "", "packages whose tests are asked next, with commas between")
	logged := flag.String("log", "", "file to keep the results in, and to go on from")
	root := flag.String("root", "../..", "the module the packages are in")
	flag.Parse()
	t := &trial{root: *root, limit: *limit, done: map[string]string{}}
	if *also != "" {
		t.also = strings.Split(*also, ",")
	}
	if err := t.resume(*logged); err != nil {
		fail(err)
	}
	for _, dir := range flag.Args() {
		if err := t.try(dir, *sample, *seed); err != nil {
			fail(err)
		}
	}
}

func fail(err error) {
	fmt.Fprintln(os.Stderr, "mutate:", err)
	os.Exit(1)
}

// trial runs mutants one after the other.
type trial struct {
	root  string
	limit time.Duration
	also  []string
	done  map[string]string
	log   *os.File
}

// resume reads what is known from a log, and opens it to add to it.
func (t *trial) resume(name string) error {
	if name == "" {
		return nil
	}
	f, err := os.OpenFile(name, os.O_CREATE|os.O_RDWR|os.O_APPEND, 0o644)
	if err != nil {
		return err
	}
	for lines := bufio.NewScanner(f); lines.Scan(); {
		if status, name, ok := strings.Cut(lines.Text(), "\t"); ok {
			t.done[name] = status
		}
	}
	t.log = f
	return nil
}

// try runs the mutants of one package and prints its score.
func (t *trial) try(dir string, sample int, seed uint64) error {
	list, err := mutants(filepath.Join(t.root, dir))
	if err != nil {
		return err
	}
	all := len(list)
	if sample > 0 && sample < len(list) {
		draw := rand.New(rand.NewPCG(seed, 0))
		draw.Shuffle(len(list), func(a, b int) { list[a], list[b] = list[b], list[a] })
		list = list[:sample]
	}
	count := map[string]int{}
	for _, m := range list {
		name := filepath.ToSlash(dir) + "/" + m.name
		status, known := t.done[name]
		if !known {
			if status, err = t.run(dir, m); err != nil {
				return err
			}
			if t.log != nil {
				fmt.Fprintf(t.log, "%s\t%s\n", status, name)
			}
		}
		if count[status]++; status == survived {
			fmt.Println(status, name)
		}
	}
	tried := count[noticed] + count[survived]
	fmt.Printf("%s: %d of %d noticed (%.1f %%), %d drawn of %d, %d no Go\n", dir, count[noticed], tried, 100*float64(count[noticed])/float64(max(tried, 1)), len(list), all, count[unviable])
	return nil
}

// run asks the package's own tests, then the others.
func (t *trial) run(dir string, m mutant) (string, error) {
	work, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(work)
	source, err := os.ReadFile(m.file)
	if err != nil {
		return "", err
	}
	changed := filepath.Join(work, filepath.Base(m.file))
	text := slices.Concat(source[:m.from], []byte(m.text), source[m.to:])
	if err := os.WriteFile(changed, text, 0o644); err != nil {
		return "", err
	}
	original, err := filepath.Abs(m.file)
	if err != nil {
		return "", err
	}
	overlay, err := json.Marshal(map[string]map[string]string{"Replace": {original: changed}})
	if err != nil {
		return "", err
	}
	instead := filepath.Join(work, "overlay.json")
	if err := os.WriteFile(instead, overlay, 0o644); err != nil {
		return "", err
	}
	for _, packages := range [][]string{{"./" + dir}, t.also} {
		if len(packages) == 0 {
			continue
		}
		if status := t.test(instead, packages); status != survived {
			return status, nil
		}
	}
	return survived, nil
}

func (t *trial) test(overlay string, packages []string) string {
	ctx, cancel := context.WithTimeout(context.Background(), t.limit)
	defer cancel()
	cmd := exec.CommandContext(ctx, "go", append([]string{"test", "-vet=off", "-failfast", "-overlay", overlay}, packages...)...)
	cmd.Dir = t.root
	out, err := cmd.CombinedOutput()
	switch {
	case err == nil:
		return survived
	case strings.Contains(string(out), "[build failed]") || strings.Contains(string(out), "[setup failed]"):
		return unviable
	}
	return noticed
}

// mutants are all changes of the files of a folder that are no tests.
func mutants(dir string) ([]mutant, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		return nil, err
	}
	var list []mutant
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, file, nil, 0)
		if err != nil {
			return nil, err
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.ReturnStmt: // what stands beside an error is not used
				if last := len(n.Results) - 1; last > 0 && isError(n.Results[last]) {
					return false
				}
			}
			at, old, text := change(n)
			if text == "" {
				return true
			}
			p := set.Position(at)
			list = append(list, mutant{file, p.Offset, p.Offset + len(old), text, fmt.Sprintf("%s:%d:%d: %s -> %s", filepath.Base(file), p.Line, p.Column, old, text)})
			return true
		})
	}
	return list, nil
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

// change says what to put in place of a node; the text is empty if nothing.
func change(n ast.Node) (at token.Pos, old, text string) {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		return n.OpPos, n.Op.String(), others[n.Op]
	case *ast.BasicLit:
		return n.Pos(), n.Value, figure(n)
	case *ast.Ident:
		if n.Name == "true" || n.Name == "false" {
			return n.Pos(), n.Name, strconv.FormatBool(n.Name == "false")
		}
	case *ast.SelectorExpr:
		if x, ok := n.X.(*ast.Ident); ok && x.Name == "unit" {
			return n.Sel.Pos(), n.Sel.Name, units[n.Sel.Name]
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
