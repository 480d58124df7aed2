//go:build unix

package practice

import (
	"io"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// patience is how long a test waits for a text. It is less than the five
// seconds a terminal that never replies would cost.
const patience = 4 * time.Second

// terminal is the practice running in a terminal of its own, 80 × 24, that
// never replies to a query.
type terminal struct {
	t    *testing.T
	cmd  *exec.Cmd
	pty  *os.File
	over chan struct{}

	mu     sync.Mutex // guards screen and raw
	screen *vt.Emulator
	raw    strings.Builder
	news   chan struct{}
}

func start(t *testing.T, name string) *terminal {
	t.Helper()
	x := &terminal{t: t, over: make(chan struct{}), news: make(chan struct{}, 1), screen: vt.NewEmulator(80, 24)}
	x.cmd = exec.Command(os.Args[0])
	x.cmd.Env = []string{envCase + "=" + name, "TERM=xterm-256color", "PATH=" + os.Getenv("PATH")}
	f, err := pty.StartWithSize(x.cmd, &pty.Winsize{Rows: 24, Cols: 80})
	if err != nil {
		t.Skip("no pseudo-terminal here:", err)
	}
	x.pty = f
	go io.Copy(io.Discard, x.screen)
	go x.read()
	t.Cleanup(func() {
		x.cmd.Process.Kill()
		<-x.over
		f.Close()
	})
	return x
}

func (x *terminal) read() {
	defer close(x.over)
	buf := make([]byte, 4096)
	for {
		n, err := x.pty.Read(buf)
		x.mu.Lock()
		x.screen.Write(buf[:n])
		x.raw.Write(buf[:n])
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

// waitFor waits until the screen shows a text, then types.
func (x *terminal) waitFor(text, types string) {
	x.t.Helper()
	late := time.After(patience)
	for {
		x.mu.Lock()
		shown := x.screen.String()
		x.mu.Unlock()
		if strings.Contains(shown, text) {
			io.WriteString(x.pty, types)
			return
		}
		select {
		case <-x.news:
		case <-late:
			x.t.Fatalf("%q never came:\n%s", text, shown)
		}
	}
}

// A whole practice on a real terminal that answers no query.
func TestTerminal(t *testing.T) {
	x := start(t, "bench-top")
	x.waitFor("Which metals do you cut?", "\r1\r\t")
	x.waitFor("How thick is the mild steel", "\x01\x07")
	x.waitFor("39 of 42 min left", "6 mm\r\x04")
	x.waitFor("What decides this sale?", "5\r")
	x.waitFor("Which system would you offer?", "3\r")
	x.waitFor("Which cuts would you show", "8\r")
	x.waitFor("HOW IT WENT", "q")
	select {
	case <-x.over:
	case <-time.After(patience):
		t.Fatal("still running")
	}
	if !strings.Contains(x.raw.String(), "marked true, true, <nil>") {
		t.Errorf("ended with %q", x.raw.String()[max(0, x.raw.Len()-200):])
	}
	for _, query := range []string{"\x1b]11;?", "\x1b]10;?", "\x1b[6n", "\x1b[c"} {
		if strings.Contains(x.raw.String(), query) {
			t.Errorf("the terminal is asked %q", query)
		}
	}
}
