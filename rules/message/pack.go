package message

import (
	"strconv"
	"strings"
)

// packed begins a packed message; no text of ours or of a person does.
const packed = "\x02"

// Pack writes a message as a text, for an index that is shown in any language.
// Unpack reads it. Neither holds a line break that the message has not.
func (m Message) Pack() string { return string(m.pack([]byte(packed))) }

func (m Message) pack(b []byte) []byte {
	b = append(b, 'm', '0'+byte(m.form))
	for _, text := range []string{string(m.id), string(m.one), m.sep, string(m.last)} {
		b = packText(b, text)
	}
	b = strconv.AppendInt(b, int64(len(m.list)), 10)
	b = append(b, ':')
	for _, part := range m.list {
		b = part.pack(b)
	}
	for _, arg := range m.args {
		switch a := arg.(type) {
		case Message:
			b = a.pack(b)
		case ID:
			b = a.Message().pack(b)
		case error:
			b = Of(a).pack(b)
		case Figure:
			b = packText(append(b, 'f'), string(a))
		case Count:
			b = packText(append(b, 'c'), strconv.Itoa(int(a)))
		case Name:
			b = packText(append(b, 'n'), string(a))
		}
	}
	return append(b, ';')
}

func packText(b []byte, text string) []byte {
	b = strconv.AppendInt(b, int64(len(text)), 10)
	return append(append(b, ':'), text...)
}

// Unpack is the message that Pack wrote. A text that is none is somebody else's.
func Unpack(text string) Message {
	rest, ok := strings.CutPrefix(text, packed)
	u := unpacking{rest: rest}
	if !ok || u.kind() != 'm' {
		return Text(text)
	}
	if m := u.message(0); !u.broken && u.rest == "" {
		return m
	}
	return Text(text)
}

// deepest is how deep messages are inside each other; no message of ours is.
const deepest = 20

// unpacking reads a packed message, or finds it broken.
type unpacking struct {
	rest   string
	broken bool
}

func (u *unpacking) kind() byte {
	if u.rest == "" {
		u.broken = true
		return 0
	}
	k := u.rest[0]
	u.rest = u.rest[1:]
	return k
}

func (u *unpacking) number() int {
	digits, rest, ok := strings.Cut(u.rest, ":")
	n, err := strconv.Atoi(digits)
	if !ok || err != nil || n < 0 || n > len(rest) {
		u.rest, u.broken = "", true
		return 0
	}
	u.rest = rest
	return n
}

func (u *unpacking) text() string {
	n := u.number()
	text := u.rest[:n]
	u.rest = u.rest[n:]
	return text
}

func (u *unpacking) message(depth int) (m Message) {
	if depth > deepest {
		u.rest, u.broken = "", true
	}
	m.form = form(u.kind() - '0')
	m.id, m.one, m.sep, m.last = ID(u.text()), ID(u.text()), u.text(), ID(u.text())
	for range u.number() {
		if u.kind() == 'm' {
			m.list = append(m.list, u.message(depth+1))
		}
	}
	for !u.broken {
		switch k := u.kind(); k {
		case ';':
			return m
		case 'm':
			m.args = append(m.args, u.message(depth+1))
		case 'f':
			m.args = append(m.args, Figure(u.text()))
		case 'n':
			m.args = append(m.args, Name(u.text()))
		case 'c':
			n, _ := strconv.Atoi(u.text())
			m.args = append(m.args, Count(n))
		default:
			u.broken = true
		}
	}
	return m
}
