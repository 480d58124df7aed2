package message

import (
	"errors"
	"strings"
	"unicode"
	"unicode/utf8"
)

// ID identifies a message. It is the English wording, in which {1} to {9} stand
// for the arguments: "needs {1}, gives {2}". A text that is typed ID in a table
// or a call is found by the test that holds every catalog complete.
type ID string

// Message is something to say to a person: an identifier and what fills its
// holes. It becomes words once, where a Catalog prints it. The zero Message says
// nothing.
type Message struct {
	id   ID
	one  ID    // the wording for exactly one, where the first argument is a Count
	args []any // Message, ID, Name, Figure, Count or error
	list []Message
	sep  string // between the messages of a list
	last ID     // joins the last two of a list: "{1} and {2}"; "" for sep
	form form
}

// form is what a sentence asks of the words printed.
type form uint8

const (
	asItIs form = iota
	sentence
	capital
	stopped
	unstopped
)

// Name is a text that is not ours to word: what somebody typed, a name, an
// identifier, a path. It is printed as it is in every language.
type Name string

// Figure is a number with or without its unit, rounded already and written as
// unit.Show writes it: "12.7 mm", "3/8 in", "1,950". A catalog gives it the marks
// and unit names of its language.
type Figure string

// Count is a whole number of things. It chooses between the wordings for one and
// for several.
type Count int

// New is a message with its arguments in the order of its holes: each a
// Message, an ID, a Name, a Figure, a Count or an error. Anything else is a fault of the
// caller and is printed as such.
func New(id ID, args ...any) Message { return Message{id: id, args: args} }

// Counted is a message about n things. one is its wording for exactly one,
// several that for any other number; {1} stands for n in both, and the other
// arguments follow. A language with more forms has rows for them in its catalog.
func Counted(n int, one, several ID, args ...any) Message {
	return Message{id: several, one: one, args: append([]any{Count(n)}, args...)}
}

// Text is a message that is nothing but a text of somebody else's.
func Text(name string) Message {
	if name == "" {
		return Message{}
	}
	return New("{1}", Name(name))
}

// Number is a message that is nothing but a figure.
func Number(figure string) Message {
	if figure == "" {
		return Message{}
	}
	return New("{1}", Figure(figure))
}

// Message makes a Message of an ID without holes.
func (id ID) Message() Message {
	if id == "" {
		return Message{}
	}
	return Message{id: id}
}

// Join puts messages side by side, with a sign between them that is the same in
// every language, such as "; ". Empty ones are passed over.
func Join(sep string, list ...Message) Message { return Message{sep: sep, list: list} }

// Each is a message for every item of a list.
func Each[T any](list []T, of func(T) Message) []Message {
	messages := make([]Message, len(list))
	for i, item := range list {
		messages[i] = of(item)
	}
	return messages
}

// And lists messages: "a, b and c".
func And(list ...Message) Message { return Message{sep: ", ", last: "{1} and {2}", list: list} }

// Or lists messages: "a, b or c".
func Or(list ...Message) Message { return Message{sep: ", ", last: "{1} or {2}", list: list} }

// Sentence begins the message with a capital and ends it with a full stop,
// unless it ends with a mark already.
func (m Message) Sentence() Message { return m.with(sentence) }

// Capital begins the message with a capital.
func (m Message) Capital() Message { return m.with(capital) }

// Stop ends the message with a full stop, unless it ends with a mark already.
func (m Message) Stop() Message { return m.with(stopped) }

// Within begins the message with a small letter, as it stands within a sentence.
// A row that begins with a small letter serves for it.
func (m Message) Within() Message {
	if len(m.list) > 0 {
		m.list = append([]Message{m.list[0].Within()}, m.list[1:]...)
		return m
	}
	m.id, m.one = ID(lowFirst(string(m.id))), ID(lowFirst(string(m.one)))
	return m
}

// Unstopped leaves out the full stop a sentence ends with.
func (m Message) Unstopped() Message { return m.with(unstopped) }

func (m Message) with(f form) Message {
	if m.IsEmpty() {
		return m
	}
	if m.form != asItIs {
		m = Message{list: []Message{m}}
	}
	m.form = f
	return m
}

// IsEmpty reports whether the message says nothing.
func (m Message) IsEmpty() bool {
	for _, part := range m.list {
		if !part.IsEmpty() {
			return false
		}
	}
	return m.id == ""
}

// Or is the message, or another where it says nothing.
func (m Message) Or(other Message) Message {
	if m.IsEmpty() {
		return other
	}
	return m
}

// ID is the identifier, "" for a list.
func (m Message) ID() ID { return m.id }

// String is the message in English, for errors, tests and programs.
func (m Message) String() string { return english().Print(m) }

// MarshalText writes the message in English: what programs read has one language.
func (m Message) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// shaped gives printed words the form asked for.
func (f form) shaped(s string) string {
	if s == "" {
		return s
	}
	switch f {
	case sentence, capital:
		s = capFirst(s)
	case unstopped:
		return strings.TrimSuffix(s, ".")
	}
	if end, _ := utf8.DecodeLastRuneInString(s); (f == sentence || f == stopped) && !strings.ContainsRune(".!?:…", end) {
		s += "."
	}
	return s
}

// IsNeutral reports whether an identifier is only holes and signs, which every
// language shares.
func (id ID) IsNeutral() bool {
	return !strings.ContainsFunc(string(id), unicode.IsLetter)
}

// Error is an error that says what happened as a message, and what to do about it
// if Hint is not empty. Error prints what happened in English; a catalog prints
// both in other words.
type Error struct {
	Message, Hint Message
	err           error
}

// WithHint is an error that also says what to do about it.
func WithHint(err error, hint ID, args ...any) error {
	return &Error{Of(err), New(hint, args...), err}
}

// Errorf is an error with its message and arguments, as New takes them. An
// argument that is an error is printed as Of says, and is what errors.Is and
// errors.As look into.
func Errorf(id ID, args ...any) error {
	var wrapped []error
	for _, arg := range args {
		if err, ok := arg.(error); ok {
			wrapped = append(wrapped, err)
		}
	}
	return &Error{Message: New(id, args...), err: errors.Join(wrapped...)}
}

// Error is the message in English.
func (e *Error) Error() string { return e.Message.String() }

// Unwrap is the error it was made of, nil if there is none.
func (e *Error) Unwrap() error { return e.err }

// Of is what an error says: its message, a field or a method. An error of the system or of a library is a message
// if its text has a row in a catalog, and otherwise stays as it is.
func Of(err error) Message {
	switch e := err.(type) {
	case *Error:
		return e.Message
	case interface{ Message() Message }:
		return e.Message()
	}
	return Worded(err.Error())
}

// Worded is a text that may be the wording of a message: it is printed in other
// words where a catalog has a row for it, and otherwise stays as it is.
func Worded(text string) Message {
	if len(Holes(text)) > 0 {
		return Text(text)
	}
	return New(ID(text))
}
