package main

import (
	"bytes"
	"cmp"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"cutbrief/assess/store"
	"cutbrief/report/export"
	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
)

// put writes a text to standard output, or says why not.
func (c *call) put(text string) error {
	_, err := c.out.Write([]byte(text))
	return writeFailed(err)
}

// writeFailed is the error of writing standard output.
func writeFailed(err error) error {
	if err == nil {
		return nil
	}
	return message.WithHint(message.Errorf("write standard output: {1}", err), "the program that reads the output may have closed it")
}

// putData writes what a renderer made.
func (c *call) putData(data []byte, err error) error {
	if err != nil {
		return err
	}
	return c.put(string(data))
}

// say writes a message and ends the line.
func (c *call) say(words *message.Catalog, id message.ID, args ...any) error {
	return c.put(tidy(words.Print(message.New(id, args...))) + "\n")
}

// output is something to write, and where; "-" is standard output.
type output struct {
	path string
	data []byte
}

// deliver writes documents to standard output or to their files, over others with
// --force, and prints their paths. What a program that was killed left in the folder goes first.
func (c *call) deliver(list ...output) error {
	swept := ""
	for _, d := range list {
		if d.path == "-" {
			return c.put(string(d.data))
		}
		if dir := filepath.Dir(d.path); dir != swept {
			store.Sweep(dir)
			swept = dir
		}
		if err := store.WriteFile(d.path, d.data, c.on("force")); err != nil {
			return err
		}
		if err := c.put(tidy(d.path) + "\n"); err != nil {
			return err
		}
	}
	return nil
}

// bookFlags say where a workbook goes.
var bookFlags = []option{
	{name: "out", value: "", usage: "`path` of the workbook of --format xlsx; - is standard output"},
	{name: "force", value: false, usage: "write over a file that exists"},
}

// deliverBook writes a workbook to where --out says, else to a file of this name.
func (c *call) deliverBook(name string, tables ...tabular.Table) error {
	path := cmp.Or(c.text("out"), name)
	if err := c.noTerminal(path, "name a file with --out"); err != nil {
		return err
	}
	var made bytes.Buffer
	if err := tabular.WriteWorkbook(&made, tables...); err != nil {
		return err
	}
	return c.deliver(output{path, made.Bytes()})
}

// onlyBook refuses --out and --force with any other format.
func (c *call) onlyBook() error {
	if c.flags.Lookup("out") != nil && c.form() != export.FormatWorkbook && (c.text("out") != "" || c.on("force")) {
		return misuse(message.ID("other formats are written to standard output").Message(), "--out and --force go with --format xlsx")
	}
	return nil
}

// noTerminal refuses to write a PDF or a workbook to a terminal.
func (c *call) noTerminal(path string, instead message.ID) error {
	if path == "-" && isTerminal(c.out) {
		what := message.ID("a PDF cannot be shown in a terminal")
		if c.form() == export.FormatWorkbook {
			what = "a workbook cannot be shown in a terminal"
		}
		return misuse(instead.Message(), what)
	}
	return nil
}

// shellName is a path as it is typed in a command.
func shellName(path string) message.Name { return message.Name(store.ShellWord(tidy(path))) }

// putWords writes a text in the words in use.
func (c *call) putWords(text func(*message.Catalog) string) error {
	words, err := c.words()
	if err != nil {
		return err
	}
	return c.put(text(words))
}

// putLines writes messages in the words in use, one a line.
func (c *call) putLines(lines []message.Message) error {
	return c.putWords(func(words *message.Catalog) string {
		var b strings.Builder
		for _, m := range lines {
			line := words.Print(m)
			margin := line[:len(line)-len(strings.TrimLeft(line, " "))]
			b.WriteString(margin + tidy(line) + "\n")
		}
		return b.String()
	})
}

// progress returns what shows on a terminal how many are done, in words for one
// and for more, and goes away with −1. Elsewhere it shows nothing.
func (c *call) progress(one, more message.ID) func(n int) {
	if !isTerminal(c.err) {
		return func(int) {}
	}
	words := c.helpWords()
	var shown time.Time
	return func(n int) {
		const width = 30
		switch now := c.now(); {
		case n < 0 && !shown.IsZero():
			fmt.Fprintf(c.err, "\r%*s\r", width, "")
		case n >= 0 && now.Sub(shown) > 200*time.Millisecond:
			shown = now
			fmt.Fprintf(c.err, "\r%-*s", width, words.Print(message.Counted(n, one, more)))
		}
	}
}
