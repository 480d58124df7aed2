//go:build linux || darwin

package main

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
)

// nobody is a user without rights. Source: common practice on Linux.
const nobody = 65534

// bound is a user who is bound by the modes of files: the one who runs the
// tests, or nobody where that is the superuser.
type bound struct {
	home    string
	program string
	as      *syscall.Credential // nil for the user who runs the tests
}

// plainUser makes a home for such a user, with a copy of the program in reach.
func plainUser(t *testing.T) *bound {
	t.Helper()
	if os.Getuid() != 0 {
		return &bound{home: t.TempDir(), program: "cutbrief"}
	}
	home, err := os.MkdirTemp("", "home") // those of the test are closed to others
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(home) })
	p := &bound{home: home, program: filepath.Join(home, ".bin", "cutbrief"), as: &syscall.Credential{Uid: nobody, Gid: nobody}}
	p.folder(t, ".bin")
	copyProgram(t, p.program)
	if err := os.Chown(home, nobody, nobody); err != nil {
		t.Skip("no other user here:", err)
	}
	if out, err := p.command("version").CombinedOutput(); err != nil {
		t.Skipf("the program cannot be run as another user here: %v: %s", err, out)
	}
	return p
}

// copyProgram puts the program where others reach it.
func copyProgram(t *testing.T, path string) {
	t.Helper()
	from, err := exec.LookPath("cutbrief")
	if err != nil {
		t.Fatal(err)
	}
	in, err := os.Open(from)
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	out, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE, 0o755)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := io.Copy(out, in); err != nil {
		t.Fatal(err)
	}
	if err := out.Close(); err != nil {
		t.Fatal(err)
	}
}

// folder makes a folder of the user's own.
func (p *bound) folder(t *testing.T, name string) string {
	t.Helper()
	dir := filepath.Join(p.home, name)
	if err := os.Mkdir(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	if p.as != nil {
		if err := os.Chown(dir, nobody, nobody); err != nil {
			t.Skip("no other user here:", err)
		}
	}
	t.Cleanup(func() { os.Chmod(dir, 0o700) })
	return dir
}

// command runs the program as the user.
func (p *bound) command(args ...string) *exec.Cmd {
	cmd := exec.Command(p.program, args...)
	cmd.Env = append(os.Environ(), "HOME="+p.home, "XDG_DATA_HOME="+p.home, "XDG_CONFIG_HOME="+p.home)
	if p.as != nil {
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: p.as}
	}
	return cmd
}
