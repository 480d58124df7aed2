package assess

import (
	"strconv"
	"strings"
	"unicode/utf8"
	"unsafe"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
)

// Decode reads a saved visit. It refuses a newer version by name
// (ErrNewerFormat), a foreign format (ErrForeign), and anything over its
// limits; unknown fields and questions are kept, and listed so that they can
// be reported. A value of the wrong type is an error that names the question,
// the value and what is accepted. An answer of the right type that cannot be
// understood is kept: Job reports it.
func Decode(data []byte) (v *Visit, unknown []string, err error) {
	v = &Visit{}
	strange, err := v.decode(string(data))
	if err != nil {
		return nil, nil, message.Errorf("read visit: {1}", err)
	}
	if strange {
		unknown = visitObject().unknown(v, "")
	}
	return v, unknown, nil
}

// DecodeInto reads a visit as Decode does, for readers of very many: into the room
// of one that was read before, whose contents are gone, and without a copy. The
// texts of the visit are parts of data, and change with it.
func DecodeInto(v *Visit, data []byte) error {
	*v = Visit{Answers: v.Answers[:0], Demonstrations: v.Demonstrations[:0]}
	if _, err := v.decode(unsafe.String(unsafe.SliceData(data), len(data))); err != nil {
		return message.Errorf("read visit: {1}", err)
	}
	return nil
}

// emptied makes room for an answer where another was.
func emptied(a *Answer) { *a = Answer{Chosen: a.Chosen[:0]} }

// decode reads a visit into an empty one, and reports whether there is anything
// in it that this program does not know.
func (v *Visit) decode(text string) (strange bool, err error) {
	text = strings.TrimPrefix(text, "\uFEFF")                // some editors put a mark at the start
	data := unsafe.Slice(unsafe.StringData(text), len(text)) // only read
	switch {
	case len(data) > MaxSize:
		return false, message.Errorf("{1} bytes: {2}", whole(len(data)), ErrTooLarge)
	case !utf8.Valid(data):
		return false, message.Errorf("the file is not UTF-8 text")
	}
	d := decoder{scanner: scanner{data: data, at: skipSpace(data, 0)}, copy: text}
	if d.version, d.err = formatOf(data); d.err == nil {
		visitObject().read(&d, v)
	}
	if d.err != nil && !isWellFormed(data) || d.broken || d.err == nil && skipSpace(data, d.at) != len(data) {
		return false, wellFormed(data)
	}
	return d.strange, d.err
}

// formatOf looks at format and version before anything else: the rest of a
// foreign file means nothing. Our own files begin with both.
func formatOf(data []byte) (version int, err error) {
	s := scanner{data: data, at: skipSpace(data, 0)}
	if !s.enter('{') {
		return 0, message.Errorf("a JSON object is expected")
	}
	d := decoder{}
	var format, number []byte
	for first := true; (format == nil || number == nil) && s.more('}', first); first = false {
		raw, ok := s.name()
		if !ok {
			break
		}
		switch value := s.value(); d.unquoted(raw) {
		case "format":
			format = value
		case "version":
			number = value
		}
	}
	if len(format) == 0 || format[0] != '"' || d.unquoted(format) != formatName {
		return 0, message.Errorf("{1}: the file's format is {2}; {3} is accepted", ErrForeign, quote(string(format)), quote(formatName))
	}
	version, err = strconv.Atoi(string(number))
	switch {
	case number != nil && (err != nil || version < 0):
		d.fail("version", string(number), message.ID("a whole number"))
		return 0, d.err
	case version > formatVersion:
		return 0, message.Errorf("{1}: this file is format version {2}; this program reads version 1 to {3}", ErrNewerFormat, whole(version), whole(formatVersion))
	case version < 1:
		return 0, message.Errorf("this file has no format version; version 1 to {1} is accepted", whole(formatVersion))
	}
	return version, nil
}

// checkAnswer cleans what was said as its question has it, and reports what is
// wrong with the shape of an answer.
func checkAnswer(d *decoder, a *Answer) {
	if a.State == "" {
		a.State = Told
	}
	d.place = placeNear(a.Question, d.place)
	known := d.place < len(catalogue)
	if !known {
		d.strange, d.place = true, 0
	}
	if long := !known || catalogue[d.place].Form == FormLong; !isPlain(a.Said, long) {
		if fits := room(a.Said, long); !fits.IsEmpty() {
			d.fail("said", `"`+a.Said+`"`, message.New("a text of {1}", fits))
			return
		}
		a.Said = clean(a.Said, long)
	}
	if !known {
		return
	}
	q, listed := catalogue[d.place], false
	if a.Metal != "" {
		_, listed = metal.Find(a.Metal)
	}
	switch {
	case q.PerMetal && !listed:
		d.fail("metal", string(a.Metal), asSaved(metalOptions()))
	case !q.PerMetal && a.Metal != "":
		d.failWith("metal is {1}; none is accepted, as this is asked once", quote(string(a.Metal)))
	case a.State != Unknown && a.Said == "" && len(a.Chosen) == 0:
		d.failWith("nothing is said; give {1}, or the state {2}", q.Example, quote(string(Unknown)))
	}
}

func answerTitle(_ string, i int, a *Answer) message.Message {
	return message.New("answer {1}, question {2}", whole(i+1), quote(string(a.Question)))
}

// placeNear is the place of a question, looked for first behind that of the one
// before.
func placeNear(f rules.Fact, place int) int {
	for i := place; i < min(place+4, len(catalogue)); i++ {
		if catalogue[i].ID == f {
			return i
		}
	}
	return placeOf(f)
}

// answeredTwice refuses a second answer to a step. Answers are mostly in the order
// of the catalogue.
func answeredTwice(d *decoder, before []Answer, a *Answer) error {
	if d.place > d.highest {
		d.highest = d.place
		return nil
	}
	for i := range before {
		if before[i].Question == a.Question && before[i].Metal == a.Metal {
			return message.Errorf("is answered twice; one answer is accepted")
		}
	}
	return nil
}
