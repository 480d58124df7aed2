package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"

	"cutbrief/report/handbook"
)

// notRun are the blocks of commands in the documents that no test runs, by their
// first line, with the reason.
var notRun = map[string]string{
	"go run ./cmd/cutbrief sample":           "builds the whole program and runs every test; .ci/run does, in a clean clone",
	"go test ./cmd/cutbrief -run TestGolden": "runs tests within tests; TestTestsNamedInTheDocumentsExist looks for what it names",
	"go run ./cmd/pack dist":                 "builds for every system, which takes minutes; .ci/run does",
}

// fenced is a block of commands in a document.
var fenced = regexp.MustCompile("(?ms)^```sh\n(.*?)^```$")

// block is one block of commands and where it stands.
type block struct{ document, text string }

// blocks are those of the documents and of the guides. Those of one document are
// run one after the other in one folder, as its reader would.
func blocks(t *testing.T) map[string][]block {
	t.Helper()
	documents := map[string]string{}
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		data, err := os.ReadFile(filepath.Join("..", "..", name))
		if err != nil {
			t.Fatal(err)
		}
		documents[name] = string(data)
	}
	for _, name := range handbook.Readers() {
		_, markdown := handbook.Guide(name, nil)
		documents["guide "+name] = markdown
	}
	all := map[string][]block{}
	for name, text := range documents {
		if name == "README.md" {
			text = withoutGuides(text) // they are run as documents of their own
		}
		for _, m := range fenced.FindAllStringSubmatch(text, -1) {
			all[name] = append(all[name], block{name, m[1]})
		}
	}
	return all
}

// TestEveryCommandInTheDocumentsRuns follows each document from an empty folder,
// as a newcomer who types every command and says nothing to it.
func TestEveryCommandInTheDocumentsRuns(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the commands are written for a POSIX shell")
	}
	left := map[string]bool{}
	for first := range notRun {
		left[first] = true
	}
	for document, list := range blocks(t) {
		t.Run(document, func(t *testing.T) {
			dir := t.TempDir()
			for _, b := range list {
				if first := firstCommand(b.text); notRun[first] != "" {
					delete(left, first)
					continue
				}
				runBlock(t, dir, b.text)
			}
		})
	}
	for first := range left {
		t.Errorf("no document has a block that begins with %q any more", first)
	}
}

// firstCommand is the first line of a block without its remark.
func firstCommand(text string) string {
	line, _, _ := strings.Cut(text, "\n")
	line, _, _ = strings.Cut(line, "  #")
	return strings.TrimSpace(line)
}

// runBlock runs the lines of a block one by one, each of which must end well.
func runBlock(t *testing.T, dir, text string) {
	t.Helper()
	for line := range strings.Lines(text) {
		cmd := exec.Command("sh", "-c", line)
		cmd.Dir = dir
		cmd.Env = append(os.Environ(), "HOME="+dir, "XDG_DATA_HOME="+filepath.Join(dir, "data"), "XDG_CONFIG_HOME="+filepath.Join(dir, "config"), "XDG_CACHE_HOME="+filepath.Join(dir, "cache"))
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Errorf("%s: %v\n%s", strings.TrimSpace(line), err, out)
		}
	}
}

// typed is a command within a line of a document.
var typed = regexp.MustCompile("`cutbrief ([a-z]+)([^`]*)`")

// TestCommandsNamedInTheDocumentsExist: a document names no command and no flag
// that the program does not have.
func TestCommandsNamedInTheDocumentsExist(t *testing.T) {
	root := commands(t)[0]
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		data, err := os.ReadFile(filepath.Join("..", "..", name))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range typed.FindAllStringSubmatch(string(data), -1) {
			c, _, err := root.Find(append([]string{m[1]}, strings.Fields(m[2])...))
			if err != nil || c == root {
				t.Errorf("%s: %s is no command", name, m[0])
				continue
			}
			for word := range strings.FieldsSeq(m[2]) {
				flag, isFlag := strings.CutPrefix(word, "--")
				flag, _, _ = strings.Cut(flag, "=")
				if isFlag && c.Flags().Lookup(flag) == nil && c.InheritedFlags().Lookup(flag) == nil && flag != "help" {
					t.Errorf("%s: %s: no flag --%s", name, m[0], flag)
				}
			}
		}
	}
}

// tested is a run of some tests, as a document names it.
var tested = regexp.MustCompile("go test \\./(\\S+)[^\n`]*? -(run|bench|fuzz) (\\w+)")

// TestTestsNamedInTheDocumentsExist: what a contributor is told to run runs
// something.
func TestTestsNamedInTheDocumentsExist(t *testing.T) {
	for _, document := range []string{"README.md", "DEVELOPERS.md"} {
		data, err := os.ReadFile(filepath.Join("..", "..", document))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range tested.FindAllStringSubmatch(string(data), -1) {
			files, _ := filepath.Glob(filepath.Join("..", "..", m[1], "*_test.go"))
			var text strings.Builder
			for _, file := range files {
				source, err := os.ReadFile(file)
				if err != nil {
					t.Fatal(err)
				}
				text.Write(source)
			}
			name := regexp.MustCompile(`func (Test|Benchmark|Fuzz)\w*` + strings.TrimPrefix(m[3], "Test"))
			if m[3] != "xxx" && !name.MatchString(text.String()) { // xxx runs none on purpose
				t.Errorf("%s: %s: there is none", document, m[0])
			}
		}
	}
}

// TestEveryCommandIsInTheTable: the README names each command a user can see.
func TestEveryCommandIsInTheTable(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range commands(t)[0].Commands() {
		if !c.Hidden && c.Name() != "help" && !strings.Contains(string(data), "| `cutbrief "+c.Name()) && !strings.Contains(string(data), ", `cutbrief "+c.Name()) {
			t.Errorf("README.md: the table lacks cutbrief %s", c.Name())
		}
	}
}
