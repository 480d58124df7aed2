package main

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/store"
)

// TestDiskFails lets one system call of a save fail as a bad disk, a full quota or a
// share without locks would make it: the visit of before stays whole, what was told
// is saved or said not to be, with its cause. A program of Go asks the kernel itself,
// so no library in between can be told to fail; the tracer can.
func TestDiskFails(t *testing.T) {
	tracer, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("not installed: strace")
	}
	if out, err := exec.Command(tracer, "-f", "-e", "inject=fsync:error=EIO", "true").CombinedOutput(); err != nil {
		t.Skipf("no call can be made to fail here: %v: %s", err, out)
	}
	for _, c := range []struct{ inject, says string }{
		{"fsync:error=EIO", "input/output error"}, {"fsync:error=EDQUOT", "quota exceeded"}, {"renameat,rename,renameat2:error=EIO", "input/output error"},
		{"flock:error=ENOLCK", ""},
	} {
		dir := t.TempDir()
		file := filepath.Join(dir, "visit.json")
		v := assess.New("before", time.Date(2026, 3, 12, 14, 30, 0, 0, time.UTC))
		a, _, err := v.Read(v.Steps()[0], "Alder Vale")
		if err != nil {
			t.Fatal(err)
		}
		v.Set(a)
		before, err := v.Encode()
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, before, 0o600); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command(tracer, "-f", "-o", filepath.Join(dir, "calls"), "-e", "inject="+c.inject, "cutbrief", "interview", "--plain", "visit.json")
		cmd.Dir = dir
		cmd.Env = append(os.Environ(), "HOME="+dir, "XDG_DATA_HOME="+dir, "XDG_CONFIG_HOME="+dir, "XDG_CACHE_HOME="+dir)
		cmd.Stdin = strings.NewReader("2026-04-01\nquit\n")
		out, ended := cmd.CombinedOutput()
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatalf("%s: the visit is gone: %v\n%s", c.inject, err, out)
		}
		if _, _, err := assess.Decode(data); err != nil || !strings.Contains(string(data), "Alder Vale") {
			t.Errorf("%s: the visit of before is damaged: %v\n%s", c.inject, err, data)
		}
		saved := strings.Contains(string(data), "2026-04-01")
		switch {
		case c.says == "" && !saved:
			t.Errorf("%s: nothing was saved: %v\n%s", c.inject, ended, out)
		case !saved && (ended == nil || !strings.Contains(string(out), c.says)):
			t.Errorf("%s: %q is not said: %v\n%s", c.inject, c.says, ended, out)
		}
	}
}

// TestTwoMachinesOnAShare: the share honours no locks, and another machine saves the
// draft in the middle of an interview. Both are kept, and the one that comes second
// says where its own is.
func TestTwoMachinesOnAShare(t *testing.T) {
	tracer, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("not installed: strace")
	}
	dir := t.TempDir()
	file := filepath.Join(dir, "visit.json")
	cmd := exec.Command(tracer, "-f", "-o", filepath.Join(dir, "calls"), "-e", "inject=flock:error=ENOLCK", "cutbrief", "interview", "--plain", "visit.json")
	cmd.Env = append(os.Environ(), "HOME="+dir, "XDG_DATA_HOME="+dir, "XDG_CONFIG_HOME="+dir)
	d := drawAs(t, dir, cmd)
	d.Sees("millimetres or inches")
	d.Tries("1\r")
	d.Until(func(string) bool { _, err := os.Stat(file); return err == nil })
	v, _, err := store.Load(file)
	if err != nil {
		t.Skip("no call can be made to fail here: ", d.Written())
	}
	v.Set(assess.Answer{Question: assess.FactCompany, Said: "The other machine", State: assess.Told})
	if err := store.Save(file, v, time.Now()); err != nil {
		t.Fatal(err)
	}
	d.Tries("not known\r")
	d.Sees("repair work")
	d.Tries("quit\r")
	d.Ends()
	d.Wrote("Both are kept")
	if v, _, err := store.Load(file); err != nil || saidOf(v, assess.FactCompany) != "The other machine" {
		t.Errorf("the other machine's: %v", err)
	}
	others, _ := filepath.Glob(filepath.Join(dir, "20*.json"))
	if len(others) != 1 {
		t.Fatalf("%d drafts beside: %s", len(others), d.Written())
	}
	if v, _, err := store.Load(others[0]); err != nil || len(v.Answers) != 2 {
		t.Errorf("ours: %v", err)
	}
}

// TestStrangersInAFolder: a loop of links, a pipe, a device, names of 255
// bytes and names in two forms of Unicode lie among visits; every visit is listed,
// and every stranger named or passed over, but nothing waits and nothing is lost.
func TestStrangersInAFolder(t *testing.T) {
	dir := t.TempDir()
	visits := []string{"a.json", strings.Repeat("n", 250) + ".json", "caf\u00e9.json", "cafe\u0301.json", "A.json"}
	for _, name := range visits {
		if err := os.WriteFile(filepath.Join(dir, name), shown(t), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, err := range []error{
		os.Symlink("loop.json", filepath.Join(dir, "loop.json")), os.Symlink("..", filepath.Join(dir, "up")), os.Symlink("gone", filepath.Join(dir, "gone.json")),
		syscall.Mkfifo(filepath.Join(dir, "pipe.json"), 0o600), os.Mkdir(filepath.Join(dir, "folder.json"), 0o700),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	strangers := []string{"loop.json", "gone.json", "pipe.json"}
	if err := syscall.Mknod(filepath.Join(dir, "zero.json"), syscall.S_IFCHR|0o600, 1<<8|5); err == nil { // /dev/zero, which has no end
		strangers = append(strangers, "zero.json")
	} else {
		t.Log("no device can be made here, so there is none among the files: ", err)
	}
	if err := os.Symlink("/dev/zero", filepath.Join(dir, "linked.json")); err != nil {
		t.Fatal(err)
	}
	strangers = append(strangers, "linked.json")
	for _, name := range strangers[2:] { // no command waits for what has no end
		for _, args := range [][]string{{"brief", name, "--format", "text"}, {"verify", name, name}, {"interview", "--plain", name}, {"record", name}, {"redact", name}} {
			late, end := context.WithTimeout(t.Context(), 20*time.Second)
			cmd := exec.CommandContext(late, "cutbrief", args...)
			cmd.Dir = dir
			out, err := cmd.CombinedOutput()
			if end(); err == nil || !strings.Contains(string(out), "regular file") && !strings.Contains(string(out), "it is not a page") {
				t.Errorf("%q: %v: %s", args, err, out)
			}
		}
	}
	cmd := exec.Command("cutbrief", "review", ".", "--format", "csv")
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "HOME="+dir, "XDG_CACHE_HOME="+filepath.Join(dir, "cache"))
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	listed := "\n" + string(out)
	for _, name := range append([]string{"a.json", visits[1], "A.json"}, strangers...) {
		if !strings.Contains(listed, ","+name+"\r\n") {
			t.Errorf("%s is hidden:\n%s", name, out)
		}
	}
	if strings.Count(listed, ",caf") != 2 { // shown alike, and both there
		t.Errorf("one of two names in two forms is hidden:\n%s", out)
	}
}
