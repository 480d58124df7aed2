//go:build unix

package screentest

import (
	"fmt"
	"os/exec"
	"strings"
	"testing"
	"time"
)

// Emulated is a person at a terminal that is emulated here.
type Emulated struct {
	T        *testing.T
	Program  string
	Dir      string   // that the program runs in
	Env      []string // all of its environment
	Patience time.Duration

	*Terminal // once the program runs
}

// Run starts the program.
func (e *Emulated) Run(width, height int, args ...string) {
	e.T.Helper()
	cmd := exec.Command(e.Program, args...)
	cmd.Dir, cmd.Env = e.Dir, e.Env
	e.Terminal = Start(e.T, cmd, Options{Width: width, Height: height, Patience: e.Patience})
}

// Type types a text.
func (e *Emulated) Type(text string) { e.T.Helper(); e.Types(text) }

// Press presses a key.
func (e *Emulated) Press(name string) {
	e.T.Helper()
	e.Types(bytesOf(e.T, name))
}

// Paste pastes as terminals do for a program that asked to be told.
func (e *Emulated) Paste(text string) {
	e.T.Helper()
	e.Types("\x1b[200~" + strings.ReplaceAll(text, "\n", "\r") + "\x1b[201~")
}

// Turn gives the window another size.
func (e *Emulated) Turn(width, height int) { e.T.Helper(); e.Resize(width, height) }

// Await waits until the screen is as wanted.
func (e *Emulated) Await(wanted func(string) bool, to string) {
	e.T.Helper()
	if !e.until(e.Text, wanted, to) {
		e.T.Fatalf("%s: over before that came:\n%s", to, e.Text())
	}
}

// End waits until the program is over.
func (e *Emulated) End() {
	e.T.Helper()
	if err := e.Ends(); err != nil {
		e.T.Errorf("ended with %v:\n%s", err, e.Text())
	}
}

// sequences are what an xterm-like terminal sends for keys that are no
// characters (xterm control sequences, from memory).
var sequences = map[string]string{
	"enter": "\r", "esc": "\x1b", "tab": "\t", "shift+tab": "\x1b[Z", "space": " ", "backspace": "\x7f", "delete": "\x1b[3~",
	"up": "\x1b[A", "down": "\x1b[B", "right": "\x1b[C", "left": "\x1b[D", "home": "\x1b[H", "end": "\x1b[F", "pgup": "\x1b[5~", "pgdown": "\x1b[6~",
	"f1": "\x1bOP", "f2": "\x1bOQ", "f3": "\x1bOR", "f4": "\x1bOS", "f5": "\x1b[15~", "f6": "\x1b[17~", "f7": "\x1b[18~", "f8": "\x1b[19~",
	"f9": "\x1b[20~", "f10": "\x1b[21~", "f11": "\x1b[23~", "f12": "\x1b[24~", "insert": "\x1b[2~",
}

// bytesOf are what a terminal sends for a key.
func bytesOf(t *testing.T, name string) string {
	t.Helper()
	if s, ok := sequences[name]; ok {
		return s
	}
	if letter, ok := strings.CutPrefix(name, "ctrl+"); ok && len(letter) == 1 {
		return string(letter[0] & 0x1f)
	}
	if letter, ok := strings.CutPrefix(name, "alt+"); ok {
		return "\x1b" + letter
	}
	if len([]rune(name)) == 1 {
		return name
	}
	t.Fatal(fmt.Errorf("no key is called %q", name))
	return ""
}
