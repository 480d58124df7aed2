//go:build unix

package screentest

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

// Styles are the parameters of all styles that something to be seen was written
// in, each once.
func (x *Terminal) Styles() []string {
	var list []string
	for _, styled := range strings.Split(x.Written(), "\x1b[")[1:] {
		params := styled[:len(styled)-len(strings.TrimLeft(styled, "0123456789;"))]
		text, isStyle := strings.CutPrefix(styled[len(params):], "m")
		if isStyle && strings.TrimSpace(text) != "" && !slices.Contains(list, params) {
			list = append(list, params)
		}
	}
	return list
}
