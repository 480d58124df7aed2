package text

import "testing"

// The expected texts are by hand: a kind that stands among the sources is not
// said again.
func TestAKindOfTrustIsSaidOnce(t *testing.T) {
	for _, c := range []struct{ source, trust, want string }{
		{"", "", ""},
		{"clause 3", "", "[clause 3]"},
		{"common practice", "common practice", "[common practice]"},
		{"clause 3", "published source", "[clause 3; published source]"},
		{"common practice; clause 3", "common practice; published source", "[common practice; clause 3; published source]"},
		{"common practice; the plate", "common practice; as given", "[common practice; the plate; as given]"},
	} {
		if got := sourced(c.source, c.trust); got != c.want {
			t.Errorf("sourced(%q, %q) = %q, want %q", c.source, c.trust, got, c.want)
		}
	}
}
