package main

import (
	"io/fs"
	"iter"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/rogpeppe/go-internal/txtar"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules/cite"
	"cutbrief/rules/cost"
	"cutbrief/rules/message/catalog"
)

// No English is left where people read another language: what every command says
// in German, as TestGolden records it, and the page in Spanish of every sample and
// worked visit. English is a word that English cannot do without, or two words
// side by side that the catalog has in its English column alone.
//
// Some texts stay as they are, each by a rule: titles of sources; what was typed,
// and what a file says (foreignTexts); what stands in quotes; filters and command
// lines; templates, which are files. Identifiers that files and programs use are
// single words, or hold a sign that no sentence has.
func TestNoEnglishIsLeft(t *testing.T) {
	foreign := foreignTexts(t)
	t.Run("de", func(t *testing.T) {
		only := englishOnly()
		for _, r := range inGolden(t, ".de.txt.gz") {
			if !fillIn.MatchString(r.line) {
				noEnglish(t, r, foreign, only)
			}
		}
	})
	t.Run("es", func(t *testing.T) {
		g := &golden{work: t.TempDir(), words: "es"}
		var err error
		if g.root, err = filepath.Abs(filepath.Join("..", "..")); err != nil {
			t.Fatal(err)
		}
		t.Chdir(g.work)
		for _, name := range casebook.DemoVisits() {
			v, _ := casebook.DemoVisit(name)
			keepVisit(t, v, "visit.json")
			g.run(t, "", strings.Fields("brief visit.json --with checklist,working --format text")...)
			g.run(t, "", "followup", "visit.json")
		}
		files, _ := filepath.Glob(filepath.Join(g.root, "testdata", "case", "*.txt"))
		for _, file := range files {
			keepVisit(t, workedVisit(t, file), "visit.json")
			g.run(t, "", "brief", "visit.json", "--format", "text", "--systems", filepath.Join(g.root, "testdata", "case", "range.csv"))
		}
		for _, r := range records(g.text.String()) {
			noEnglish(t, r, foreign, nil)
		}
	})
}

// A figure has a decimal comma in German, and a day no name of a month in English.
func TestFiguresAreGerman(t *testing.T) {
	foreign := foreignTexts(t)
	for _, r := range inGolden(t, ".de.txt.gz") {
		if fillIn.MatchString(r.line) {
			continue
		}
		for _, found := range englishFigure.FindAllString(foreign.Replace(onOneLine(r.said())), 3) {
			t.Errorf("%s: %q", r.line, found)
		}
	}
}

// english are words that no German or Spanish text has.
var english = wordSet("the of and with your this that which are is from not have been than what does only where when or by if to")

var (
	// englishFigure is a figure with a point before decimals, and its unit, or a day
	// with a month.
	englishFigure = regexp.MustCompile(`[0-9]\.([0-9]{1,2}|[0-9]{4,}) (mm|cm|m|in|A|V|kW|kVA|bar|l/min|kg|min|s|%|EUR|h|Zoll|Fuß)\b|[0-9] (January|February|March|May|June|July|October|December)`)

	// fillIn is a command whose output is a file to fill in, or is for a shell.
	fillIn = regexp.MustCompile(`^\S+ (template|convert)|^__complete`)

	// recordingMark is a line that the recording adds.
	recordingMark = regexp.MustCompile(`(?m)^(--- .*|a page, .*|\(no end of line\))$`)

	// asTyped is a line that is typed: a filter, a command.
	asTyped = regexp.MustCompile(`--where|[a-z] (!?=|<=?|>=?|~) ["?0-9a-z]|and or not|cutbrief [a-z]|^\s*(and|or|not) `)

	// quotedText is what is typed or stands in a file; a row that is no text; a row of
	// identifiers; and, in a list of identifiers, the one that is a word English cannot do without.
	quotedText = regexp.MustCompile(`"[^"\n]*"|„[^“\n]*“|@[a-z]+ [a-z]+|\|( [a-z]+ \|){5,}|when,\s+budget|\| when \||\nwhen\n`)
)

// saidBy is a command line and what was recorded of it.
type saidBy struct{ line, text string }

// records are the commands of a recorded text.
func records(text string) (list []saidBy) {
	for block := range strings.SplitSeq(text, "=== cutbrief ") {
		line, said, _ := strings.Cut(block, "\n")
		list = append(list, saidBy{line, said})
	}
	return list
}

// inGolden are the commands of the recorded files with an ending.
func inGolden(t *testing.T, ending string) (list []saidBy) {
	t.Helper()
	files, _ := filepath.Glob(filepath.Join("..", "..", "testdata", "golden", "*"+ending))
	for _, file := range files {
		list = append(list, records(goldenText(t, file))...)
	}
	if len(list) < 500 {
		t.Fatalf("%d commands are recorded", len(list))
	}
	return list
}

// said is what people read of it: no saved file, no mark of the recording.
func (r saidBy) said() string {
	text, _, _ := strings.Cut(r.text, "--- file visit")
	return recordingMark.ReplaceAllString(text, "")
}

// noEnglish looks for English in what a command said.
func noEnglish(t *testing.T, r saidBy, foreign *strings.Replacer, only map[string]bool) {
	t.Helper()
	var lines []string
	for line := range strings.Lines(r.said()) {
		if !asTyped.MatchString(line) {
			lines = append(lines, line)
		}
	}
	said := foreign.Replace(onOneLine(quotedText.ReplaceAllString(strings.Join(lines, ""), "…")))
	if strings.HasPrefix(r.line, "formats visit") {
		only = nil // identifiers side by side
	}
	var before string
	end, found := 0, 0
	for at, word := range wordsIn(said) {
		pair := only[before] && only[word] && said[end:at] == " "
		if (pair || english[word]) && found < 3 {
			t.Errorf("%s: %q is English", r.line, said[max(0, at-25):min(len(said), at+25)])
			found++
		}
		before, end = word, at+len(word)
	}
}

// wordsIn are the words of a text in small letters, and where each begins. A word
// with a hyphen, an underscore, a point or a slash inside is one: no sentence has it.
func wordsIn(text string) iter.Seq2[int, string] {
	return func(yield func(int, string) bool) {
		for at := 0; at < len(text); {
			n := strings.IndexFunc(text[at:], func(r rune) bool { return !unicode.IsLetter(r) && !strings.ContainsRune("-_\\./", r) })
			if n < 0 {
				n = len(text) - at
			}
			if word := strings.TrimRight(text[at:at+n], "."); word != "" && !yield(at, strings.ToLower(word)) {
				return
			}
			at += max(n, 1)
		}
	}
}

func wordSet(text string) map[string]bool {
	set := map[string]bool{}
	for _, word := range wordsIn(text) {
		set[word] = true
	}
	return set
}

// englishOnly are the words of the English column of the German catalog that its
// other column, the help and the guides have not.
func englishOnly() map[string]bool {
	var theirs, ours strings.Builder
	for _, r := range catalog.For("de").Rows {
		theirs.WriteString(r.ID + "\n")
		ours.WriteString(r.Words + "\n")
	}
	guides, _ := filepath.Glob(filepath.Join("..", "..", "report", "handbook", "guide", "*.de.md"))
	for _, file := range append(guides, filepath.Join("..", "..", "report", "handbook", "help", "de.md")) {
		data, _ := os.ReadFile(file)
		ours.Write(data)
	}
	list, german := wordSet(theirs.String()), wordSet(ours.String())
	maps.DeleteFunc(list, func(w string, _ bool) bool { return german[w] || len(w) < 3 })
	return list
}

// foreignTexts are the texts that stay as they are in every language: titles of
// sources, what was typed into a visit, the names of invented customers, and what
// stands in quotes, in a cell or behind a colon in a file of a script.
func foreignTexts(t *testing.T) *strings.Replacer {
	var list []string
	add := func(texts ...string) {
		for _, text := range texts {
			for line := range strings.SplitSeq(text, "\n") {
				if line = strings.TrimSuffix(onOneLine(line), "."); strings.Contains(line, " ") {
					list = append(list, line)
				}
			}
		}
	}
	visit := func(v *assess.Visit) {
		for _, a := range v.Answers {
			add(a.Said, a.Note)
		}
		for _, d := range v.Demonstrations {
			add(d.Words, d.Because, d.Next.Step)
			for _, c := range d.Cuts {
				add(c.Why)
			}
			for _, o := range d.Objections {
				add(o.Said, o.Answer)
			}
		}
	}
	for _, s := range cite.All() {
		add(s.Title)
	}
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		visit(v)
	}
	for _, c := range casebook.Cases() {
		visit(c.Facts)
	}
	worked, _ := filepath.Glob(filepath.Join("..", "..", "testdata", "case", "*.txt"))
	for _, file := range worked {
		visit(caseVisit(t, file))
	}
	add(cost.DemoPrices().Place)
	cells := regexp.MustCompile(`"([^"]*)"|([^,":]+)`)
	root := os.DirFS(filepath.Join("..", "..", "testdata"))
	archives, _ := fs.Glob(root, "script/*.txtar")
	for _, name := range archives {
		data, err := fs.ReadFile(root, name)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range txtar.Parse(data).Files {
			if strings.HasPrefix(f.Name, "want") {
				continue // what a command is to say
			}
			for _, cell := range cells.FindAllStringSubmatch(string(f.Data), -1) {
				add(cell[1], cell[2])
			}
		}
	}
	slices.SortFunc(list, func(a, b string) int { return len(b) - len(a) }) // one may hold another
	var pairs []string
	for _, text := range slices.Compact(list) {
		pairs = append(pairs, text, "…")
	}
	return strings.NewReplacer(pairs...)
}

func onOneLine(s string) string {
	return strings.Join(strings.Fields(strings.NewReplacer("“", " ", "”", " ", "|", " ").Replace(s)), " ")
}
