package store

import (
	"strings"

	"cutbrief/assess/sanitize"
	"cutbrief/rules/message"
)

// Farewell is what somebody who leaves the work on a visit is told: where it is,
// how to go on, and what could not be kept. Open is how many questions are.
func (s *Session) Farewell(open int, unkept []string, unsaved error) (lines []message.Message, err error) {
	if path := s.SavedAt(); path != "" || unsaved == nil {
		where, next := WhereItIs(path, open)
		lines = append(lines, where, next)
	}
	if s.Other != "" {
		lines = append(lines, message.New("Another program changed {1} meanwhile. Both are kept: compare them.", shown(s.Other)))
	}
	if len(unkept) > 0 {
		lines = append(lines, message.New("Typed but not understood, and so not kept: {1}", shown(strings.Join(unkept, "; "))))
	}
	if unsaved != nil {
		err = message.WithHint(message.Errorf("the last answers are not saved: {1}", unsaved), "make the file writable, then answer them again")
	}
	return lines, err
}

// WhereItIs says where a visit is, and how to go on. path is "" if nothing was
// ever saved.
func WhereItIs(path string, open int) (where, next message.Message) {
	switch {
	case path == "":
		return message.ID("Nothing was answered, so nothing was saved.").Message(), message.New("To start again: {1}", message.Name("cutbrief interview"))
	case open > 0:
		return message.New("The draft is in {1}.", shown(path)), message.New("To go on: {1}", command("interview", path))
	}
	return message.New("The visit is in {1}.", shown(path)), message.New("To make its page: {1}", command("brief", path))
}

// WhereRecordIs says where the record of a demonstration is, and what comes next.
// path is "" if nothing was noted.
func WhereRecordIs(path string) []message.Message {
	if path == "" {
		return []message.Message{message.New("Nothing was noted, so nothing was saved.")}
	}
	return []message.Message{message.New("The record is in {1}.", shown(path)), message.New("To follow up: {1}", command("followup", path))}
}

// shown is a text that may come from outside, on one line.
func shown(text string) message.Name {
	return message.Name(strings.ReplaceAll(sanitize.Lines(text), "\n", " "))
}

// command is what to type to do something with a file.
func command(name, path string) message.Name {
	return message.Name("cutbrief " + name + " " + ShellWord(string(shown(path))))
}

// Unfinished says which of the last visits of the folder still have open
// questions, one a line behind the first; nothing if none has. A folder that
// cannot be read is no reason not to start a new visit.
func (f Folder) Unfinished() (lines []message.Message) {
	const lookedAt, most = 20, 3
	for _, e := range f.Newest(lookedAt) {
		if e.Open > 0 {
			lines = append(lines, message.New("  {1}", command("interview", e.Path)))
		}
	}
	if len(lines) == 0 {
		return nil
	}
	head := message.Counted(len(lines), "{1} visit unfinished in {2}:", "{1} visits unfinished in {2}:", shown(f.Dir))
	return append([]message.Message{head}, lines[:min(len(lines), most)]...)
}
