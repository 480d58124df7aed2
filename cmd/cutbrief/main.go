package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"runtime"
	"runtime/debug"
	"sync/atomic"
	"syscall"

	"github.com/spf13/cobra"

	"cutbrief/rules/message"
)

func main() { os.Exit(run(realEnvironment())) }

// app is one run of the program.
type app struct {
	environment
	running atomic.Bool // the command line was understood and a command is running
	leaves  atomic.Bool // the command takes an interrupt for leaving, and ends by itself
	rows    map[*cobra.Command]*command
}

// run runs one command and returns the exit status. An interrupt ends it at
// once, unless the command has something to save first.
func run(e environment) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	a := &app{environment: e}
	status := make(chan int, 1)
	go func() { status <- a.execute(ctx) }()
	select {
	case s := <-status:
		return s
	case <-ctx.Done():
		if a.leaves.Load() {
			return <-status
		}
		return exitInterrupted
	}
}

// execute reads the command line, runs what it names, reports what went wrong
// and returns the exit status. A panic is our fault and never the user's: it is
// reported as any other failure.
func (a *app) execute(ctx context.Context) int {
	root := a.tree()
	root.SetArgs(a.args)
	err := func() (err error) {
		defer func() {
			if r := recover(); r != nil {
				err = message.WithHint(message.Errorf("a fault in the program: {1}", message.Name(fmt.Sprint(r))), "please report it, with the command and the file")
			}
		}()
		return root.ExecuteContext(ctx)
	}()
	if err == nil {
		return exitDone
	}
	return complain(a.err, a.helpWords(), err, a.running.Load())
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
