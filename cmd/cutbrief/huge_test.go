package main

import (
	"os"
	"runtime"
	"strings"
	"testing"
)

// frugal is far more memory than refusing any file takes, and far less than
// reading one of a gigabyte.
const frugal = 48 << 20

// TestHugeFiles: every reader refuses a gigabyte, and a megabyte of nothing but
// nesting, in little memory.
func TestHugeFiles(t *testing.T) {
	t.Chdir(t.TempDir())
	f, err := os.Create("huge")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := f.Truncate(1 << 30); err != nil { // without a block on the disk
		t.Skip("no sparse files here:", err)
	}
	if err := os.WriteFile("deep", []byte(strings.Repeat("[", 1<<20)), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("visit.json", invented(t), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{"huge", "deep"} {
		for _, args := range [][]string{
			{"brief", file}, {"why", file}, {"cost", file}, {"redact", file}, {"record", file}, {"interview", "--plain", file},
			{"systems", "check", file}, {"prices", "check", file}, {"practice", "check", file}, {"practice", "--list", "--cases", file},
			{"brief", "visit.json", "--systems", file}, {"cost", "visit.json", "--prices", file}, {"words", "check", file}, {"brief", "visit.json", "--words", file}, {"review", ".", "--where", strings.Repeat("(", 1<<20)},
		} {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			status, _, said := ranWith(args...)
			runtime.ReadMemStats(&after)
			if status == exitDone || said == "" {
				t.Errorf("%.60q: status %d, says %q", args, status, said)
			}
			if taken := after.TotalAlloc - before.TotalAlloc; taken > frugal {
				t.Errorf("%.60q: %d MiB to refuse it", args, taken>>20)
			}
		}
	}
}
