//go:build linux || darwin

package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"cutbrief/assess/screen/screentest"
)

// screens are the pictures in the README: a command, what is waited for and then
// typed, and what is to be on the screen in the end. The last of these stands in
// its corner, as a picture is drawn from the top.
var screens = []struct {
	name  string
	args  []string
	steps [][2]string
	ends  []string
}{
	{"interview-screen", []string{"interview", "first.json"}, nil, []string{"Systems that fit so far", "Ask next", "all keys"}},
	{"result-screen", []string{"interview", "visit.json"}, [][2]string{{"RECOMMENDED SYSTEM", "\x1b[6~"}}, []string{"REQUIREMENTS AND CAPABILITIES", "more above", "q leave"}},
	{"rehearse-screen", []string{"rehearse", "visit.json"}, [][2]string{{"Enter begin", "\r"}}, []string{"Look for", "start the time", "q leave"}},
	{"practice-screen", []string{"practice", "--case", "bench-top"}, [][2]string{{"Which metals", "\x01"}}, []string{"(41 minutes left)", "^C leave"}},
	{"review-screen", []string{"review", "visits"}, nil, []string{"  6 files\n", "6 shown", "q leave"}},
}

// TestReadmeScreens draws them in a terminal of 80 by 24 without colours.
func TestReadmeScreens(t *testing.T) {
	dir := t.TempDir()
	prepare(t, dir)
	drawn := map[string]string{}
	for _, s := range screens {
		drawn[s.name] = picture(t, dir, s.args, s.steps, s.ends)
	}
	compareWithReadme(t, drawn)
}

// prepare puts into a folder what the screens are about: a visit begun, one that
// is complete, and a folder of invented ones.
func prepare(t *testing.T, dir string) {
	t.Helper()
	t.Chdir(dir)
	if err := os.WriteFile("visit.json", invented(t), 0o600); err != nil {
		t.Fatal(err)
	}
	begun := []string{"Alder Vale Repairs", "Mara Lind", "not known", "", "Ossi Berg", "1", "1, 3",
		"3/8 in", "1/2 in", "25 mm", "2 mm", "4 mm", "none", "2"}
	mustRun(t, strings.NewReader(strings.Join(begun, "\n")+"\n"), io.Discard, "interview", "--plain", "first.json")
	var out bytes.Buffer
	mustRun(t, nil, &out, "sample", "--folder", "visits")
}

// passed is the clock of a rehearsal, which runs while the picture is taken.
var passed = regexp.MustCompile(`\b0:\d\d\b`)

// picture is what the terminal shows in the end, without spaces at the ends of
// lines.
func picture(t *testing.T, dir string, args []string, steps [][2]string, ends []string) string {
	t.Helper()
	cmd := exec.Command("cutbrief", args...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "NO_COLOR=1", "HOME="+dir,
		"XDG_DATA_HOME="+filepath.Join(dir, "data"), "XDG_CONFIG_HOME="+filepath.Join(dir, "config"), "XDG_CACHE_HOME="+filepath.Join(dir, "cache"))
	x := screentest.Start(t, cmd, screentest.Options{Width: 80, Height: 24, Patience: 20 * time.Second})
	for _, step := range steps {
		x.Sees(step[0])
		x.Types(step[1])
	}
	x.Sees(ends...)
	shown := x.Text()
	x.Kill()
	var b strings.Builder
	for line := range strings.Lines(shown) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	return strings.TrimRight(passed.ReplaceAllString(b.String(), "0:00"), "\n") + "\n"
}
