//go:build linux

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// TestNoSocket runs the commands under a tracer of system calls and finds none
// that belongs to a network: nothing leaves the machine. That the tracer sees
// any call at all is checked with one that every program makes.
func TestNoSocket(t *testing.T) {
	tracer, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("not installed: strace")
	}
	if out, err := exec.Command(tracer, "-f", "-e", "trace=execve", "true").CombinedOutput(); err != nil {
		t.Skipf("nothing can be traced here: %v: %s", err, out)
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "visit.json"), shown(t), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"sample"}, {"interview", "--plain", "new.json"}, {"interview", "--plain", "visit.json"},
		{"brief", "visit.json", "--with", "checklist,working"}, {"brief", "visit.json", "--format", "text"},
		{"why", "visit.json"}, {"next", "visit.json"}, {"cost", "visit.json"}, {"compare", "visit.json"},
		{"followup", "visit.json"}, {"followup", "visit.json", "--format", "ics"}, {"record", "visit.json"},
		{"redact", "visit.json"}, {"review", "."}, {"review", ".", "--by", "rep"}, {"review", ".", "--measured"}, {"practice", "--list"}, {"practice", "--plain"},
		{"brief", "visit.json", "--words", "de", "--format", "markdown"}, {"words"}, {"rules"}, {"formats", "visit"}, {"doctor", "--dir", "."},
		{"systems"}, {"prices"}, {"schema"}, {"version"}, {"guide"},
	} {
		log := filepath.Join(t.TempDir(), "calls")
		cmd := exec.Command(tracer, append([]string{"-f", "-o", log, "-e", "trace=execve,%network", "cutbrief"}, args...)...)
		cmd.Dir = dir
		cmd.Env = append(os.Environ(), "HOME="+dir, "XDG_DATA_HOME="+dir, "XDG_CONFIG_HOME="+dir, "XDG_CACHE_HOME="+dir)
		cmd.Stdin = strings.NewReader("Alder Vale\nMarta\nquit\n")
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Errorf("%q: %v: %s", args, err, out)
		}
		stayedHome(t, log)
	}
	log := filepath.Join(t.TempDir(), "calls")
	d := drawAs(t, dir, exec.Command(tracer, "-f", "-o", log, "-e", "trace=execve,%network", "cutbrief", "interview", "visit.json"))
	d.Sees("make the page")
	d.Tries("p")
	d.Sees("the page is in")
	d.Tries("q")
	d.Ends()
	stayedHome(t, log)
}

// stayedHome looks through a log of system calls.
func stayedHome(t *testing.T, log string) {
	t.Helper()
	calls, err := os.ReadFile(log)
	if err != nil || !strings.Contains(string(calls), "execve(") {
		t.Fatalf("nothing was traced: %v", err)
	}
	for _, call := range []string{"socket(", "socketpair(", "connect(", "bind(", "sendto(", "sendmsg("} {
		if strings.Contains(string(calls), call) {
			t.Errorf("%s is called:\n%s", call, calls)
		}
	}
}
