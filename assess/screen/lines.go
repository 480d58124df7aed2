package screen

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"strings"

	"cutbrief/rules/message"
)

// lineBytes is how many bytes of one line are taken; the rest of it is left out.
const lineBytes = 64 << 10

// Lines talks line by line, for pipes and simple terminals.
type Lines struct {
	Words *message.Catalog // the language of what is said; nil for English
	in    *bufio.Reader
	out   io.Writer
	err   error // why the input ended, io.EOF if it was just over
}

// NewLines reads from one stream and says on the other.
func NewLines(in io.Reader, out io.Writer, words *message.Catalog) *Lines {
	return &Lines{Words: words, in: bufio.NewReader(in), out: out}
}

// Say says a message on a line of its own.
func (l *Lines) Say(m message.Message) { fmt.Fprintln(l.out, l.Words.Print(m)) }

// Put is Say of a new message.
func (l *Lines) Put(id message.ID, args ...any) { l.Say(message.New(id, args...)) }

// Print prints a text that is in the language already.
func (l *Lines) Print(text string) { fmt.Fprintln(l.out, text) }

// Ask waits behind a prompt for the next line, and returns it without its end;
// false once the input is over. A last line without an end counts.
func (l *Lines) Ask() (string, bool) {
	fmt.Fprint(l.out, "> ")
	return l.next()
}

func (l *Lines) next() (string, bool) {
	var line []byte
	for l.err == nil {
		part, more, err := l.in.ReadLine()
		if err != nil {
			l.err = err
			return "", false
		}
		line = append(line, part[:min(len(part), lineBytes-len(line))]...)
		if !more {
			return strings.TrimRight(string(line), "\r"), true
		}
	}
	return "", false
}

// Text is a line and those behind it, up to one that holds a single dot or to the
// end of the input.
func (l *Lines) Text(first string) string {
	all := []string{first}
	for {
		line, ok := l.next()
		if !ok || strings.TrimSpace(line) == "." {
			return strings.Join(all, "\n")
		}
		all = append(all, line)
	}
}

// Err is the error the input ended with, nil if it was just over.
func (l *Lines) Err() error {
	if l.err == io.EOF {
		return nil
	}
	return l.err
}

// UntilDone is a reader that ends when its context does, even while the reader
// below it waits for a person.
func UntilDone(ctx context.Context, in io.Reader) io.Reader { return untilDone{ctx, in} }

type untilDone struct {
	ctx context.Context
	in  io.Reader
}

func (u untilDone) Read(p []byte) (int, error) {
	type reading struct {
		data []byte
		err  error
	}
	got := make(chan reading, 1)
	go func() {
		own := make([]byte, len(p)) // p is the caller's again once we return
		n, err := u.in.Read(own)
		got <- reading{own[:n], err}
	}()
	select {
	case r := <-got:
		return copy(p, r.data), r.err
	case <-u.ctx.Done():
		return 0, io.EOF
	}
}
