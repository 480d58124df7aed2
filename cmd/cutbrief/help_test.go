package main

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/rules/cost"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
)

// TestHelpExamples runs every example that a help text shows, each in a folder
// with the files the examples name.
func TestHelpExamples(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the examples are written for a POSIX shell")
	}
	visit := invented(t)
	for _, c := range commands(t) {
		lines := examples(c.Example)
		if len(lines) == 0 {
			t.Errorf("%s: no example in its help", c.CommandPath())
		}
		for _, line := range lines {
			t.Run(line, func(t *testing.T) { runExample(t, line, visit) })
		}
	}
}

// Help is read on terminals: its paragraphs are broken by hand, as nobody else
// breaks them. Tables are set in by two spaces.
func TestHelpLinesAreShort(t *testing.T) {
	const helpWidth = 89 // characters; our own, common practice
	for _, c := range commands(t) {
		for line := range strings.Lines(c.Long) {
			if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > helpWidth && !strings.HasPrefix(line, "  ") {
				t.Errorf("%s: %d characters in %q", c.CommandPath(), n, line)
			}
		}
	}
}

// commands lists every command a user can see.
func commands(t *testing.T) []*cobra.Command {
	t.Helper()
	w := fixedEnvironment()
	w.out, w.err = io.Discard, io.Discard
	a := &app{environment: w}
	list := []*cobra.Command{a.tree()}
	a.localize(list[0], nil)
	for i := 0; i < len(list); i++ {
		for _, c := range list[i].Commands() {
			if !c.Hidden {
				list = append(list, c)
			}
		}
	}
	return list
}

// examples are the command lines of a help text, without the remarks that
// stand after two or more spaces.
func examples(text string) []string {
	var list []string
	for line := range strings.Lines(text) {
		line, _, _ = strings.Cut(strings.TrimSpace(line), "   ")
		if line != "" {
			list = append(list, line)
		}
	}
	return list
}

// codeOf is what verify reads on a page of a visit.
func codeOf(t *testing.T, visit []byte) string {
	t.Helper()
	v, _, err := assess.Decode(visit)
	if err != nil {
		t.Fatal(err)
	}
	code, err := report.CheckCodeOf(v, system.Demo(), report.Options{}, "a4")
	if err != nil {
		t.Fatal(err)
	}
	return code.String()
}

func runExample(t *testing.T, line string, visit []byte) {
	t.Parallel()
	dir := t.TempDir()
	for name, data := range map[string][]byte{
		"visit.json": visit, "another.json": shown(t), "my-systems.csv": []byte(template()), "my-prices.csv": []byte(cost.PricesTemplate()),
		"page.json": []byte("an older page"), "signed.pdf": []byte(codeOf(t, visit)), "our-words.csv": []byte(catalog.Template("de")),
	} {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"pages", "visits"} {
		if err := os.Mkdir(filepath.Join(dir, name), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "visits", "visit.json"), visit, 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("sh", "-c", line)
	cmd.Dir = dir
	if strings.HasPrefix(line, "cutbrief systems add ") { // from an invented data sheet
		cmd.Stdin = strings.NewReader("shop-46\nShop 46\n1/2 in\n17 mm\n22 mm\n\n\n20\n45 A\n45 A at 50 %\n1 phase 200-240 V max 33 A eff 24 A\n5 cfm\n75 psi\n31 lb\n\n\n\n\n\n")
	}
	cmd.Env = append(os.Environ(), "HOME="+dir, "XDG_DATA_HOME="+dir, "XDG_CONFIG_HOME="+dir)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Errorf("%v\n%s", err, out)
	}
}
