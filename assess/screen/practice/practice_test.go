package practice

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"testing"

	"cutbrief/assess/casebook"
	"cutbrief/assess/screen/screentest"
	"cutbrief/rules"
	"cutbrief/rules/system"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
	"pgregory.net/rapid"
)

const envCase = "CUTBRIEF_TEST_CASE" // the case to practise on, in a terminal of its own

// TestMain runs the practice itself when a test starts this binary in a
// terminal; otherwise the tests, with the colours switched off.
func TestMain(m *testing.M) {
	if name := os.Getenv(envCase); name != "" {
		mark, marked, err := Run(context.Background(), os.Stdin, os.Stdout, session(name), nil)
		fmt.Printf("marked %v, %v, %v\n", marked, mark.RightSystem, err)
		os.Exit(0)
	}
	lipgloss.SetColorProfile(termenv.Ascii)
	os.Exit(m.Run())
}

func session(name string) *casebook.Session {
	for _, c := range casebook.Cases() {
		if c.Name == name {
			return casebook.Start(&c, system.Demo())
		}
	}
	return nil
}

// driver sends keys to the practice.
type driver struct {
	screentest.Driver
	m *Model
}

func drive(t testing.TB, name string) *driver {
	t.Helper()
	m := newModel(session(name), nil)
	d := &driver{Driver: screentest.Driver{T: t, Model: m.window}, m: m}
	d.Resize(80, 24)
	return d
}

func (d *driver) press(keys ...tea.KeyType) {
	for _, k := range keys {
		d.Send(tea.KeyMsg{Type: k})
	}
}

// types sends a text and Enter.
func (d *driver) types(text string) {
	d.Keys(text)
	d.press(tea.KeyEnter)
}

func (d *driver) shows(want ...string) {
	d.T.Helper()
	for _, w := range want {
		if !strings.Contains(d.View(), w) {
			d.T.Errorf("%q is not in:\n%s", w, d.View())
		}
	}
}

func TestAskingAndNoting(t *testing.T) {
	d := drive(t, "bench-top")
	d.shows("Practice · Brandle Farm Repairs · invented", "42 of 42 min left", "Which metals do you cut?", "1 mild steel", "Come in, come in.", "[ ] nothing noted yet")
	d.press(tea.KeyEnter) // nothing typed: asks
	d.shows("41 of 42 min left")
	d.types("1")
	d.shows("[x] mild steel", "mild steel · metals")
	d.press(tea.KeyTab, tea.KeyCtrlA)
	d.shows("How thick is the mild steel you cut", "40 of 42 min left")
	d.press(tea.KeyCtrlF)
	d.shows("6 mm", "39 of 42 min left")
	d.types("6 mm")
	d.press(tea.KeyTab, tea.KeyCtrlE) // the caliper on the thickest
	d.shows("10 mm", "36 of 42 min left")
	d.press(tea.KeyEsc)
	d.shows("[x] 6 mm")
	d.press(tea.KeyCtrlP, tea.KeyCtrlB)
	d.shows("30 of 42 min left", "breaker 32 A")
	d.press(tea.KeyCtrlN)
	d.shows("[x] not known")
}

// number is the number of a question in the list.
func (d *driver) number(f rules.Fact) string {
	for i, s := range d.m.talk.session.Steps() {
		if s.Question.ID == f {
			return strconv.Itoa(i + 1)
		}
	}
	return "0"
}

func TestAllFollowUps(t *testing.T) {
	d := drive(t, "trade-school")
	d.types("1")
	d.press(tea.KeyCtrlL)
	d.shows("everyday thickness, mild steel: not asked")
	d.types(d.number(rules.FactUse))
	d.shows("Is this repair work, production, or some of")
	d.press(tea.KeyCtrlA)
	d.shows("What do you mean by production?")
	d.types("3")
	d.press(tea.KeyCtrlK) // repeating back explains nothing to this one
	d.press(tea.KeyCtrlX)
	d.shows("repair and odd jobs", "34 of 38 min left") // 1 + 1 + 2
	d.press(tea.KeyEnter)
	d.shows("Type what you understood")
}

func TestDecidingAndTheMark(t *testing.T) {
	d := drive(t, "bench-top")
	d.press(tea.KeyCtrlT)
	d.shows("Which requirement decides this sale?", "5. running cost")
	d.press(tea.KeyEsc)
	d.shows("Which metals do you cut?")
	d.press(tea.KeyCtrlT)
	d.types("99")
	d.shows(`"99" is none of the numbers.`, "5. running cost")
	d.types("5")
	d.shows("Which system would you offer?", "3. Demo 45: rated 12 mm")
	d.types("3")
	d.shows("Which cuts would you show, in which order?")
	d.types("8, 11")
	d.shows("HOW IT WENT", "System right, deciding requirement right and shown", "more below ↓")
	for range 60 {
		d.press(tea.KeyPgDown)
	}
	d.shows("TO PRACTISE NEXT")
	d.Keys("w")
	d.shows("The recommendation [recommendation]: Demo 45")
	d.press(tea.KeyEsc)
	d.shows("HOW IT WENT")
	d.Keys("q")
	if m := d.m.talk.mark; !d.Quit || m.Customer == nil || !m.RightSystem || !m.Proven {
		t.Errorf("quit %v: %s", d.Quit, m.Summary())
	}
}

func TestLeavingBeforeTheMark(t *testing.T) {
	d := drive(t, "bench-top")
	d.types("quit")
	if !d.Quit {
		t.Error("quit does not leave")
	}
	d = drive(t, "bench-top")
	d.press(tea.KeyCtrlC)
	if marked := d.m.talk.mark.Customer != nil; !d.Quit || marked {
		t.Error(d.Quit, marked)
	}
}

func TestTheCustomerGoes(t *testing.T) {
	d := drive(t, "pasture-fence")
	for range 9 {
		d.press(tea.KeyCtrlP)
	}
	d.shows("0 of 24 min left", "the customer has gone back to work")
	d.types("2")
	d.shows("[x] coated or galvanised steel")
}

// framed fails unless the view fills the window and stays inside it.
func framed(t screentest.Failing, m *Model) {
	t.Helper()
	screentest.Framed(t, m.window.View(), m.window.Size.Width, m.window.Size.Height)
}

// Every question and every stage is whole at every size, with the input shown.
func TestEveryViewIsWhole(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 12}} {
		d := drive(t, "the-wrong-socket")
		d.Resize(size[0], size[1])
		d.types("1")
		for range d.m.talk.session.Steps() {
			d.press(tea.KeyCtrlA)
			framed(t, d.m)
			if !strings.Contains(d.View(), "› ") {
				t.Errorf("no input at %v:\n%s", size, d.View())
			}
			if size[0] >= 60 && d.m.talk.step.Question.ID != rules.FactMetals {
				words := strings.Fields(d.m.talk.step.Text().String())
				d.shows(words[0] + " " + words[1])
			}
			d.press(tea.KeyTab)
		}
		for _, text := range []string{"7", "5", "1"} {
			if d.m.talk.stage == talking {
				d.press(tea.KeyCtrlL)
				framed(t, d.m)
				d.press(tea.KeyEsc, tea.KeyCtrlT)
			}
			framed(t, d.m)
			d.types(text)
		}
		framed(t, d.m)
	}
}

// No keys, in any order, in any window, break the frame or write a control.
func TestAnyKeys(t *testing.T) {
	flag.Set("rapid.checks", "40") // each draws many views
	keys := []tea.KeyType{tea.KeyEnter, tea.KeyTab, tea.KeyEsc, tea.KeyUp, tea.KeyDown, tea.KeyPgDown, tea.KeyBackspace, tea.KeyCtrlA, tea.KeyCtrlF,
		tea.KeyCtrlK, tea.KeyCtrlX, tea.KeyCtrlE, tea.KeyCtrlP, tea.KeyCtrlB, tea.KeyCtrlN, tea.KeyCtrlL, tea.KeyCtrlT}
	rapid.Check(t, func(rt *rapid.T) {
		d := drive(t, "own-pocket")
		d.Resize(rapid.IntRange(1, 130).Draw(rt, "width"), rapid.IntRange(1, 45).Draw(rt, "height"))
		for range rapid.IntRange(1, 25).Draw(rt, "keys") {
			if rapid.Bool().Draw(rt, "type") {
				d.Keys(rapid.SampledFrom([]string{"1", "6 mm", "\x1b[2J", "so far", "quit", "ü"}).Draw(rt, "text"))
			} else {
				d.press(rapid.SampledFrom(keys).Draw(rt, "key"))
			}
			if strings.Contains(d.m.window.View(), "\x1b[2J") {
				rt.Fatalf("a control is written")
			}
			framed(rt, d.m)
		}
	})
}

// gone is a terminal that was unplugged.
type gone struct{}

func (gone) Read([]byte) (int, error) { return 0, errors.New("input/output error") }

func TestATerminalThatGoesAwayIsReported(t *testing.T) {
	if _, marked, err := Run(context.Background(), gone{}, io.Discard, session("bench-top"), nil); err == nil || marked {
		t.Error(marked, err)
	}
}

func TestAnEndedContextLeaves(t *testing.T) {
	ctx, end := context.WithCancel(context.Background())
	end()
	in, out := io.Pipe()
	defer out.Close()
	if _, marked, err := Run(ctx, in, io.Discard, session("bench-top"), nil); err != nil || marked {
		t.Error(marked, err)
	}
}
