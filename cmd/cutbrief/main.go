package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"runtime"
	"runtime/debug"
	"syscall"

	"github.com/spf13/cobra"

	"cutbrief/rules/message"
)

func main() {
	debug.SetGCPercent(garbageOfAPage)
	os.Exit(run(realEnvironment()))
}

// garbageOfAPage is how much garbage there may be, in per cent of what is kept: as
// much as a page makes in all, so that it is written before any is collected.
const garbageOfAPage = 200

// app is one run of the program.
type app struct {
	environment
	running bool // the command line was understood and a command is running
	rows    map[*cobra.Command]*command
}

// run runs one command and returns the exit status.
func run(e environment) int { return (&app{environment: e}).execute() }

// untilInterrupted is what a command waits with that has something to do when it
// is interrupted. All others an interrupt ends at once, which a shell tells as
// status 130: to watch for it takes a thread, and a tenth of a short command.
func untilInterrupted() (context.Context, context.CancelFunc) {
	return signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
}

// execute reads the command line, runs what it names, reports what went wrong
// and returns the exit status. A panic is our fault and never the user's: it is
// reported as any other failure.
func (a *app) execute() int {
	root := a.tree()
	root.SetArgs(a.args)
	err := func() (err error) {
		defer func() {
			if r := recover(); r != nil {
				err = message.WithHint(message.Errorf("a fault in the program: {1}", message.Name(fmt.Sprint(r))), "please report it, with the command and the file")
			}
		}()
		return root.Execute()
	}()
	switch {
	case err == nil:
		return exitDone
	case errors.Is(err, errInterrupted):
		return exitInterrupted
	}
	return complain(a.err, a.helpWords(), err, a.running)
}

// version is what the build recorded: a tag, a revision, or that it is a
// development build.
func version() string {
	v := "development build"
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		v = info.Main.Version
	}
	return fmt.Sprintf("cutbrief %s, %s, %s/%s", v, runtime.Version(), runtime.GOOS, runtime.GOARCH)
}

// build tells this build of the program from any other.
func build() string {
	if path, err := os.Executable(); err == nil {
		if info, err := os.Stat(path); err == nil {
			return fmt.Sprintf("%s %d %d", version(), info.Size(), info.ModTime().UnixNano())
		}
	}
	return version()
}
