package store

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
)

// List is a kind of file that a user may have of their own, read line by line, in
// place of what is built in.
type List[T any] struct {
	Name    message.ID // of the kind, such as "systems"
	Command string     // that checks such a file and prints one to start from
	BuiltIn func() T
	Read    func(r io.Reader, name string) (T, []tabular.Finding)
	Usable  func(T) message.Message // how much of it can be used
	// Sum is what a check says behind its findings, where that is more than how much
	// can be used; nil if it never is.
	Sum func(own T, path message.Name, wrong int) []message.Message
}

// Load is the list in use: the one at path, or the built-in one if path is "" or,
// unless it was named, nothing is there. One with errors is refused: a page must
// not rest on a line that was not understood.
func (l List[T]) Load(path string, named bool) (own T, err error) {
	if path == "" {
		return l.BuiltIn(), nil
	}
	own, findings, err := l.open(path)
	switch {
	case !named && errors.Is(err, fs.ErrNotExist):
		return l.BuiltIn(), nil
	case err != nil:
		return own, err
	}
	for _, f := range findings {
		if f.Severity == tabular.Error {
			return own, message.WithHint(message.Errorf("{1} {2}: {3}", l.Name, message.Name(path), f.Message()), "see every line with: {1}", l.checkBy(path))
		}
	}
	return own, nil
}

func (l List[T]) checkBy(path string) message.Name {
	return message.Name("cutbrief " + l.Command + " check " + ShellWord(path))
}

// open reads a file and judges every line of it.
func (l List[T]) open(path string) (own T, findings []tabular.Finding, err error) {
	file, err := os.Open(path)
	if err != nil {
		return own, nil, message.WithHint(message.Errorf("read {1} {2}: {3}", l.Name, message.Name(path), Cause(err)),
			"an example to start from: {1}", message.Name("cutbrief "+l.Command+" template"))
	}
	defer file.Close() // only read: nothing to lose
	own, findings = l.Read(file, filepath.Base(path))
	return own, findings, nil
}

// Check is every finding about a file and what it comes to, one a line, and an
// error if there is one among them.
func (l List[T]) Check(path string) (lines []message.Message, err error) {
	own, findings, err := l.open(path)
	if err != nil {
		return nil, err
	}
	for _, f := range findings {
		lines = append(lines, f.Message())
	}
	wrong, name := tabular.Count(findings, tabular.Error), message.Name(path)
	if l.Sum != nil {
		lines = append(lines, l.Sum(own, name, wrong)...)
	} else {
		lines = append(lines, message.New("{1}: {2} can be used", name, l.Usable(own)))
	}
	if wrong > 0 {
		err = message.WithHint(message.Errorf("{1} {2}: {3} to correct", l.Name, name, message.Count(wrong)), "correct the lines above; each says what would be accepted")
	}
	return lines, err
}

// InUse is the list in use in some places: the one that a flag or a variable names,
// the user's own, or the built-in one.
func (l List[T]) InUse(p Places, flag string) (T, error) {
	path, named := p.Own(string(l.Name), flag)
	return l.Load(path, named != "")
}

// Finding says which list is in use, what named it, and how sound it is.
func (l List[T]) Finding(p Places, flag string) Finding {
	f := Finding{What: l.Name}
	path, named := p.Own(string(l.Name), flag)
	l.inspect(&f.Says, path, named)
	return f
}

func (l List[T]) inspect(r *Remarks, path, named string) {
	own, findings, err := l.open(path)
	if path == "" || named == "" && errors.Is(err, fs.ErrNotExist) {
		r.Say("built in, and all of it invented")
		r.Say("{1}", l.Usable(l.BuiltIn()))
		return
	}
	r.Say("{1}", message.Name(path))
	if named != "" {
		r.Say("named by {1}", message.Name(named))
	} else {
		r.Say("kept in your configuration folder")
	}
	if err != nil {
		r.Wrong(message.ID("check the name, or leave it out to use the built-in list").Message(), "cannot be read: {1}", cause(err))
		return
	}
	r.judge(findings, l.Usable(own), l.checkBy(path))
}

// cause is the innermost reason of an error.
func cause(err error) error {
	for inner := err; inner != nil; inner = errors.Unwrap(inner) {
		err = inner
		if joined, is := inner.(interface{ Unwrap() []error }); is {
			return joined.Unwrap()[0]
		}
	}
	return err
}

// judge says how much of a list can be used, and the first things found.
func (r *Remarks) judge(findings []tabular.Finding, usable message.Message, check message.Name) {
	faults, doubts := tabular.Count(findings, tabular.Error), tabular.Count(findings, tabular.Warning)
	r.Say("{1} can be used; {2} to correct, {3} to look at", usable, message.Count(faults), message.Count(doubts))
	const most = 3
	shown := 0
	for _, f := range findings {
		if f.Severity == tabular.Note || shown == most {
			continue
		}
		shown++
		f.Accepted = message.Message{} // what a check tells besides
		r.Say("{1}", f.Message())
	}
	if rest := faults + doubts - shown; rest > 0 {
		r.Say("and {1} more; see them with: {2}", message.Count(rest), check)
	}
	if faults > 0 {
		r.Wrong(message.New("correct the file; line by line: {1}", check), "a file with errors is not used, and neither is the built-in list")
	}
}
