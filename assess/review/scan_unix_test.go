//go:build unix

package review

import (
	"path/filepath"
	"syscall"
	"testing"
)

// A pipe with no other end would be waited for without end.
func TestAPipeIsNotRead(t *testing.T) {
	dir := t.TempDir()
	if err := syscall.Mkfifo(filepath.Join(dir, "a.json"), 0o600); err != nil {
		t.Skip("no pipes here:", err)
	}
	if got := scanned(t, dir, 1); got["a.json"] != "!cannot be read: not a regular file" {
		t.Errorf("got %v", got)
	}
}
