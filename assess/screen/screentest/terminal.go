//go:build unix

package screentest

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// Patience is how long a test waits for a text before it gives up. It is less
// than the five seconds a terminal that never replies would cost.
const Patience = 4 * time.Second

// Options are how a terminal is. The zero value is one of 80 × 24 cells that
// answers what it is asked, as a real one does.
type Options struct {
	Width, Height int           // cells
	Mute          bool          // never replies to a query
	Patience      time.Duration // how long to wait for a text; 0 is Patience
}

// Terminal is a program in a terminal of its own.
type Terminal struct {
	T    *testing.T
	Cmd  *exec.Cmd
	Over chan struct{} // closed when the program has ended and let go of the terminal

	file     *os.File
	patience time.Duration
	ended    error // how the program ended, once it is over

	mu     sync.Mutex // guards raw, rung and screen
	raw    bytes.Buffer
	rung   []string
	screen *vt.Emulator
	news   chan struct{}
}

// Self is the running test binary as a program, with nothing but env in its
// environment beside TERM and PATH. Its TestMain says what it is then.
func Self(env ...string) *exec.Cmd {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append([]string{"TERM=xterm-256color", "PATH=" + os.Getenv("PATH")}, env...)
	return cmd
}

// Start runs a program in a terminal, until the test ends at the latest. The
// test is skipped where there are no pseudo-terminals.
func Start(t *testing.T, cmd *exec.Cmd, o Options) *Terminal {
	t.Helper()
	if o.Width == 0 {
		o.Width, o.Height = 80, 24
	}
	if o.Patience == 0 {
		o.Patience = Patience
	}
	file, err := pty.StartWithSize(cmd, winsize(o.Width, o.Height))
	if err != nil {
		t.Skip("no pseudo-terminal here:", err)
	}
	x := &Terminal{T: t, Cmd: cmd, Over: make(chan struct{}), patience: o.Patience,
		file: closable(t, file), screen: vt.NewEmulator(o.Width, o.Height), news: make(chan struct{}, 1)}
	x.listen()
	go io.Copy(x.replies(o.Mute), x.screen)
	go x.read()
	t.Cleanup(x.Kill)
	return x
}

func winsize(width, height int) *pty.Winsize {
	return &pty.Winsize{Rows: uint16(height), Cols: uint16(width)}
}

// closable is the same terminal in a form that can be closed while it is read:
// that hangs up.
func closable(t *testing.T, file *os.File) *os.File {
	t.Helper()
	defer file.Close()
	fd, err := syscall.Dup(int(file.Fd()))
	if err == nil {
		err = syscall.SetNonblock(fd, true)
	}
	if err != nil {
		t.Fatal(err)
	}
	return os.NewFile(uintptr(fd), "terminal")
}

// listen notes what the terminal does beside drawing.
func (x *Terminal) listen() {
	did := func(what string) { x.rung = append(x.rung, what) }
	x.screen.SetCallbacks(vt.Callbacks{
		Bell:             func() { did("bell") },
		Title:            func(s string) { did("title " + s) },
		IconName:         func(s string) { did("icon " + s) },
		WorkingDirectory: func(s string) { did("folder " + s) },
	})
}

func (x *Terminal) replies(mute bool) io.Writer {
	if mute {
		return io.Discard
	}
	return x.file
}

func (x *Terminal) read() {
	defer close(x.Over)
	buf := make([]byte, 4096)
	for {
		n, err := x.file.Read(buf)
		x.mu.Lock()
		x.raw.Write(buf[:n])
		x.screen.Write(buf[:n])
		x.mu.Unlock()
		select {
		case x.news <- struct{}{}:
		default:
		}
		if err != nil { // how a terminal ends on Linux
			x.ended = x.Cmd.Wait()
			return
		}
	}
}

// Kill ends the program without a word, if it has not ended yet.
func (x *Terminal) Kill() {
	x.Cmd.Process.Kill()
	<-x.Over
	x.file.Close()
	if replies, ok := x.screen.InputPipe().(io.Closer); ok {
		replies.Close() // not the screen: that would race with the reader of its replies
	}
}

// Hangup takes the terminal away from the program.
func (x *Terminal) Hangup() { x.file.Close() }

// Resize gives the window another size, in cells.
func (x *Terminal) Resize(width, height int) {
	x.T.Helper()
	x.mu.Lock()
	x.screen.Resize(width, height)
	x.mu.Unlock()
	if err := pty.Setsize(x.file, winsize(width, height)); err != nil {
		x.T.Fatal(err)
	}
}

// Types types keys; it fails where they cannot be typed.
func (x *Terminal) Types(keys string) {
	x.T.Helper()
	if _, err := io.WriteString(x.file, keys); err != nil {
		x.T.Fatal(err)
	}
}

// Tries types keys at a program that may be gone, which Until tells.
func (x *Terminal) Tries(keys string) { io.WriteString(x.file, keys) }

// Text is what the screen shows.
func (x *Terminal) Text() string {
	x.mu.Lock()
	defer x.mu.Unlock()
	return x.screen.String()
}

// Written is all that the program has written so far.
func (x *Terminal) Written() string {
	x.mu.Lock()
	defer x.mu.Unlock()
	return x.raw.String()
}

// Rung is what the terminal did so far beside drawing: rang the bell, set a
// title.
func (x *Terminal) Rung() []string {
	x.mu.Lock()
	defer x.mu.Unlock()
	return x.rung
}

// Until waits until the screen is as wanted; false if the program ended first.
func (x *Terminal) Until(wanted func(screen string) bool) bool {
	x.T.Helper()
	return x.until(x.Text, wanted, "the screen")
}

func (x *Terminal) until(seen func() string, wanted func(string) bool, what string) bool {
	x.T.Helper()
	late := time.After(x.patience)
	for !wanted(seen()) {
		select {
		case <-x.news:
		case <-x.Over:
			return wanted(seen())
		case <-late:
			x.T.Fatalf("%s never came:\n%s", what, seen())
		}
	}
	return true
}

// Sees waits until the screen shows all the texts at once.
func (x *Terminal) Sees(texts ...string) {
	x.T.Helper()
	x.waitFor(x.Text, texts)
}

// Wrote waits until all the texts have been written, on the screen or not.
func (x *Terminal) Wrote(texts ...string) {
	x.T.Helper()
	x.waitFor(x.Written, texts)
}

func (x *Terminal) waitFor(seen func() string, texts []string) {
	x.T.Helper()
	holds := func(s string) bool {
		return !slices.ContainsFunc(texts, func(text string) bool { return !strings.Contains(s, text) })
	}
	if !x.until(seen, holds, fmt.Sprintf("%q", texts)) {
		x.T.Fatalf("ended without showing %q:\n%s", texts, seen())
	}
}

// Ends waits until the program has ended by itself, and returns how.
func (x *Terminal) Ends() error {
	x.T.Helper()
	select {
	case <-x.Over:
	case <-time.After(x.patience):
		x.T.Fatalf("still running:\n%s", x.Text())
	}
	return x.ended
}
