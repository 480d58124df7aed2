package store

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cutbrief/assess"
)

func TestLoadRefuses(t *testing.T) {
	dir := t.TempDir()
	if _, _, err := Load(dir); err == nil || !strings.Contains(err.Error(), "folder") {
		t.Errorf("folder: %v", err)
	}
	if _, _, err := Load(filepath.Join(dir, "none.json")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("missing: %v", err)
	}
	if _, _, err := Load(os.DevNull); err == nil || !strings.Contains(err.Error(), "regular") {
		t.Errorf("device: %v", err)
	}
}

// A file far over the limit is refused by its size, without reading it: this
// one has a gigabyte and no blocks.
func TestLoadRefusesHugeFileUnread(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := f.Truncate(1 << 30); err != nil {
		t.Skip("no sparse files here:", err)
	}
	allocated := testing.Benchmark(func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, _, err := Load(path); !errors.Is(err, assess.ErrTooLarge) {
				b.Fatal(err)
			}
		}
	}).AllocedBytesPerOp()
	if allocated > 16<<10 {
		t.Errorf("%d bytes allocated to refuse a file", allocated)
	}
}

func TestLoadNamesTheFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	if err := os.WriteFile(path, []byte(`{"format":"cutbrief-visit","version":7}`), 0o600); err != nil {
		t.Fatal(err)
	}
	_, _, err := Load(path)
	if !errors.Is(err, assess.ErrNewerFormat) || !strings.Contains(err.Error(), "a.json") {
		t.Errorf("got %v", err)
	}
}
