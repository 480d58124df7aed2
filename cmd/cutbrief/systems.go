package main

import (
	"bytes"
	"errors"
	"io/fs"
	"os"

	"cutbrief/assess/screen"
	"cutbrief/assess/store"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// addSystem asks for one system field by field and adds it to a file.
func addSystem(c *call) error {
	path := c.args[0]
	file, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return message.Errorf("read {1}: {2}", message.Name(path), store.Cause(err))
	}
	entry, err := system.ReadEntry(bytes.NewReader(file))
	if err != nil {
		return message.WithHint(message.Errorf("{1}: {2}", message.Name(path), err), "see what is wrong with: cutbrief systems check {1}", shellName(path))
	}
	words, err := c.words()
	if err != nil {
		return err
	}
	lines := screen.NewLines(c.in, c.out, words)
	lines.Put("A system for {1}, from its data sheet. One line each, in any unit; Enter where it is not known, quit leaves without writing.", message.Name(path))
	added, done, possible := lines.AskSystem(entry)
	switch {
	case !done:
		return message.WithHint(message.Errorf("{1} is not finished, so nothing was written", message.Name(path)), "begin anew with: cutbrief systems add {1}", shellName(path))
	case !possible:
		return message.WithHint(message.Errorf("{1} cannot be as it was written down, so nothing was written", message.Name(added.ID)), "look at its data sheet once more")
	}
	if err := store.WriteFile(path, []byte(entry.File()), true); err != nil {
		return err
	}
	lines.Put("{1} is in {2}. To calculate with it: --systems {3}", message.Name(added.Name), message.Name(path), shellName(path))
	return nil
}
