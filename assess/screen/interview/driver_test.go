package interview

import (
	"context"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/system"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

const envVisit = "CUTBRIEF_TEST_VISIT" // path of the visit to interview on

// runForTest is the interview as a program: it keeps the visit in a file.
func runForTest(path string) int {
	v := newVisit()
	if data, err := os.ReadFile(path); err == nil {
		if v, _, err = assess.Decode(data); err != nil {
			fmt.Println(err)
			return 1
		}
	}
	out, err := Run(context.Background(), Options{
		Visit: v, Range: system.Demo(), Saver: fileSaver(path), Input: os.Stdin, Output: os.Stdout,
	})
	fmt.Printf("kept in %q, open %d, %v\n", out.Path, out.Open, err)
	return 0
}

type fileSaver string

func (f fileSaver) Save(v *assess.Visit) (string, error) {
	data, err := v.Encode()
	if err != nil {
		return "", err
	}
	return string(f), os.WriteFile(string(f), data, 0o600)
}

func newVisit() *assess.Visit {
	return assess.New("test-visit", time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC))
}

// memory is a saver and pager that remembers, and fails when told to.
type memory struct {
	saves int
	last  *assess.Visit
	fail  error
}

func (s *memory) Save(v *assess.Visit) (string, error) {
	if s.fail != nil {
		return "", s.fail
	}
	s.saves++
	v.Revision++
	s.last = v
	return "visit.json", nil
}

func (s *memory) Page(*assess.Visit) (string, error) { return "page.pdf", s.fail }

// driver sends keys to the model and runs what it asks for, one after the
// other, as the loop would with nothing else going on.
type driver struct {
	t    testing.TB
	m    *Model
	disk *memory
	quit bool
}

func drive(t testing.TB, v *assess.Visit) *driver {
	t.Helper()
	disk := &memory{}
	d := &driver{t: t, disk: disk, m: newModel(Options{Visit: v, Range: system.Demo(), Saver: disk, Pager: disk})}
	d.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	return d
}

func (d *driver) send(msg tea.Msg) {
	_, cmd := d.m.Update(msg)
	d.run(cmd)
}

func (d *driver) run(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.QuitMsg:
		d.quit = true
	case tea.BatchMsg:
		for _, c := range msg {
			d.run(c)
		}
	default:
		d.send(msg)
	}
}

// named are the keys that are no text.
var named = map[string]tea.KeyMsg{
	"<enter>": {Type: tea.KeyEnter}, "<esc>": {Type: tea.KeyEsc}, "<tab>": {Type: tea.KeyTab},
	"<shift+tab>": {Type: tea.KeyShiftTab}, "<up>": {Type: tea.KeyUp}, "<down>": {Type: tea.KeyDown},
	"<space>": {Type: tea.KeySpace, Runes: []rune{' '}}, "<home>": {Type: tea.KeyHome}, "<end>": {Type: tea.KeyEnd},
	"<pgdown>": {Type: tea.KeyPgDown}, "<backspace>": {Type: tea.KeyBackspace}, "<delete>": {Type: tea.KeyDelete},
	"<ctrl+c>": {Type: tea.KeyCtrlC}, "<ctrl+g>": {Type: tea.KeyCtrlG}, "<ctrl+j>": {Type: tea.KeyCtrlJ},
	"<ctrl+l>": {Type: tea.KeyCtrlL}, "<ctrl+n>": {Type: tea.KeyCtrlN}, "<ctrl+o>": {Type: tea.KeyCtrlO},
	"<ctrl+r>": {Type: tea.KeyCtrlR}, "<ctrl+u>": {Type: tea.KeyCtrlU}, "<ctrl+x>": {Type: tea.KeyCtrlX}, "<ctrl+y>": {Type: tea.KeyCtrlY},
	"<f1>": {Type: tea.KeyF1}, "<f2>": {Type: tea.KeyF2}, "<left>": {Type: tea.KeyLeft},
}

// keys sends named keys and text, in order.
func (d *driver) keys(keys ...string) *driver {
	d.t.Helper()
	for _, k := range keys {
		if msg, ok := named[k]; ok {
			d.send(msg)
			continue
		}
		d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)})
	}
	return d
}

func (d *driver) paste(text string) {
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
}

func (d *driver) resize(width, height int) { d.send(tea.WindowSizeMsg{Width: width, Height: height}) }

func (d *driver) view() string { return ansi.Strip(d.m.View()) }

func (d *driver) sees(texts ...string) {
	d.t.Helper()
	for _, text := range texts {
		if !strings.Contains(unwrapped(d.view()), text) {
			d.t.Fatalf("%q is not on the screen:\n%s", text, d.view())
		}
	}
}

// unwrapped joins what is wrapped, with single spaces, without the panel.
func unwrapped(s string) string {
	var main []string
	for _, line := range strings.Split(s, "\n") {
		body, _, _ := strings.Cut(line, "│")
		main = append(main, strings.Fields(body)...)
	}
	return strings.Join(main, " ")
}

func (d *driver) seesNot(text string) {
	d.t.Helper()
	if strings.Contains(unwrapped(d.view()), text) {
		d.t.Fatalf("%q is on the screen:\n%s", text, d.view())
	}
}

// at fails unless the screen asks for this.
func (d *driver) at(f rules.Fact) {
	d.t.Helper()
	if d.m.state != asking || d.m.step.Question.ID != f {
		d.t.Fatalf("not at %s:\n%s", f, d.view())
	}
}

func (d *driver) answer(f rules.Fact) assess.Answer {
	a, _ := d.m.visit.Answer(rules.Asked{Fact: f})
	return a
}

// usual is what to type for a step: its own first example, or the first option.
func usual(s assess.Step) string {
	switch s.Question.Form {
	case assess.FormOne:
		return "1"
	case assess.FormSeveral:
		return "1"
	}
	example, _, _ := strings.Cut(s.Question.Example, ", ")
	example, _, _ = strings.Cut(example, " or ")
	return example
}

// throughTo answers one question after the other until f is asked, or to the
// end for "".
func (d *driver) throughTo(f rules.Fact) *driver {
	d.t.Helper()
	for range 200 {
		if d.m.state != asking || d.m.step.Question.ID == f {
			return d
		}
		d.keys(usual(d.m.step), "<enter>")
		if len(d.m.wrong) > 0 {
			d.t.Fatalf("the example is not taken:\n%s", d.view())
		}
	}
	d.t.Fatalf("never came to %q:\n%s", f, d.view())
	return d
}
