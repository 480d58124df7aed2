package plain

import (
	"errors"
	"strings"
	"testing"

	"cutbrief/rules/system"
)

// movable is a disk that is full until it is moved to another place.
type movable struct {
	memory
	place string
}

func (s *movable) MoveTo(place string) error {
	if place == "nowhere" {
		return errors.New("there is no folder nowhere")
	}
	s.place, s.fail = place, nil
	return nil
}

func TestAnotherPlaceInPlainLines(t *testing.T) {
	disk := &movable{memory: memory{fail: errors.New("the disk is full")}}
	var out strings.Builder
	in := "Alder\nsave in nowhere\nSave in stick\nMarta\nsave in our yard\nquit\n"
	v := newVisit()
	got, err := Run(strings.NewReader(in), &out, Options{Visit: v, Range: system.Demo(), Saver: disk})
	if err != nil || got.Unsaved != nil || disk.place != "stick" {
		t.Fatalf("%+v %v, moved to %q", got, err, disk.place)
	}
	for _, want := range []string{"Not saved: the disk is full", "say save in,", "Not saved: there is no folder nowhere.", "Saved in "} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("does not say %q:\n%s", want, out.String())
		}
	}
	// With nothing unsaved the same words are an answer.
	if len(v.Answers) != 3 || v.Answers[2].Said != "save in our yard" {
		t.Errorf("kept %+v", v.Answers)
	}
}
