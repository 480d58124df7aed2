package main

import (
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// smallDisk mounts a disk of 64 KiB of its own.
func smallDisk(t *testing.T) (dir string) {
	t.Helper()
	dir = filepath.Join(t.TempDir(), "disk")
	if err := os.Mkdir(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := syscall.Mount("disk", dir, "tmpfs", 0, "size=64k"); err != nil {
		t.Skip("no disk can be mounted here:", err)
	}
	t.Cleanup(func() { syscall.Unmount(dir, syscall.MNT_DETACH) })
	return dir
}

// filled takes all the room there is.
func filled(t *testing.T, dir string) (filler string) {
	t.Helper()
	filler = filepath.Join(dir, "filler")
	f, err := os.Create(filler)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	io.Copy(f, zeros{}) // until the disk is full
	return filler
}

type zeros struct{}

func (zeros) Read(p []byte) (int, error) { return len(p), nil }

// TestDiskFull: the screen says so at once, the draft of before stays whole,
// and the next answer after there is room again saves everything.
func TestDiskFull(t *testing.T) {
	disk := smallDisk(t)
	d := interviewed(t, t.TempDir(), filepath.Join(disk, "a.json"))
	filler := filled(t, disk)
	d.Tries("1\r")
	d.Sees("NOT SAVED", "space left on device")
	keptSays(t, filepath.Join(disk, "a.json"), "mm")
	if left, _ := filepath.Glob(filepath.Join(disk, ".*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	if err := os.Remove(filler); err != nil {
		t.Fatal(err)
	}
	savedAfter(d, filepath.Join(disk, "a.json"))
}

// TestDiskReadOnly: as with a full disk, for one that is write-protected.
func TestDiskReadOnly(t *testing.T) {
	disk := smallDisk(t)
	d := interviewed(t, t.TempDir(), filepath.Join(disk, "a.json"))
	protect := func(flags uintptr) {
		if err := syscall.Mount("disk", disk, "tmpfs", syscall.MS_REMOUNT|flags, "size=64k"); err != nil {
			t.Skip("cannot be protected here:", err)
		}
	}
	protect(syscall.MS_RDONLY)
	d.Tries("1\r")
	d.Sees("NOT SAVED", "only file system", "^S where to save") // "read-" may end a line
	protect(0)
	savedAfter(d, filepath.Join(disk, "a.json"))
}

// TestDiskFullAtTheFirstAnswer: leaving then does not claim that nothing was
// answered.
func TestDiskFullAtTheFirstAnswer(t *testing.T) {
	disk := smallDisk(t)
	filled(t, disk)
	d := draw(t, t.TempDir(), "interview", "--plain", filepath.Join(disk, "a.json"))
	d.Sees("millimetres or inches")
	d.Tries("1\rquit\r")
	d.Ends()
	d.Sees("Not saved: ", "no space left", "type save in", "the last answers are not saved")
}

// TestDiskFullForAPage: a page that has no room is refused in two lines, and
// leaves neither a part of itself nor a name without a page.
func TestDiskFullForAPage(t *testing.T) {
	disk := smallDisk(t)
	t.Chdir(t.TempDir())
	if err := os.WriteFile("visit.json", shown(t), 0o600); err != nil {
		t.Fatal(err)
	}
	filled(t, disk)
	for _, args := range [][]string{{"brief", "visit.json", "--out", disk}, {"brief", "visit.json", "--out", disk, "--force"}} {
		if status, _, said := ranWith(args...); status != exitFailed || !strings.Contains(said, "no space left") || strings.Count(said, "\n") != 2 {
			t.Errorf("status %d: %s", status, said)
		}
	}
	if files, err := os.ReadDir(disk); err != nil || len(files) != 1 {
		t.Errorf("the disk holds %v, %v", files, err)
	}
}
