//go:build linux || darwin

package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"cutbrief/assess/casebook"
	"cutbrief/assess/screen/screentest"
)

// terminal is the program on a terminal that shows what it is given and
// answers none of the questions programs put to terminals.
type terminal struct {
	*screentest.Terminal
	dir string
}

// open runs the program in a folder of its own that holds visit.json.
func open(t *testing.T, args ...string) *terminal {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "visit.json"), invented(t), 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("cutbrief", args...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "HOME="+dir, "XDG_DATA_HOME="+dir, "XDG_CONFIG_HOME="+dir)
	return &terminal{screentest.Start(t, cmd, screentest.Options{Mute: true}), dir}
}

// end waits until the program has ended well, and returns all it showed.
func (term *terminal) end() string {
	term.T.Helper()
	if err := term.Ends(); err != nil {
		term.T.Errorf("%v: %q", err, term.Written())
	}
	return term.Written()
}

const ctrlC = "\x03"

// TestInterviewOnMuteTerminal: the first question is there at once although
// the terminal answers nothing, and leaving keeps what was answered.
func TestInterviewOnMuteTerminal(t *testing.T) {
	term := open(t, "interview", "new.json")
	term.Wrote("millimetres or inches")
	term.Types("1")
	term.Wrote("Which metals")
	term.Types(ctrlC)
	shown := term.end()
	for _, want := range []string{"The draft is in new.json.", "To go on: cutbrief interview new.json"} {
		if !strings.Contains(shown, want) {
			t.Errorf("does not say %q: %q", want, shown)
		}
	}
	data, err := os.ReadFile(filepath.Join(term.dir, "new.json"))
	if err != nil || !strings.Contains(string(data), `"mm"`) {
		t.Errorf("the draft holds %q, %v", data, err)
	}
}

// TestLeavingAtOnce: nothing answered, nothing made.
func TestLeavingAtOnce(t *testing.T) {
	term := open(t, "interview", "new.json")
	term.Wrote("millimetres or inches")
	term.Types(ctrlC)
	if shown := term.end(); !strings.Contains(shown, "nothing was saved") {
		t.Errorf("shows %q", shown)
	}
	if _, err := os.Stat(filepath.Join(term.dir, "new.json")); err == nil {
		t.Error("a file was made")
	}
}

// TestLearnFrom: the interview says what orders its questions, whether the flag or
// the configuration names the folder; invented visits do not count.
func TestLearnFrom(t *testing.T) {
	dir := t.TempDir()
	folder := filepath.Join(dir, "team")
	if err := os.MkdirAll(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	for i := range 12 {
		v, _ := casebook.DemoVisit(casebook.DemoVisits()[0])
		v.Demo = i >= 11
		data, err := v.Encode()
		if err == nil {
			err = os.WriteFile(filepath.Join(folder, fmt.Sprint(i, ".json")), data, 0o600)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	d := draw(t, dir, "interview", "--plain", "--learn-from", "team", "new.json")
	d.Sees("follows the answers of 11 visits in team")
	d.Kill()
	if err := os.WriteFile(filepath.Join(dir, "learn-from.txt"), []byte(filepath.Join(dir, "nowhere")+"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	w := fixedEnvironment()
	w.getenv = func(name string) string { return map[string]string{"XDG_CONFIG_HOME": dir}[name] }
	if err := os.Mkdir(filepath.Join(dir, "cutbrief"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(filepath.Join(dir, "learn-from.txt"), filepath.Join(dir, "cutbrief", "learn-from.txt")); err != nil {
		t.Fatal(err)
	}
	var errs bytes.Buffer
	w.args, w.in, w.out, w.err = []string{"interview", "--plain", filepath.Join(dir, "new.json")}, strings.NewReader(""), io.Discard, &errs
	if status := run(w); status == exitDone || !strings.Contains(errs.String(), "learn from") {
		t.Errorf("status %d: %s", status, &errs)
	}
}

// TestInterruptPlain: an interrupt leaves the plain interview like any other
// way of leaving.
func TestInterruptPlain(t *testing.T) {
	term := open(t, "interview", "--plain", "new.json")
	term.Wrote("millimetres or inches")
	term.Types("1\n")
	term.Wrote("Which metals")
	term.Types(ctrlC)
	if shown := term.end(); !strings.Contains(shown, "To go on: cutbrief interview new.json") {
		t.Errorf("shows %q", shown)
	}
}

// interruption interrupts this very process when it is first read, and never
// ends.
type interruption struct{}

func (interruption) Read([]byte) (int, error) {
	if err := syscall.Kill(os.Getpid(), syscall.SIGINT); err != nil {
		return 0, err
	}
	select {}
}

// TestInterruptPrinting: a command with nothing to save ends at once, with the
// status a shell expects.
func TestInterruptPrinting(t *testing.T) {
	w := fixedEnvironment()
	w.args, w.in = []string{"brief", "-", "--format", "text"}, interruption{}
	w.out, w.err = io.Discard, io.Discard
	if status := run(w); status != exitInterrupted {
		t.Errorf("status %d, want %d", status, exitInterrupted)
	}
}

// TestPrintingLeavesTheTerminalAlone: a command that only prints asks the
// terminal nothing, and writes no escape byte even to a terminal with colours.
func TestPrintingLeavesTheTerminalAlone(t *testing.T) {
	for _, test := range []struct {
		args []string
		want string
	}{
		{[]string{"version"}, "cutbrief "},
		{[]string{"--version"}, "cutbrief "},
		{[]string{"--help"}, "interview"},
		{[]string{"brief", "--help"}, "--paper"},
		{[]string{"systems"}, "RATED"},
		{[]string{"systems", "template"}, "rated"},
		{[]string{"schema"}, "$schema"},
		{[]string{"completion", "bash"}, "complete"},
		{[]string{"sample"}, ".pdf"},
		{[]string{"sample", "--list"}, ""},
		{[]string{"brief", "visit.json"}, "visit.pdf"},
		{[]string{"brief", "visit.json", "--format", "text"}, ""},
		{[]string{"brief", "visit.json", "--format", "markdown"}, ""},
		{[]string{"why", "visit.json"}, "need"},
		{[]string{"next", "visit.json"}, ""},
		{[]string{"doctor"}, "on the full screen"},
		{[]string{"guide"}, "Ten minutes"},
		{[]string{"rules"}, "Register of sources"},
		{[]string{"formats", "visit"}, "Questions"},
	} {
		t.Run(strings.Join(test.args, " "), func(t *testing.T) {
			shown := open(t, test.args...).end()
			if !strings.Contains(shown, test.want) {
				t.Errorf("shows %q, want %q in it", shown, test.want)
			}
			if i := strings.IndexByte(shown, 0x1b); i >= 0 {
				t.Errorf("writes an escape byte: %q", shown[i:min(i+20, len(shown))])
			}
		})
	}
}
