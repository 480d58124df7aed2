package assess

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"cutbrief/rules/message"
)

// object is one kind of JSON object in a saved visit: a row for each field.
// Reading, writing, the schema, the report of what is unknown, and the redacted
// copy all go by these rows.
type object[T any] struct {
	says   message.ID // for the schema; "" where the field that holds it says it
	fields []field[T]
	extra  func(*T) *extras       // where unknown fields are kept
	title  func(*T) string        // begins the report of an unknown field; nil at the root
	known  func(*T) bool          // nil where every such object is
	check  func(d *decoder, t *T) // looks at what no field shows by itself
	schema func(n node)           // adds to the schema
}

// field is one row: everything about one field of an object. T is what holds it
// in memory.
type field[T any] struct {
	name     string
	says     message.ID // for the schema and the page of formats
	kind     kind[T]
	since    int             // version of the format that gave it a meaning; 0 is the first
	required message.Message // what is wrong with an object that has none; empty where it may be left out
	written  func(*T) bool   // when it is written; nil is whenever it says something
	shared   bool            // stays in a redacted copy: it names nobody and quotes nobody
}

// kind is how the values of a field are read, written and described.
type kind[T any] interface {
	read(d *decoder, name string, t *T)
	empty(t *T) bool
	append(out []byte, t *T) ([]byte, error)
	share(to, from *T) // copies what names nobody
	schema() node
}

// holder is a kind that holds objects, in which something may be unknown.
type holder[T any] interface {
	unknown(t *T, within string) []string
}

// extras are unknown fields as they stood in the file.
type extras map[string]json.RawMessage

// next goes on to the next member and returns its row, −1 if it is unknown, and its
// name. Members mostly come in the order of the rows, named as we write them.
func (o *object[T]) next(d *decoder, from int, first bool) (row int, name string, ok bool) {
	if !d.more('}', first) {
		return 0, "", false
	}
	for i := from; i < len(o.fields); i++ {
		if d.passes(o.fields[i].name) {
			return i, o.fields[i].name, true
		}
	}
	raw, ok := d.name()
	if !ok {
		return 0, "", false
	}
	name = d.unquoted(raw)
	return slices.IndexFunc(o.fields, func(f field[T]) bool { return f.name == name }), name, true
}

// read reads the object at hand into t. A field that is there twice is refused:
// which of the two was meant cannot be known.
func (o *object[T]) read(d *decoder, t *T) {
	if !d.enter('{') {
		d.value()
		d.failWith("a JSON object is expected")
		return
	}
	seen, next := uint64(0), 0
	for first := true; ; first = false {
		i, name, ok := o.next(d, next, first)
		if !ok {
			break
		}
		switch {
		case i < 0:
			d.keep(o.extra(t), name)
			continue
		case o.fields[i].since > d.version:
			d.keep(o.extra(t), fmt.Sprintf("%s-in-version-%d", name, d.version))
			continue
		case seen&(1<<i) != 0:
			d.failWith("field {1} is there twice", quote(name))
		}
		seen, next = seen|1<<i, i+1
		o.fields[i].kind.read(d, name, t)
	}
	o.missing(d, seen, t)
	if d.err == nil && o.check != nil {
		o.check(d, t)
	}
}

// missing fails for the first required field that is not there.
func (o *object[T]) missing(d *decoder, seen uint64, t *T) {
	for i := range o.fields {
		f := &o.fields[i]
		if !f.required.IsEmpty() && (seen&(1<<i) == 0 || f.written == nil && f.kind.empty(t)) {
			d.failWith("{1}", f.required)
		}
	}
}

// append writes the object: its fields in the order of the rows, and then those
// that are unknown.
func (o *object[T]) append(out []byte, t *T) (_ []byte, err error) {
	out = append(out, '{')
	separate := ""
	for i := range o.fields {
		f := &o.fields[i]
		if f.written == nil && f.kind.empty(t) || f.written != nil && !f.written(t) {
			continue
		}
		out = append(append(append(append(out, separate...), '"'), f.name...), `":`...)
		if out, err = f.kind.append(out, t); err != nil {
			return nil, message.Errorf("field {1}: {2}", quote(f.name), err)
		}
		separate = ","
	}
	extra := *o.extra(t)
	for _, name := range slices.Sorted(maps.Keys(extra)) {
		out = appendText(append(out, separate...), name)
		out = append(append(out, ':'), extra[name]...)
		separate = ","
	}
	return append(out, '}'), nil
}

// unknown lists what this program does not know, here and in what is held here.
func (o *object[T]) unknown(t *T, within string) []string {
	title, before := within, ""
	if o.title != nil {
		title = strings.TrimPrefix(within+", "+o.title(t), ", ")
		before = title + ": "
	}
	var list []string
	for _, name := range slices.Sorted(maps.Keys(*o.extra(t))) {
		list = append(list, before+"field "+string(quote(name)))
	}
	for i := range o.fields {
		if h, ok := o.fields[i].kind.(holder[T]); ok {
			list = append(list, h.unknown(t, title)...)
		}
	}
	if o.known != nil && !o.known(t) {
		list = append(list, title)
	}
	return list
}

// share copies what a redacted copy keeps.
func (o *object[T]) share(to, from *T) {
	for i := range o.fields {
		if o.fields[i].shared {
			o.fields[i].kind.share(to, from)
		}
	}
}

// describe is the schema of the object.
func (o *object[T]) describe() node {
	properties, n := node{}, node{"type": "object"}
	var required []string
	for i := range o.fields {
		f := &o.fields[i]
		value := f.kind.schema()
		value["description"] = f.says
		properties[f.name] = value
		if !f.required.IsEmpty() {
			required = append(required, f.name)
		}
	}
	n["properties"] = properties
	if required != nil {
		n["required"] = required
	}
	if o.says != "" {
		n["description"] = o.says
	}
	if o.schema != nil {
		o.schema(n)
	}
	return n
}
