//go:build linux || darwin

package main

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// patience is how long a test waits for the screen before it gives up: far more
// than the program needs, also where many tests share the machine.
const patience = 20 * time.Second

// drawn is the program in a terminal that draws what it is given and answers
// what it is asked, as a real one does.
type drawn struct {
	t    *testing.T
	dir  string
	cmd  *exec.Cmd
	file *os.File
	over chan struct{} // closed when the program has let go of the terminal

	mu     sync.Mutex // guards raw, rung and screen
	raw    []byte
	rung   []string // what it did beside drawing: rang the bell, set a title
	screen *vt.Emulator
	news   chan struct{}
}

// draw runs the program in a folder.
func draw(t *testing.T, dir string, args ...string) *drawn {
	t.Helper()
	return drawAs(t, dir, exec.Command("cutbrief", args...))
}

// drawAs runs a command that runs the program.
func drawAs(t *testing.T, dir string, cmd *exec.Cmd) *drawn {
	t.Helper()
	d := &drawn{t: t, dir: dir, over: make(chan struct{}), news: make(chan struct{}, 1), screen: vt.NewEmulator(100, 30)}
	d.screen.SetCallbacks(vt.Callbacks{
		Bell:             func() { d.rung = append(d.rung, "bell") },
		Title:            func(s string) { d.rung = append(d.rung, "title "+s) },
		IconName:         func(s string) { d.rung = append(d.rung, "icon "+s) },
		WorkingDirectory: func(s string) { d.rung = append(d.rung, "folder "+s) },
	})
	d.cmd = cmd
	d.cmd.Dir = dir
	d.cmd.Env = append(os.Environ(), "TERM=xterm-256color", "NO_COLOR=1", "HOME="+dir,
		"XDG_DATA_HOME="+filepath.Join(dir, "data"), "XDG_CONFIG_HOME="+filepath.Join(dir, "config"))
	file, err := pty.StartWithSize(d.cmd, &pty.Winsize{Rows: 30, Cols: 100})
	if err != nil {
		t.Skip("no pseudo-terminal here:", err)
	}
	d.file = closable(t, file)
	go io.Copy(file, d.screen)
	go d.read()
	t.Cleanup(d.kill)
	return d
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

func (d *drawn) read() {
	defer close(d.over)
	buf := make([]byte, 4096)
	for {
		n, err := d.file.Read(buf)
		d.mu.Lock()
		d.raw = append(d.raw, buf[:n]...)
		d.screen.Write(buf[:n])
		d.mu.Unlock()
		select {
		case d.news <- struct{}{}:
		default:
		}
		if err != nil {
			d.cmd.Wait()
			return
		}
	}
}

// kill ends the program without a word, if it has not ended yet.
func (d *drawn) kill() {
	d.cmd.Process.Kill()
	<-d.over
	d.file.Close()
}

func (d *drawn) text() string {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.screen.String()
}

// until waits until the screen is as wanted; false if the program ended first.
func (d *drawn) until(wanted func(screen string) bool) bool {
	d.t.Helper()
	late := time.After(patience)
	for !wanted(d.text()) {
		select {
		case <-d.news:
		case <-d.over:
			return wanted(d.text())
		case <-late:
			d.t.Fatalf("the screen never came:\n%s", d.text())
		}
	}
	return true
}

// sees waits until the screen shows all the texts.
func (d *drawn) sees(texts ...string) {
	d.t.Helper()
	shows := func(screen string) bool {
		for _, text := range texts {
			if !strings.Contains(screen, text) {
				return false
			}
		}
		return true
	}
	if !d.until(shows) {
		d.t.Fatalf("ended without showing %q:\n%s", texts, d.text())
	}
}

func (d *drawn) types(keys string) {
	io.WriteString(d.file, keys) // fails once the program is gone, which until tells
}

// ended waits for the program to end by itself.
func (d *drawn) ended() {
	d.t.Helper()
	select {
	case <-d.over:
	case <-time.After(patience):
		d.t.Fatalf("still running:\n%s", d.text())
	}
}
