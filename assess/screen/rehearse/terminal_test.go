//go:build unix

package rehearse

import (
	"strings"
	"syscall"
	"testing"

	"cutbrief/assess/screen/screentest"
)

// start runs the rehearsal in a terminal of 80 × 24. A mute one never replies
// to a query.
func start(t *testing.T, mute bool, env ...string) *screentest.Terminal {
	t.Helper()
	return screentest.Start(t, screentest.Self(append(env, envRun+"=1")...), screentest.Options{Mute: mute})
}

// leaves waits until the program is over, and returns all that it wrote.
func leaves(x *screentest.Terminal) string {
	x.T.Helper()
	x.Ends()
	return x.Written()
}

// A terminal that never replies gets its first frame all the same. The time of
// a cut is taken by two keys and compared at once: hardly a second where 18 were
// predicted is too fast.
func TestTerminalTimesACut(t *testing.T) {
	x := start(t, true)
	x.Sees("Takes about 20 min")
	x.Types("\r")
	x.Sees("STRAIGHT CUT, TIMED")
	x.Types(" ")
	x.Sees("Aim at 18.0 s.")
	x.Until(func(screen string) bool { return !strings.Contains(screen, large("0.0 s")[2]) }) // less than a hundredth of a second is no time
	x.Types(" ")
	x.Sees("TOO FAST")
	x.Types("1\r\r")
	x.Sees("THAT IS THE DEMONSTRATION")
	x.Types("k")
	if written := leaves(x); !strings.Contains(written, "noted 1, keep true, <nil>") {
		t.Errorf("%q", written)
	}
	x.AskedNothing()
}

func TestTerminalWithoutColour(t *testing.T) {
	x := start(t, false, "NO_COLOR=1")
	x.Sees("Takes about 20 min")
	x.Types("\r")
	x.Sees("STRAIGHT CUT, TIMED")
	x.IsPlain()
}

func TestTerminalToldToEnd(t *testing.T) {
	for _, sig := range []syscall.Signal{syscall.SIGTERM, syscall.SIGINT} {
		x := start(t, false)
		x.Sees("Takes about 20 min")
		x.Types("\r1")
		x.Sees("Noted: good")
		x.Cmd.Process.Signal(sig)
		if written := leaves(x); !strings.Contains(written, "noted 1, keep false") {
			t.Errorf("%v: %q", sig, written)
		}
	}
}
