//go:build unix

package screentest

import (
	"bufio"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// Tmux is a person at a terminal of tmux, with a server of its own.
type Tmux struct {
	T        *testing.T
	Program  string
	Dir      string   // that the program runs in
	Env      []string // of the program, beside TERM, which tmux sets
	Patience time.Duration

	socket string
	news   chan struct{}
}

// NeedTmux skips the test where there is no tmux.
func NeedTmux(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("tmux"); err != nil {
		t.Skip("tmux is not installed:", err)
	}
}

// do runs a command of tmux and returns what it prints.
func (x *Tmux) do(args ...string) string {
	x.T.Helper()
	out, err := x.command(args...).CombinedOutput()
	if err != nil {
		x.T.Fatalf("tmux %s: %v: %s", strings.Join(args, " "), err, out)
	}
	return string(out)
}

func (x *Tmux) command(args ...string) *exec.Cmd {
	cmd := exec.Command("tmux", append([]string{"-u", "-f", os.DevNull, "-S", x.socket}, args...)...)
	cmd.Env = []string{"PATH=" + os.Getenv("PATH"), "LC_ALL=C.UTF-8", "TERM=xterm-256color", "HOME=" + x.Dir}
	return cmd
}

// ended is what the window shows once the program is over. The window stays, so
// that its last words can be read.
const ended = `env "$@"; echo "[ended with $?]"; read forever`

// Run starts the program in a window of its own.
func (x *Tmux) Run(width, height int, args ...string) {
	x.T.Helper()
	x.socket = filepath.Join(x.T.TempDir(), "s")
	settings := []string{"start-server", ";", "set", "-sg", "escape-time", "0", ";", "set", "-g", "status", "off", ";",
		"set", "-g", "default-terminal", "tmux-256color", ";",
		"new-session", "-d", "-s", "flow", "-c", x.Dir, "-x", strconv.Itoa(width), "-y", strconv.Itoa(height), "sh", "-c", ended, "sh"}
	settings = append(append(append(settings, x.Env...), x.Program), args...)
	x.do(append(settings, ";", "set", "-w", "-t", "flow", "window-size", "manual")...) // else who watches sizes it
	x.T.Cleanup(func() { _ = x.command("kill-server").Run() })
	x.listen()
}

// listen makes tmux tell whenever something is drawn.
func (x *Tmux) listen() {
	x.T.Helper()
	x.news = make(chan struct{}, 1)
	watcher := x.command("-C", "attach", "-t", "flow")
	_, err := watcher.StdinPipe() // at its end the watcher would leave
	out, err2 := watcher.StdoutPipe()
	if err == nil && err2 == nil {
		err = watcher.Start()
	}
	if err != nil || err2 != nil {
		x.T.Fatal(err, err2)
	}
	x.T.Cleanup(func() { _ = watcher.Process.Kill(); _ = watcher.Wait() })
	go x.hear(out)
}

func (x *Tmux) hear(out io.Reader) {
	for lines := bufio.NewScanner(out); lines.Scan(); {
		select {
		case x.news <- struct{}{}:
		default:
		}
	}
}

// Type types a text.
func (x *Tmux) Type(text string) { x.T.Helper(); x.do("send-keys", "-t", "flow", "-l", text) }

// names are the keys that tmux calls otherwise.
var names = map[string]string{
	"enter": "Enter", "esc": "Escape", "tab": "Tab", "shift+tab": "BTab", "space": "Space", "backspace": "BSpace", "delete": "DC",
	"up": "Up", "down": "Down", "left": "Left", "right": "Right", "home": "Home", "end": "End", "pgup": "PPage", "pgdown": "NPage", "insert": "IC",
}

// Press presses a key.
func (x *Tmux) Press(name string) {
	x.T.Helper()
	key, named := names[name]
	if !named {
		key = strings.NewReplacer("ctrl+", "C-", "alt+", "M-", "f1", "F1", "f2", "F2", "f3", "F3", "f4", "F4", "f5", "F5", "f6", "F6",
			"f7", "F7", "f8", "F8", "f9", "F9").Replace(name)
	}
	x.do("send-keys", "-t", "flow", key)
}

// Paste pastes as tmux does for a program that asked to be told.
func (x *Tmux) Paste(text string) {
	x.T.Helper()
	x.do("set-buffer", "-b", "flow", text, ";", "paste-buffer", "-p", "-b", "flow", "-t", "flow")
}

// Turn gives the window another size.
func (x *Tmux) Turn(width, height int) {
	x.T.Helper()
	x.do("resize-window", "-t", "flow", "-x", strconv.Itoa(width), "-y", strconv.Itoa(height))
}

// Screen is what the window shows.
func (x *Tmux) Screen() string { x.T.Helper(); return x.do("capture-pane", "-p", "-t", "flow") }

// Await waits until the screen is as wanted.
func (x *Tmux) Await(wanted func(string) bool, to string) {
	x.T.Helper()
	late := time.After(x.Patience)
	for {
		screen := x.Screen()
		if wanted(screen) {
			return
		}
		select {
		case <-x.news:
		case <-late:
			x.T.Fatalf("%s: never came:\n%s", to, screen)
		}
	}
}

// End waits until the program has ended well.
func (x *Tmux) End() {
	x.T.Helper()
	x.Await(func(screen string) bool { return strings.Contains(screen, "[ended with 0]") }, "the end")
}
