package screentest

import (
	"fmt"
	"strings"
	"testing"
)

// Person is somebody at a terminal, whatever the terminal is.
type Person interface {
	Run(width, height int, args ...string) // starts the program
	Type(text string)
	Press(key string) // by its name, such as "enter"
	Paste(text string)
	Turn(width, height int)                           // gives the window another size, in cells
	Await(wanted func(screen string) bool, to string) // until the screen is as wanted, or fails
	End()                                             // until the program is over
}

// Flow is what a person does at a terminal and sees there, as data: one thing a
// line. A line that begins with # is a remark.
//
//	size 80 24        the window, in cells
//	run ARG ARG       starts the program
//	type TEXT         types a text
//	press KEY KEY     presses keys by their names; KEY*3 three times
//	paste TEXT        pastes; \n is a line end
//	sees TEXT         waits until the text is on the screen, wrapped or not
//	lacks TEXT        waits until it is no longer
//	knows TEXT | ANSWER  what is answered when TEXT is on the screen: a text and
//	                     Enter, or keys behind "press"
//	talks TEXT        answers what is known, whatever comes first, until TEXT is seen
//	ends              waits until the program is over
//	lines             said before run: the program writes lines, and draws nothing
type Flow struct {
	name  string
	lines []string
}

// ReadFlow splits a flow into its lines.
func ReadFlow(name, text string) Flow { return Flow{name, strings.Split(text, "\n")} }

// walk is a flow under way.
type walk struct {
	t             *testing.T
	who           Person
	width, height int
	lines         bool // the program writes lines
	drawn         bool // a screen is drawn now
	where         string
	known         map[string]string // questions with their answers, not given yet
}

// Go does all that the flow says. Whatever is seen on a drawn screen, the way out
// is there.
func (f Flow) Go(t *testing.T, who Person) {
	t.Helper()
	w := &walk{t: t, who: who, width: 80, height: 24, known: map[string]string{}}
	for i, line := range f.lines {
		if line = strings.TrimSpace(line); line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		verb, rest, _ := strings.Cut(line, " ")
		w.where = fmt.Sprintf("%s:%d: %s", f.name, i+1, line)
		w.do(verb, rest)
	}
}

func (w *walk) do(verb, rest string) {
	w.t.Helper()
	switch verb {
	case "size":
		w.size(rest)
	case "run":
		w.drawn = !w.lines
		w.who.Run(w.width, w.height, strings.Fields(rest)...)
	case "knows":
		question, answer, _ := strings.Cut(rest, " | ")
		w.known[question] = answer
	case "talks":
		w.talk(rest)
	case "lines":
		w.lines = true
	case "type":
		w.who.Type(rest)
	case "press":
		w.press(rest)
	case "paste":
		w.who.Paste(strings.ReplaceAll(rest, `\n`, "\n"))
	case "sees":
		w.who.Await(func(s string) bool { return Reads(s, rest) && (!w.drawn || leads(s)) }, w.where)
	case "lacks":
		w.who.Await(func(s string) bool { return !Reads(s, rest) }, w.where)
	case "ends":
		w.drawn = false
		w.who.End()
	default:
		w.t.Fatalf("%s: not a line of a flow", w.where)
	}
}

// size sets the window before the program starts, or turns it to another.
func (w *walk) size(rest string) {
	w.t.Helper()
	if _, err := fmt.Sscan(rest, &w.width, &w.height); err != nil {
		w.t.Fatalf("%s: %v", w.where, err)
	}
	if w.drawn {
		w.who.Turn(w.width, w.height)
	}
}

// talk answers one question after the other, each once, until a text is seen.
func (w *walk) talk(until string) {
	w.t.Helper()
	for asked := ""; asked != until; {
		w.who.Await(func(screen string) bool {
			asked = w.asks(screen, until)
			return asked != "" && leads(screen)
		}, w.where)
		answer := w.known[asked]
		delete(w.known, asked)
		keys, pressed := strings.CutPrefix(answer, "press ")
		switch {
		case asked == until:
		case pressed:
			w.press(keys)
		default:
			w.who.Type(answer)
			w.press("enter")
		}
	}
	for question := range w.known {
		w.t.Errorf("%s: %q was never asked", w.where, question)
	}
}

// asks is the question on a screen that is not answered yet, or until, or "".
func (w *walk) asks(screen, until string) string {
	if Reads(screen, until) {
		return until
	}
	for question := range w.known {
		if Reads(screen, question) {
			return question
		}
	}
	return ""
}

func (w *walk) press(rest string) {
	w.t.Helper()
	for _, name := range strings.Fields(rest) {
		times := 1
		if key, count, many := strings.Cut(name, "*"); many {
			name = key
			fmt.Sscan(count, &times)
		}
		for range times {
			w.who.Press(name)
		}
	}
}

// Reads reports whether a person reads the text on a screen: as it stands, or
// with the lines of a column put together.
func Reads(screen, text string) bool {
	left, right := parts(screen)
	for _, lines := range [][]string{{screen}, left, right} {
		if strings.Contains(Unwrapped(strings.Join(lines, "\n")), text) {
			return true
		}
	}
	return false
}

// leads reports whether a screen says how to leave it, or is just being left.
func leads(screen string) bool {
	return strings.Contains(screen, "leave") || strings.Contains(screen, "Saving …")
}
