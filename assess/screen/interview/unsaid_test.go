package interview

import (
	"errors"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
)

// roaming is a disk that offers another place.
type roaming struct{ memory }

func (s *roaming) MoveTo(string) error { return nil }

// Every text of the full screen has its words in every language: each question of
// a new visit and of two samples, answered and not, right and wrong, in every state
// of the screen.
func TestNoTextIsLeftUnsaid(t *testing.T) {
	for _, tag := range catalog.Languages() {
		for _, name := range append(casebook.DemoVisits()[:2], "") {
			v := newVisit()
			if name != "" {
				v, _ = casebook.DemoVisit(name)
			}
			book := catalog.Watched(tag, func(id message.ID) { t.Errorf("%s: no words of %s: %s", name, tag, id) })
			disk := &roaming{}
			d := driverOf(t, newModel(Options{Visit: v, Range: system.Demo(), Saver: disk, Pager: disk, Words: book}), &disk.memory)
			d.Resize(120, 40)
			d.everyState(disk)
		}
	}
}

// everyState goes through every state of the screen at every question.
func (d *driver) everyState(disk *roaming) {
	for _, s := range d.m.steps {
		d.m.show(s)
		d.seen("", "<f1>", "<esc>", "<f1>", "h", "<f1>", "h", "<f1>", "h")
		if s.Question.Form == assess.FormQuantity || s.Question.Form == assess.FormDate {
			d.m.show(s)
			d.seen("<ctrl+u>", "half a thumb", "<enter>", "<ctrl+u>", "about 3", "<enter>", "<ctrl+u>", "99999999", "<enter>")
		}
		d.m.show(s)
		d.seen("<ctrl+u>", "=", "9", "<ctrl+o>", "well", "<enter>", "<ctrl+g>", "<esc>")
	}
	d.seen("<ctrl+r>", "w", "<esc>", "p", "y", "<down>", "<enter>", "<enter>", "because", "<enter>", "<tab>", "<ctrl+l>", "x", "<enter>", "r", "y", "<home>", "<enter>")
	d.seen("<tab>", "<f2>", "nothing", "<enter>", "<ctrl+u>", told, "<enter>", "<enter>", "x", "<esc>", "<f2>", "500 V single phase, and a cat", "<enter>", "<enter>", "x", "x")
	disk.fail = errors.New("no room")
	d.seen("<ctrl+l>", "<enter>", "<ctrl+n>", "<ctrl+s>", "elsewhere", "<esc>", "<ctrl+c>", "<esc>", "<ctrl+c>")
	disk.fail = nil
	d.seen("<enter>")
}

// seen sends keys and looks after each.
func (d *driver) seen(keys ...string) {
	for _, k := range keys {
		if k != "" {
			d.keys(k)
		}
		d.m.View()
	}
}
