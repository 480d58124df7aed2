//go:build unix

package rehearse

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// patience is how long a test waits for a text before it gives up. It is less
// than the five seconds a terminal that never replies would cost.
const patience = 4 * time.Second

// terminal is the rehearsal running in a terminal of its own.
type terminal struct {
	t    *testing.T
	cmd  *exec.Cmd
	pty  *os.File
	over chan struct{}

	mu     sync.Mutex // guards raw and screen
	raw    bytes.Buffer
	screen *vt.Emulator
	news   chan struct{}
}

// start runs the rehearsal in a terminal of 80 × 24. A mute one never replies
// to a query.
func start(t *testing.T, mute bool, env ...string) *terminal {
	t.Helper()
	x := &terminal{t: t, over: make(chan struct{}), news: make(chan struct{}, 1)}
	x.cmd = exec.Command(os.Args[0])
	x.cmd.Env = append([]string{envRun + "=1", "TERM=xterm-256color", "PATH=" + os.Getenv("PATH")}, env...)
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

// leaves waits until the program is over, and returns all that it wrote.
func (x *terminal) leaves() string {
	x.t.Helper()
	select {
	case <-x.over:
	case <-time.After(patience):
		x.t.Fatalf("still running:\n%s", x.text())
	}
	return x.written()
}

func (x *terminal) types(s string) {
	x.t.Helper()
	if _, err := io.WriteString(x.pty, s); err != nil {
		x.t.Fatal(err)
	}
}

// A terminal that never replies gets its first frame all the same. The time of
// a cut is taken by two keys and compared at once: hardly a second where 18 were
// predicted is too fast.
func TestTerminalTimesACut(t *testing.T) {
	x := start(t, true)
	x.waitFor("Takes about 20 min")
	x.types("\r")
	x.waitFor("STRAIGHT CUT, TIMED")
	x.types(" ")
	x.waitFor("Aim at 18.0 s.")
	x.types(" ")
	x.waitFor("TOO FAST")
	x.types("1\r\r")
	x.waitFor("THAT IS THE DEMONSTRATION")
	x.types("k")
	if written := x.leaves(); !strings.Contains(written, "noted 1, keep true, <nil>") {
		t.Errorf("%q", written)
	}
	for _, query := range []string{"\x1b]11;?", "\x1b]10;?", "\x1b[6n", "\x1b[c"} {
		if strings.Contains(x.written(), query) {
			t.Errorf("the terminal is asked %q", query)
		}
	}
}

var colour = regexp.MustCompile(`\x1b\[[0-9;]*m`)

func TestTerminalWithoutColour(t *testing.T) {
	x := start(t, false, "NO_COLOR=1")
	x.waitFor("Takes about 20 min")
	x.types("\r")
	x.waitFor("STRAIGHT CUT, TIMED")
	for _, seq := range colour.FindAllString(x.written(), -1) {
		if seq != "\x1b[m" && seq != "\x1b[0m" {
			t.Errorf("a style is written: %q", seq)
		}
	}
}

func TestTerminalToldToEnd(t *testing.T) {
	for _, sig := range []syscall.Signal{syscall.SIGTERM, syscall.SIGINT} {
		x := start(t, false)
		x.waitFor("Takes about 20 min")
		x.types("\r1")
		x.waitFor("Noted: good")
		x.cmd.Process.Signal(sig)
		if written := x.leaves(); !strings.Contains(written, "noted 1, keep false") {
			t.Errorf("%v: %q", sig, written)
		}
	}
}
