package talk

import (
	"bufio"
	"fmt"
	"io"

	"cutbrief/assess/casebook"
)

// lineMost is how many bytes of a line are taken.
const lineMost = 64 << 10

// Run talks until the trainee leaves or the input ends. marked is false if it
// ended before the mark; the error is that of reading the input.
func Run(in io.Reader, out io.Writer, s *casebook.Session) (m casebook.Mark, marked bool, err error) {
	t := New(s, 0)
	fmt.Fprintf(out, "%s> ", t.Opening())
	lines := bufio.NewScanner(in)
	lines.Buffer(nil, lineMost)
	for t.Stage() != Left && lines.Scan() {
		fmt.Fprint(out, t.Line(lines.Text()))
		if t.Stage() != Left {
			fmt.Fprint(out, "> ")
		}
	}
	if t.Stage() != Left {
		fmt.Fprintln(out)
		if t.Stage() != Marked {
			fmt.Fprintln(out, "The input has ended before the mark. The practice is not counted.")
		}
	}
	m, marked = t.Mark()
	return m, marked, lines.Err()
}
