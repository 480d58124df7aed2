package casebook

import (
	"bytes"
	"testing"

	"cutbrief/assess"
)

// The same seed gives the same visits; nearly all can be read, and the few that
// are meant to be broken are not.
func TestMany(t *testing.T) {
	const n = 3000
	first := map[string]string{}
	bad := 0
	for path, data := range ManyVisits(n, 7) {
		first[path] = string(data)
		v, _, err := assess.Decode(data)
		if err != nil {
			bad++
			continue
		}
		if _, problems := v.Job(); len(problems) > 0 || !v.Demo {
			t.Fatalf("%s: %v", path, problems)
		}
		if bytes.Contains(data, []byte("BLANK")) {
			t.Fatalf("%s has a blank", path)
		}
	}
	if len(first) != n || bad == 0 || bad > n/100 {
		t.Errorf("%d visits, %d broken", len(first), bad)
	}
	for path, data := range ManyVisits(n, 7) {
		if first[path] != string(data) {
			t.Fatalf("%s differs the second time", path)
		}
	}
}
