package interview

import (
	"errors"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/screen/screentest"

	tea "github.com/charmbracelet/bubbletea"
)

// movable is a disk that is full, with another beside it that is not.
type movable struct {
	memory
	places []string
}

func (s *movable) MoveTo(place string) error {
	if place == "nowhere" {
		return errors.New("there is no folder nowhere")
	}
	s.places, s.fail = append(s.places, place), nil
	return nil
}

// full drives an interview on a full disk past its first answer.
func full(t *testing.T) (*driver, *movable) {
	t.Helper()
	d := inOrder(t, newVisit())
	disk := &movable{memory: memory{fail: errors.New("the disk is full")}}
	d.m.writer.saver, d.disk = disk, &disk.memory
	d.elsewhere() // nothing to move yet
	d.keys("Alder", "<enter>")
	d.Sees("not saved: the disk is full", "your answers are still here", "NOT SAVED", "^S where to save")
	return d, disk
}

// elsewhere asks for another place.
func (d *driver) elsewhere() { d.Send(tea.KeyMsg{Type: tea.KeyCtrlS}) }

func TestAnotherPlaceAfterAFailedSave(t *testing.T) {
	d, disk := full(t)
	d.keys("Mar")
	d.elsewhere()
	d.Sees("Where else should the visit be saved?", "NOT SAVED")
	d.keys("stick", "<enter>")
	d.at(assess.FactContact)
	d.SeesNot("NOT SAVED")
	if len(disk.places) != 1 || disk.places[0] != "stick" || disk.last.Answers[0].Said != "Alder" {
		t.Errorf("kept in %v: %+v", disk.places, disk.last)
	}
	d.Sees("› Mar") // what was typed is still there
}

func TestAnotherPlaceThatIsNone(t *testing.T) {
	d, disk := full(t)
	d.elsewhere()
	d.keys("nowhere", "<enter>")
	d.Sees("not saved: there is no folder nowhere", "^S where to save")
	d.elsewhere()
	d.keys("<esc>")
	d.at(assess.FactContact)
	if disk.last != nil {
		t.Error("saved")
	}
}

func TestAnotherPlaceWhileLeaving(t *testing.T) {
	d, disk := full(t)
	d.keys("<ctrl+c>")
	d.Sees("^S where to save", "leave without saving")
	d.elsewhere()
	d.keys("stick", "<enter>")
	if !d.Quit || disk.last == nil {
		t.Errorf("quit %v, kept %+v", d.Quit, disk.last)
	}
}

// Where saving works, or there is no other place, none is offered.
func TestNoOtherPlaceWithoutNeed(t *testing.T) {
	d := inOrder(t, newVisit())
	d.keys("Alder", "<enter>")
	d.SeesNot("where to save")
	d.disk.fail = errors.New("the disk is full")
	d.keys("Marta", "<enter>")
	d.SeesNot("where to save")
	d.elsewhere()
	d.at(assess.FactPlace)
}

// Until the save is done the screen says so: what it shows without "saving" is
// on the disk.
func TestTheScreenSaysWhenAnAnswerIsKept(t *testing.T) {
	m := inOrder(t, newVisit()).m
	d := driverOf(t, m, nil)
	d.keys("Alder")
	_, cmd := m.Update(screentest.Key("<enter>"))
	d.at(assess.FactContact)
	d.Sees("saving · ")
	m.Update(cmd())
	d.SeesNot("saving")
	d.Sees("questions left")
}
