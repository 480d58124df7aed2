//go:build linux || darwin

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"cutbrief/assess/screen/screentest"
)

// large is a terminal that is waited for far longer than the program needs, also
// where many tests share the machine.
var large = screentest.Options{Width: 100, Height: 30, Patience: 20 * time.Second}

// draw runs the program in a folder, in a terminal that draws what it is given
// and answers what it is asked, as a real one does.
func draw(t *testing.T, dir string, args ...string) *screentest.Terminal {
	t.Helper()
	return drawAs(t, dir, exec.Command("cutbrief", args...))
}

// drawAs runs a command that runs the program.
func drawAs(t *testing.T, dir string, cmd *exec.Cmd) *screentest.Terminal {
	t.Helper()
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "NO_COLOR=1", "HOME="+dir,
		"XDG_DATA_HOME="+filepath.Join(dir, "data"), "XDG_CONFIG_HOME="+filepath.Join(dir, "config"))
	return screentest.Start(t, cmd, large)
}
