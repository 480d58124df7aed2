package report

import (
	"reflect"
	"slices"

	"cutbrief/rules/message"
)

// said puts everything worded in what a builder made into the words of a book,
// nil for our own, and takes out the marks of texts that are not ours to word.
// Whatever leaves this package goes through here. It walks all fields, so that
// one added later is not forgotten.
func said[T any](made T, words *message.Catalog) T {
	wordIn(reflect.ValueOf(&made).Elem(), words)
	return made
}

// keys are the fields that programs read and people do not: they stay as they
// are in every language.
var keys = []string{"ID", "SystemID", "Topic", "Outcome"}

var (
	textType   = reflect.TypeFor[string]()
	reportPath = reflect.TypeFor[Brief]().PkgPath()
)

// wordIn says the texts of one value. Named strings are keys; structs of other
// packages are not ours.
func wordIn(v reflect.Value, words *message.Catalog) {
	switch v.Kind() {
	case reflect.String:
		if v.Type() == textType {
			v.SetString(words.Say(v.String()))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			wordIn(v.Elem(), words)
		}
	case reflect.Slice:
		if v.Len() > 0 {
			v.Set(reflect.AppendSlice(reflect.MakeSlice(v.Type(), 0, v.Len()), v)) // never into a shared table
		}
		fallthrough
	case reflect.Array:
		for i := range v.Len() {
			wordIn(v.Index(i), words)
		}
	case reflect.Struct:
		wordFields(v, words)
	}
}

func wordFields(v reflect.Value, words *message.Catalog) {
	if v.Type().PkgPath() != reportPath {
		return
	}
	for i := range v.NumField() {
		f := v.Type().Field(i)
		if f.IsExported() && !slices.Contains(keys, f.Name) {
			wordIn(v.Field(i), words)
		}
	}
}
