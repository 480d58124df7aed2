//go:build unix

package interview

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"cutbrief/assess"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// patience is how long a test waits for a text before it gives up. It is less
// than the five seconds a terminal that never replies would cost.
const patience = 4 * time.Second

// terminal is the interview running in a terminal of its own.
type terminal struct {
	t    *testing.T
	cmd  *exec.Cmd
	pty  *os.File
	file string // of the visit
	over chan struct{}

	mu     sync.Mutex // guards raw and screen
	raw    bytes.Buffer
	screen *vt.Emulator
	news   chan struct{}
}

// start runs the interview in a terminal of 80 × 24. A mute one never replies
// to a query.
func start(t *testing.T, mute bool, env ...string) *terminal {
	t.Helper()
	x := &terminal{t: t, file: filepath.Join(t.TempDir(), "visit.json"), over: make(chan struct{}), news: make(chan struct{}, 1)}
	x.cmd = exec.Command(os.Args[0])
	x.cmd.Env = append([]string{envVisit + "=" + x.file, "TERM=xterm-256color", "PATH=" + os.Getenv("PATH")}, env...)
	f, err := pty.StartWithSize(x.cmd, &pty.Winsize{Rows: 24, Cols: 80})
	if err != nil {
		t.Skip("no pseudo-terminal here:", err)
	}
	x.pty = f
	x.screen = vt.NewEmulator(80, 24)
	replies := io.Writer(f)
	if mute {
		replies = io.Discard
	}
	go io.Copy(replies, x.screen)
	go x.read()
	t.Cleanup(x.end)
	return x
}

func (x *terminal) end() {
	x.cmd.Process.Kill()
	<-x.over
	x.pty.Close()
}

func (x *terminal) read() {
	defer close(x.over)
	buf := make([]byte, 4096)
	for {
		n, err := x.pty.Read(buf)
		x.mu.Lock()
		x.raw.Write(buf[:n])
		x.screen.Write(buf[:n])
		x.mu.Unlock()
		select {
		case x.news <- struct{}{}:
		default:
		}
		if err != nil {
			x.cmd.Wait()
			return
		}
	}
}

func (x *terminal) written() string {
	x.mu.Lock()
	defer x.mu.Unlock()
	return x.raw.String()
}

func (x *terminal) text() string {
	x.mu.Lock()
	defer x.mu.Unlock()
	return x.screen.String()
}

// waitFor waits until the screen shows a text.
func (x *terminal) waitFor(text string) {
	x.t.Helper()
	late := time.After(patience)
	for !strings.Contains(x.text(), text) {
		select {
		case <-x.news:
		case <-late:
			x.t.Fatalf("%q never came:\n%s", text, x.text())
		}
	}
}

// leaves waits until the program is over, and returns the visit it kept.
func (x *terminal) leaves() *assess.Visit {
	x.t.Helper()
	select {
	case <-x.over:
	case <-time.After(patience):
		x.t.Fatalf("still running:\n%s", x.text())
	}
	data, err := os.ReadFile(x.file)
	if err != nil {
		x.t.Fatal(err)
	}
	v, _, err := assess.Decode(data)
	if err != nil {
		x.t.Fatal(err)
	}
	return v
}

func (x *terminal) types(s string) {
	x.t.Helper()
	if _, err := io.WriteString(x.pty, s); err != nil {
		x.t.Fatal(err)
	}
}

func TestTerminalManyAnswersInOneWrite(t *testing.T) {
	x := start(t, false)
	x.waitFor("Which company is this for?")
	x.types("Job1\rMarta\rMill Lane\r2026-11-25\rJo\r1\r1\r3/8\r")
	x.waitFor("What is the thickest mild steel")
	x.types("12 mm")
	x.waitFor("› 12 mm")
	x.types("\x03")
	v := x.leaves()
	if got := v.Answers[0].Said; got != "Job1" {
		t.Errorf("company %q", got)
	}
	if got := v.Answers[len(v.Answers)-1].Said; got != "12 mm" {
		t.Errorf("what was typed last is kept as %q", got)
	}
	if !strings.Contains(x.written(), "kept in") {
		t.Error("nothing said after leaving")
	}
}

func TestTerminalBracketedPaste(t *testing.T) {
	x := start(t, false)
	x.waitFor("Which company is this for?")
	x.types("\x1b[200~Job1\nMarta\nMill Lane\n\x1b[201~")
	x.waitFor("What is the date of the visit?")
}

// A terminal that never replies gets its first frame all the same, and no
// question it could leave unanswered.
func TestTerminalThatNeverReplies(t *testing.T) {
	x := start(t, true)
	x.waitFor("Which company is this for?")
	for _, query := range []string{"\x1b]11;?", "\x1b]10;?", "\x1b[6n", "\x1b[c"} {
		if strings.Contains(x.written(), query) {
			t.Errorf("the terminal is asked %q", query)
		}
	}
}

var colour = regexp.MustCompile(`\x1b\[[0-9;]*m`)

func TestTerminalWithoutColour(t *testing.T) {
	x := start(t, false, "NO_COLOR=1")
	x.waitFor("› _")
	x.types("Job")
	x.waitFor("› Job_")
	for _, seq := range colour.FindAllString(x.written(), -1) {
		if seq != "\x1b[m" && seq != "\x1b[0m" {
			t.Errorf("a style is written: %q", seq)
		}
	}
}

func TestTerminalResizedAtAQuestion(t *testing.T) {
	x := start(t, false)
	x.waitFor("Which company is this for?")
	x.types("Alder")
	x.waitFor("› Alder")
	x.mu.Lock()
	x.screen.Resize(60, 20)
	x.mu.Unlock()
	if err := pty.Setsize(x.pty, &pty.Winsize{Rows: 20, Cols: 60}); err != nil {
		t.Fatal(err)
	}
	x.types(" Works")
	x.waitFor("› Alder Works")
}

func TestTerminalToldToEnd(t *testing.T) {
	for _, sig := range []syscall.Signal{syscall.SIGTERM, syscall.SIGHUP, syscall.SIGINT} {
		x := start(t, false)
		x.waitFor("Which company is this for?")
		x.types("Job1\rMar")
		x.waitFor("› Mar")
		x.cmd.Process.Signal(sig)
		if v := x.leaves(); len(v.Answers) != 2 || v.Answers[1].Said != "Mar" {
			t.Errorf("%v: kept %+v", sig, v.Answers)
		}
	}
}
