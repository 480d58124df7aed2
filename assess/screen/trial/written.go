//go:build unix

package trial

import (
	"regexp"
	"slices"
	"strings"
)

var style = regexp.MustCompile(`\x1b\[[0-9;]*m`)

// AskedNothing fails if the program has asked the terminal for its colours, its
// cursor or what it is: one that never replies would keep the program waiting.
func (x *Terminal) AskedNothing() {
	x.T.Helper()
	for _, query := range []string{"\x1b]11;?", "\x1b]10;?", "\x1b[6n", "\x1b[c"} {
		if strings.Contains(x.Written(), query) {
			x.T.Errorf("the terminal is asked %q", query)
		}
	}
}

// IsPlain fails if a colour or another style has been written.
func (x *Terminal) IsPlain() {
	x.T.Helper()
	for _, seq := range style.FindAllString(x.Written(), -1) {
		if seq != "\x1b[m" && seq != "\x1b[0m" {
			x.T.Errorf("a style is written: %q", seq)
		}
	}
}

// Styles are the parameters of all styles written, each once.
func (x *Terminal) Styles() []string {
	var list []string
	for _, seq := range style.FindAllString(x.Written(), -1) {
		if said := strings.TrimSuffix(strings.TrimPrefix(seq, "\x1b["), "m"); !slices.Contains(list, said) {
			list = append(list, said)
		}
	}
	return list
}
