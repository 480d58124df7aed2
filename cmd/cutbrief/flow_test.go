//go:build linux || darwin

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"cutbrief/assess/casebook"
	"cutbrief/assess/screen/screentest"
)

// patience is far longer than the program needs, also where many tests share the
// machine.
const patience = 20 * time.Second

// flows are what people do at the screens, in testdata/flow. One file is walked
// through in a terminal emulated here and in one of tmux.
func flows(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "flow", "*.txt"))
	if err != nil || len(files) < 9 {
		t.Fatalf("flows: %v, %v", files, err)
	}
	return files
}

func readFlow(t *testing.T, file string) screentest.Flow {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return screentest.ReadFlow(filepath.Base(file), string(data))
}

// bench is a folder for a flow: one visit, and a folder of three.
func bench(t *testing.T) (dir string) {
	t.Helper()
	dir = t.TempDir()
	write := func(name string, data []byte) {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write("visit.json", invented(t))
	if err := os.Mkdir(filepath.Join(dir, "visits"), 0o700); err != nil {
		t.Fatal(err)
	}
	for _, name := range casebook.DemoVisits()[:3] {
		v, _ := casebook.DemoVisit(name)
		data, err := v.Encode()
		if err != nil {
			t.Fatal(err)
		}
		write(filepath.Join("visits", name+".json"), data)
	}
	return dir
}

// surroundings are the whole environment of a program in a folder, beside TERM.
func surroundings(dir string, more ...string) []string {
	return append([]string{"PATH=" + os.Getenv("PATH"), "HOME=" + dir, "XDG_DATA_HOME=" + dir, "XDG_CONFIG_HOME=" + dir,
		"XDG_CACHE_HOME=" + dir, raceOptions + "=" + noSleep}, more...)
}

func program(t *testing.T) string {
	t.Helper()
	path, err := exec.LookPath("cutbrief")
	if err != nil {
		t.Fatal(err)
	}
	return path
}

// emulated walks through a flow in the terminal emulated here.
func emulated(t *testing.T, file string, env ...string) *screentest.Emulated {
	t.Helper()
	dir := bench(t)
	who := &screentest.Emulated{T: t, Program: program(t), Dir: dir, Env: surroundings(dir, env...), Patience: patience}
	readFlow(t, file).Go(t, who)
	return who
}

// colours is a terminal that has 256.
const colours = "TERM=xterm-256color"

func TestFlows(t *testing.T) {
	for _, file := range flows(t) {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			t.Parallel()
			term := colours
			if filepath.Base(file) == "dumb.txt" {
				term = "TERM=dumb"
			}
			who := emulated(t, file, term)
			who.AskedNothing()
			if rung := who.Rung(); len(rung) > 0 {
				t.Errorf("the terminal did %q", rung)
			}
		})
	}
}

func TestFlowsInTmux(t *testing.T) {
	screentest.NeedTmux(t)
	for _, file := range flows(t) {
		if filepath.Base(file) == "dumb.txt" {
			continue // tmux says itself what it is
		}
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			t.Parallel()
			dir := bench(t)
			readFlow(t, file).Go(t, &screentest.Tmux{T: t, Program: program(t), Dir: dir, Env: surroundings(dir), Patience: patience})
		})
	}
}

// TestFlowsWithFewColours walks through all that has a style in terminals of every
// kind. With sixteen colours and on every background the text
// has the terminal's own foreground or one that is sure; without colour nothing
// has a style at all.
func TestFlowsWithFewColours(t *testing.T) {
	for name, test := range map[string]struct {
		env     []string
		allowed []string // of what a style may say; nil for no style at all
	}{
		"no colour":        {[]string{colours, "NO_COLOR=1"}, nil},
		"sixteen":          {[]string{"TERM=xterm"}, []string{"0", "1", "2", "7", ""}},
		"light background": {[]string{colours, "COLORFGBG=0;15"}, []string{"0", "1", "2", "7", "", "38;5;98", "38;5;29", "1;38;5;131"}},
		"dark background":  {[]string{colours, "COLORFGBG=15;0"}, []string{"0", "1", "2", "7", "", "38;5;98", "38;5;29", "1;38;5;131"}},
		"all colours":      {[]string{colours, "COLORTERM=truecolor"}, []string{"0", "1", "2", "7", "", "38;5;98", "38;5;29", "1;38;5;131"}},
	} {
		for _, flow := range []string{"styles", "rehearse"} {
			t.Run(name+" "+flow, func(t *testing.T) {
				t.Parallel()
				who := emulated(t, filepath.Join("..", "..", "testdata", "flow", flow+".txt"), test.env...)
				for _, style := range who.Styles() {
					if !slices.Contains(test.allowed, style) && (test.allowed != nil || style != "" && style != "0") {
						t.Errorf("a text has the style %q", style)
					}
				}
			})
		}
	}
}
