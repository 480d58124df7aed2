package message

import "errors"

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

// Of is what an error says. An error of the system or of a library is a message
// if its text has a row in a catalog, and otherwise stays as it is.
func Of(err error) Message {
	if e, ok := err.(*Error); ok {
		return e.Message
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
