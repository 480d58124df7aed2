package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/txtar"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
)

var updateGolden = flag.Bool("update-golden", false, "record the outputs of all commands anew; every difference belongs in the commit")

// TestGolden holds every command's output over every sample visit, every worked
// visit in testdata/case, and every help page to what was recorded: a step that
// only moves code changes no byte. The files are text, compressed; a failure
// shows the first lines that differ, and GOLDEN_DIR=DIR writes both texts there.
func TestGolden(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("paths are recorded as POSIX writes them")
	}
	root, err := filepath.Abs(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	for name, record := range goldenGroups {
		for _, words := range []string{"", "de"} {
			name := strings.TrimSuffix(name+"."+words, ".")
			t.Run(name, func(t *testing.T) {
				g := &golden{root: root, work: t.TempDir(), words: words}
				t.Chdir(g.work)
				record(t, g)
				g.compare(t, filepath.Join(root, "testdata", "golden", name+".txt.gz"))
			})
		}
	}
}

// goldenGroups record command lines. Each does so in English, and once more in
// German.
var goldenGroups = map[string]func(t *testing.T, g *golden){
	"help": goldenHelp, "documents": goldenDocuments, "samples": goldenSamples, "cases": goldenCases,
	"folder": goldenFolder, "dialogues": goldenDialogues, "scripts": goldenScripts,
}

// forPrograms are outputs that are the same in every language.
var forPrograms = regexp.MustCompile(`--format (json|csv|ndjson|ics)|^(schema|redact|completion) ?`)

// golden gathers the outputs of one group.
type golden struct {
	root, work string
	words      string // of every command line; "" for those it names itself, or English
	text       strings.Builder
}

// run records one command line, given its standard input.
func (g *golden) run(t *testing.T, stdin string, args ...string) {
	t.Helper()
	if g.words != "" {
		if slices.Contains(args, "--words") || forPrograms.MatchString(strings.Join(args, " ")) {
			return // recorded in English
		}
		args = append(args, "--words", g.words)
	}
	var out, errs bytes.Buffer
	w := fixedEnvironment()
	w.args, w.in, w.out, w.err = args, strings.NewReader(stdin), &out, &errs
	w.getenv = func(name string) string {
		switch name {
		case "HOME":
			return g.work
		case "TERM":
			return "dumb"
		}
		return ""
	}
	a := &app{environment: w}
	status := a.execute()
	fmt.Fprintf(&g.text, "=== cutbrief %s\n", strings.ReplaceAll(strings.Join(args, " "), g.root, "ROOT"))
	if status != 0 {
		fmt.Fprintf(&g.text, "--- status %d\n", status)
	}
	g.show(out.Bytes())
	if errs.Len() > 0 {
		fmt.Fprintf(&g.text, "--- standard error\n")
		g.show(errs.Bytes())
	}
}

// passing are figures of this machine and this day: free space, and how many texts
// there are.
var passing = regexp.MustCompile(`[0-9][0-9.,]* (GB|MB|entries|texts|Einträge|Texte)`)

// show records what was written; what is no text by its digest.
func (g *golden) show(data []byte) {
	if bytes.HasPrefix(data, []byte("%PDF")) {
		sum := sha256.Sum256(data)
		fmt.Fprintf(&g.text, "a page, %d bytes, %s\n", len(data), hex.EncodeToString(sum[:]))
		return
	}
	text := strings.ReplaceAll(string(data), g.work, "WORK")
	g.text.WriteString(passing.ReplaceAllString(strings.ReplaceAll(text, g.root, "ROOT"), "N $1"))
	if !strings.HasSuffix(text, "\n") && text != "" {
		g.text.WriteString("\n(no end of line)\n")
	}
}

// file records what a command wrote to a file, and takes the file away.
func (g *golden) file(t *testing.T, name string) {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		fmt.Fprintf(&g.text, "--- no file %s\n", name)
		return
	}
	fmt.Fprintf(&g.text, "--- file %s\n", name)
	g.show(data)
	os.Remove(name)
}

func (g *golden) compare(t *testing.T, path string) {
	t.Helper()
	got := g.text.String()
	if strings.Contains(got, "is no argument of a message") {
		t.Error("a message is filled with what it cannot print")
	}
	if *updateGolden {
		var packed bytes.Buffer
		z, _ := gzip.NewWriterLevel(&packed, gzip.BestCompression)
		io.WriteString(z, got)
		z.Close()
		os.MkdirAll(filepath.Dir(path), 0o777)
		if err := os.WriteFile(path, packed.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	if want := goldenText(t, path); got != want {
		if dir := os.Getenv("GOLDEN_DIR"); dir != "" {
			base := filepath.Join(dir, strings.TrimSuffix(filepath.Base(path), ".txt.gz"))
			os.WriteFile(base+".want.txt", []byte(want), 0o666)
			os.WriteFile(base+".got.txt", []byte(got), 0o666)
		}
		t.Error(firstDifferences(want, got))
	}
}

// goldenText is the text of a recorded file.
func goldenText(t *testing.T, path string) string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	data, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// firstDifferences shows, command by command, the first line that differs, for
// the first few commands that do.
func firstDifferences(want, got string) string {
	const most = 8
	var out strings.Builder
	wants, gots := strings.Split(want, "\n=== "), strings.Split(got, "\n=== ")
	shown := 0
	for i := range max(len(wants), len(gots)) {
		var w, g string
		if i < len(wants) {
			w = wants[i]
		}
		if i < len(gots) {
			g = gots[i]
		}
		if w == g {
			continue
		}
		if shown++; shown > most {
			continue
		}
		wl, gl := strings.Split(w, "\n"), strings.Split(g, "\n")
		k := 0
		for k < len(wl) && k < len(gl) && wl[k] == gl[k] {
			k++
		}
		fmt.Fprintf(&out, "%s, line %d:\n", wl[0], k)
		fmt.Fprintf(&out, "  want %q\n  got  %q\n", lineAt(wl, k), lineAt(gl, k))
	}
	if shown > most {
		fmt.Fprintf(&out, "and %d more commands differ\n", shown-most)
	}
	return out.String()
}

func lineAt(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return "(nothing)"
}

func goldenHelp(t *testing.T, g *golden) {
	for _, c := range commands(t) {
		g.run(t, "", append(strings.Fields(c.CommandPath())[1:], "--help")...)
	}
}

// goldenDocuments records what is printed without a visit.
func goldenDocuments(t *testing.T, g *golden) {
	for _, line := range []string{
		"rules", "rules --format markdown", "formats visit", "formats systems", "formats prices", "formats cases", "formats words",
		"formats visit --format markdown", "guide", "guide rep", "guide trainee", "guide manager", "guide manager --format markdown", "schema",
		"systems", "systems template", "prices", "prices template", "words",
		"practice template", "practice --list", "practice --report", "practice --report --format json", "sample --list",
		"completion bash", "completion zsh", "completion fish", "completion powershell",
	} {
		g.run(t, "", strings.Fields(line)...)
	}
	g.run(t, "", "manual", "man")
	pages, _ := filepath.Glob(filepath.Join("man", "*"))
	slices.Sort(pages)
	for _, page := range pages {
		g.file(t, page)
	}
}

// goldenSamples records all commands over every invented visit.
func goldenSamples(t *testing.T, g *golden) {
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		keepVisit(t, v, "visit.json")
		for _, line := range []string{
			"brief visit.json --format text", "brief visit.json --with checklist,working --format text --words es", "brief visit.json --format markdown --units in",
			"brief visit.json --format json", "brief visit.json --with checklist,working --format text",
			"brief visit.json --out -", "brief visit.json --paper letter --units in --with checklist,working,pictures --out -",
			"why visit.json", "why visit.json --format json", "next visit.json", "next visit.json --format json",
			"compare visit.json", "compare visit.json --format json --units in",
			"cost visit.json", "cost visit.json --format csv", "cost visit.json --format json",
			"rehearse visit.json --plain", "followup visit.json", "followup visit.json --words es", "followup visit.json --format ics", "redact visit.json",
		} {
			g.run(t, "", strings.Fields(line)...)
		}
	}
}

// goldenCases records what a rep sees of every worked visit.
func goldenCases(t *testing.T, g *golden) {
	files, err := filepath.Glob(filepath.Join(g.root, "testdata", "case", "*.txt"))
	if err != nil || len(files) < 40 {
		t.Fatalf("%d worked visits (%v); want 40 or more", len(files), err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".txt") + ".json"
		keepVisit(t, workedVisit(t, file), name)
		for _, line := range []string{"brief %s --format text", "brief %s --format json", "why %s", "next %s", "compare %s", "cost %s"} {
			g.run(t, "", strings.Fields(fmt.Sprintf(line, name)+" --systems "+filepath.Join(g.root, "testdata", "case", "range.csv"))...)
		}
	}
}

// goldenFolder records the reviews of a folder of visits.
func goldenFolder(t *testing.T, g *golden) {
	os.Mkdir("visits", 0o777)
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		keepVisit(t, v, filepath.Join("visits", name+".json"))
	}
	files, _ := filepath.Glob(filepath.Join(g.root, "testdata", "case", "*.txt"))
	for _, file := range files {
		keepVisit(t, workedVisit(t, file), filepath.Join("visits", strings.TrimSuffix(filepath.Base(file), ".txt")+".json"))
	}
	os.WriteFile(filepath.Join("visits", "broken.json"), []byte("{"), 0o666)
	if files, _ := filepath.Glob(filepath.Join("visits", "*")); len(files) > 0 {
		for _, file := range files { // one time for all, so that no clock shows
			at := time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)
			os.Chtimes(file, at, at)
		}
	}
	for _, line := range []string{
		"review visits --sort company,file", "review visits --sort company,file --format csv", "review visits --sort company,file --format json", "review visits --sort file --format ndjson",
		"review visits --sort file --format markdown", "review visits --sort file --fields file,flags,reasons", "review visits --sort file --fields file,unanswered,interview,month", "review visits --tally", "review visits --tally --by rep", "review visits --tally --quote",
		"review visits --by critical", "review visits --by system", "review visits --by metals", "review visits --by month", "review visits --by verdict", "review visits --measured",
		"review visits --tally --format json", "review visits --tally --format csv", "review visits --format pdf --out -", "review visits --format pdf --by rep --paper letter --out -",
	} {
		g.run(t, "", strings.Fields(line)...)
	}
	g.run(t, "", "review", "visits", "--sort", "file", "--where", "verdict = open and thickest > 10 mm")
}

// goldenDialogues records whole conversations in plain lines.
func goldenDialogues(t *testing.T, g *golden) {
	empty := strings.Repeat("\n", 60)
	answered := "Orvenby Yard\nhelp\nnot known\n\nmild steel, stainless\n3/8 in\nhalf a thumb\n1/2 in\nnone\n\n\n6 to 10\nmaintenance\nlist\nback\nnote a quick one\nresult\n"
	for _, words := range []string{"en", "de", "es"} { // what may be typed differs
		for i, stdin := range []string{empty, answered + empty, strings.Repeat("not known\n", 60)} {
			file := fmt.Sprintf("new-%s-%d.json", words, i)
			v := assess.New("visit-1", fixedEnvironment().now())
			keepVisit(t, v, file)
			g.run(t, stdin, "interview", file, "--plain", "--words", words)
			g.file(t, file)
		}
	}
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		keepVisit(t, v, "visit.json")
		g.run(t, "result\nlist\nquit\n", "interview", "visit.json", "--plain")
		g.run(t, strings.Repeat("good\n", 30), "record", "visit.json")
		g.file(t, "visit.json")
	}
	practised := strings.Repeat("ask\nask\n2\nnext\n", 12) + "so far\nlist\nback\nmeasure\n6 mm\nnot known\ndone\n" + strings.Repeat("1\n", 12)
	for _, name := range []string{"gate-maker", "bench-top", "trade-school", "duct-gauge", "half-of-what", "busy-yard", "load-the-lorry", "grating-walk",
		"top-of-the-list", "own-pocket", "the-wrong-socket", "only-speed", "pasture-fence", "ship-plates"} {
		g.run(t, practised, "practice", "--plain", "--case", name)
	}
	g.run(t, practised, "practice", "--plain", "--seed", "17", "--level", "3")
	g.run(t, "", "practice", "--report")
}

// scripted is a command line in a script, by itself or in a line for a shell.
var scripted = regexp.MustCompile(`^[^#]*?cutbrief ([^;|>"$]*)`)

// elsewhereRecorded are command lines whose long output other groups have, or that
// print every message there is.
var elsewhereRecorded = regexp.MustCompile(`^(many|schema|rules( --format markdown)?$|words template|words check (stray|converted))|--format json`)

// goldenScripts records every command line of testdata/script, among the files of
// its archive: errors most of all. What a shell does between them is left out.
func goldenScripts(t *testing.T, g *golden) {
	archives, _ := filepath.Glob(filepath.Join(g.root, "testdata", "script", "*.txtar"))
	for _, path := range archives {
		archive, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		os.RemoveAll(g.work)
		for _, f := range slices.Concat(archive.Files, []txtar.File{{Name: "visit.json", Data: invented(t)}, {Name: "shown.json", Data: shown(t)}}) {
			os.MkdirAll(filepath.Dir(filepath.Join(g.work, f.Name)), 0o777)
			os.WriteFile(filepath.Join(g.work, f.Name), f.Data, 0o666)
		}
		t.Chdir(g.work)
		stdin := ""
		for line := range strings.Lines(string(archive.Comment)) {
			words := strings.Fields(line)
			switch command := scripted.FindStringSubmatch(line); {
			case len(words) == 2 && words[0] == "stdin":
				data, _ := os.ReadFile(words[1])
				stdin = string(data)
			case len(words) == 2 && words[0] == "mkdir":
				os.MkdirAll(words[1], 0o777)
			case len(words) == 3 && words[0] == "cp":
				if data, err := os.ReadFile(words[1]); err == nil {
					os.WriteFile(words[2], data, 0o666)
				}
			case command != nil && !elsewhereRecorded.MatchString(command[1]):
				g.run(t, stdin, quotedWords(command[1])...)
				stdin = ""
			}
		}
	}
}

// quotedWords are the words of a command line; one in quotes may hold spaces.
func quotedWords(line string) []string {
	words := []string{}
	for i, part := range strings.Split(line, "'") {
		if i%2 == 1 {
			words = append(words, part)
		} else {
			words = append(words, strings.Fields(part)...)
		}
	}
	return words
}

func keepVisit(t *testing.T, v *assess.Visit, name string) {
	t.Helper()
	data, err := v.Encode()
	if err == nil {
		err = os.WriteFile(name, data, 0o666)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// workedVisit is the visit that a file in testdata/case describes, made on the
// day of the recorded outputs.
func workedVisit(t *testing.T, file string) *assess.Visit {
	v := caseVisit(t, file)
	v.Created = fixedEnvironment().now()
	return v
}
