package main

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets the test binary stand in for the program, so that scripts and
// terminals run the real thing, with a clock and names that stay the same.
func TestMain(m *testing.M) {
	os.Setenv(raceOptions, noSleep)
	testscript.Main(m, map[string]func(){
		"cutbrief": func() { os.Exit(run(fixedEnvironment())) },
	})
}

// Under the race detector a program sleeps a second before it ends, for the
// races of that second. Ours has ended everything by then, and runs often here.
const (
	raceOptions = "GORACE"
	noSleep     = "atexit_sleep_ms=0"
)

// fixedEnvironment is the real one on an invented afternoon, on a machine set to
// no language.
func fixedEnvironment() environment {
	w := realEnvironment()
	w.getenv = func(name string) string {
		if name == "LANG" || strings.HasPrefix(name, "LC_") {
			return ""
		}
		return os.Getenv(name)
	}
	w.now = func() time.Time { return time.Date(2026, 3, 12, 14, 30, 0, 0, time.UTC) }
	w.newID = func() string { return fmt.Sprintf("visit-%d", 1) }
	return w
}
