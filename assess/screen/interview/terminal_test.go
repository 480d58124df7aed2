//go:build unix

package interview

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/screen/screentest"
)

// terminal is the interview running in a terminal of its own.
type terminal struct {
	*screentest.Terminal
	file string // of the visit
}

// start runs the interview in a terminal of 80 × 24. A mute one never replies
// to a query.
func start(t *testing.T, mute bool, env ...string) *terminal {
	t.Helper()
	file := filepath.Join(t.TempDir(), "visit.json")
	cmd := screentest.Self(append(env, envVisit+"="+file)...)
	return &terminal{screentest.Start(t, cmd, screentest.Options{Mute: mute}), file}
}

// leaves waits until the program is over, and returns the visit it kept.
func (x *terminal) leaves() *assess.Visit {
	x.T.Helper()
	x.Ends()
	data, err := os.ReadFile(x.file)
	if err != nil {
		x.T.Fatal(err)
	}
	v, _, err := assess.Decode(data)
	if err != nil {
		x.T.Fatal(err)
	}
	return v
}

func TestTerminalManyAnswersInOneWrite(t *testing.T) {
	x := start(t, false)
	x.Sees("Do you work in millimetres or inches?")
	x.Types("1\r1\r")
	x.Sees("What is the thickest mild steel")
	x.Types("12 mm")
	x.Sees("› 12 mm")
	x.Types("\x03")
	v := x.leaves()
	if got := v.Answers[0].Chosen; len(got) != 1 || got[0] != "mm" {
		t.Errorf("units %v", got)
	}
	if got := v.Answers[len(v.Answers)-1].Said; got != "12 mm" {
		t.Errorf("what was typed last is kept as %q", got)
	}
	if !strings.Contains(x.Written(), "kept in") {
		t.Error("nothing said after leaving")
	}
}

func TestTerminalBracketedPaste(t *testing.T) {
	x := start(t, false)
	x.Sees("Do you work in millimetres or inches?")
	x.Types("\x1b[200~1\n1, 3\n12 mm\n\x1b[201~")
	x.Sees("Is this repair work")
}

// A terminal that never replies gets its first frame all the same, and no
// question it could leave unanswered.
func TestTerminalThatNeverReplies(t *testing.T) {
	x := start(t, true)
	x.Sees("Do you work in millimetres or inches?")
	x.AskedNothing()
}

func TestTerminalWithoutColour(t *testing.T) {
	x := start(t, false, "NO_COLOR=1")
	x.Types("11\r")
	x.Sees("› _")
	x.Types("3/8")
	x.Sees("› 3/8_")
	x.IsPlain()
}

func TestTerminalResizedAtAQuestion(t *testing.T) {
	x := start(t, false)
	x.Sees("Do you work in millimetres or inches?")
	x.Types("11\r12")
	x.Sees("› 12")
	x.Resize(60, 20)
	x.Types(" mm")
	x.Sees("› 12 mm")
}

func TestTerminalToldToEnd(t *testing.T) {
	for _, sig := range []syscall.Signal{syscall.SIGTERM, syscall.SIGHUP, syscall.SIGINT} {
		x := start(t, false)
		x.Sees("Do you work in millimetres or inches?")
		x.Types("11\r12")
		x.Sees("› 12")
		x.Cmd.Process.Signal(sig)
		if v := x.leaves(); len(v.Answers) != 3 || v.Answers[2].Said != "12" {
			t.Errorf("%v: kept %+v", sig, v.Answers)
		}
	}
}
