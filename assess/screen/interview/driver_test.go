package interview

import (
	"context"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/screen/screentest"
	"cutbrief/rules"
	"cutbrief/rules/system"
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

// driver sends keys to the interview.
type driver struct {
	screentest.Driver
	m    *Model
	disk *memory
}

func drive(t testing.TB, v *assess.Visit) *driver { return driveIn(t, v, false) }

// inOrder drives an interview in the order of the catalogue, for tests of what does
// not hang on the order.
func inOrder(t testing.TB, v *assess.Visit) *driver { return driveIn(t, v, true) }

func driveIn(t testing.TB, v *assess.Visit, order bool) *driver {
	t.Helper()
	disk := &memory{}
	d := driverOf(t, newModel(Options{Visit: v, Range: system.Demo(), Saver: disk, Pager: disk, InOrder: order}), disk)
	d.Resize(80, 24)
	return d
}

// driverOf drives a model that saves to disk; it has no window yet.
func driverOf(t testing.TB, m *Model, disk *memory) *driver {
	return &driver{Driver: screentest.Driver{T: t, Model: m, Words: unwrapped}, m: m, disk: disk}
}

// keys sends named keys and text, in order.
func (d *driver) keys(keys ...string) *driver {
	d.T.Helper()
	d.Keys(keys...)
	return d
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

// at fails unless the screen asks for this.
func (d *driver) at(f rules.Fact) {
	d.T.Helper()
	if d.m.state != asking || d.m.step.Question.ID != f {
		d.T.Fatalf("not at %s:\n%s", f, d.View())
	}
}

func (d *driver) answer(f rules.Fact) assess.Answer {
	a, _ := d.m.Visit.Answer(rules.Asked{Fact: f})
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
	example, _, _ := strings.Cut(string(s.Question.Example), ", ")
	example, _, _ = strings.Cut(example, " or ")
	return example
}

// throughTo answers one question after the other until f is asked, or to the
// end for "".
func (d *driver) throughTo(f rules.Fact) *driver {
	d.T.Helper()
	for range 200 {
		if d.m.state != asking || d.m.step.Question.ID == f {
			return d
		}
		d.keys(usual(d.m.step), "<enter>")
		if len(d.m.wrong) > 0 {
			d.T.Fatalf("the example is not taken:\n%s", d.View())
		}
	}
	d.T.Fatalf("never came to %q:\n%s", f, d.View())
	return d
}
