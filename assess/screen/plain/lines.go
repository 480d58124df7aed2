package plain

import (
	"bufio"
	"io"
	"strings"
)

// lineMost is how many bytes of one line are taken; the rest of it is left out.
const lineMost = 64 << 10

// lines reads an input line by line, through one buffer.
type lines struct {
	in  *bufio.Reader
	err error // why the input ended, io.EOF if it was just over
}

// next returns the next line without its end; false once the input is over. A
// last line without an end counts.
func (l *lines) next() (string, bool) {
	var line []byte
	for l.err == nil {
		part, more, err := l.in.ReadLine()
		if err != nil {
			l.err = err
			return "", false
		}
		line = append(line, part[:min(len(part), lineMost-len(line))]...)
		if !more {
			return strings.TrimRight(string(line), "\r"), true
		}
	}
	return "", false
}

// text returns lines up to one that holds a single dot, or to the end of the
// input.
func (l *lines) text(first string) string {
	all := []string{first}
	for {
		line, ok := l.next()
		if !ok || strings.TrimSpace(line) == "." {
			return strings.Join(all, "\n")
		}
		all = append(all, line)
	}
}

// ended is the error the input ended with, nil if it was just over.
func (l *lines) ended() error {
	if l.err == io.EOF {
		return nil
	}
	return l.err
}
