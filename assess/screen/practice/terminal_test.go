//go:build unix

package practice

import (
	"strings"
	"testing"

	"cutbrief/assess/screen/screentest"
)

// A whole practice on a real terminal that answers no query.
func TestTerminal(t *testing.T) {
	x := screentest.Start(t, screentest.Self(envCase+"=bench-top"), screentest.Options{Mute: true})
	x.Sees("Which metals do you cut?")
	x.Types("\r1\r\t")
	x.Sees("How thick is the mild steel")
	x.Types("\x01\x06")
	x.Sees("39 of 42 min left")
	x.Types("6 mm\r\x14")
	x.Sees("Which requirement decides this sale?")
	x.Types("5\r")
	x.Sees("Which system would you offer?")
	x.Types("3\r")
	x.Sees("Which cuts would you show")
	x.Types("8\r")
	x.Sees("HOW IT WENT")
	x.Types("q")
	x.Ends()
	if written := x.Written(); !strings.Contains(written, "marked true, true, <nil>") {
		t.Errorf("ended with %q", written[max(0, len(written)-200):])
	}
	x.AskedNothing()
}
