package message_test

import (
	"errors"
	"io/fs"
	"strings"
	"testing"

	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
)

func TestErrors(t *testing.T) {
	german, _ := catalog.Read(strings.NewReader("english,words\n@language tag,de\n\"read {1}: {2}\",\"{1} lesen: {2}\"\nfile does not exist,die Datei gibt es nicht\n"), "de")
	err := message.Errorf("read {1}: {2}", message.Name("a.json"), fs.ErrNotExist)
	if got, want := err.Error(), "read a.json: file does not exist"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := german.Print(message.Of(err)), "a.json lesen: die Datei gibt es nicht"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if !errors.Is(err, fs.ErrNotExist) {
		t.Error("what it wraps is not found")
	}
	for _, text := range []string{"no row {1} for 100 %s", "100 % of it"} {
		if got := german.Print(message.Of(errors.New(text))); got != text {
			t.Errorf("%q became %q", text, got)
		}
	}
	if plain := message.Errorf("nothing to do"); plain.Error() != "nothing to do" || errors.Unwrap(plain) != nil {
		t.Errorf("%v wraps %v", plain, errors.Unwrap(plain))
	}
}
