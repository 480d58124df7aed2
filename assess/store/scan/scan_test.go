package scan

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"
)

// notes is what all readers of a scan saw.
type notes struct {
	mu    sync.Mutex
	seen  map[string]string // path to content, or "!" and the reason
	known map[string]Stamp
}

type reader struct{ *notes }

func (r reader) Known(f *File) bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.known[f.Path] == f.Stamp
}

func (r reader) Take(f *File, data []byte) {
	r.mu.Lock()
	defer r.mu.Unlock()
	text := string(data)
	if f.Err != nil {
		text = "!" + f.Err.Error()
	}
	if _, twice := r.seen[f.Path]; twice {
		text = "!twice"
	}
	r.seen[f.Path] = text
	if r.known != nil {
		r.known[f.Path] = f.Stamp
	}
}

func scanned(t testing.TB, dir string, workers int) map[string]string {
	t.Helper()
	n := &notes{seen: map[string]string{}}
	if err := Run(context.Background(), dir, Options{Workers: workers, Most: 1000}, func() Reader { return reader{n} }); err != nil {
		t.Fatal(err)
	}
	return n.seen
}

func write(t testing.TB, dir, path, content string) {
	t.Helper()
	name := filepath.Join(dir, filepath.FromSlash(path))
	if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestEveryFileIsReadOnce(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		dir, err := os.MkdirTemp(t.TempDir(), "")
		if err != nil {
			t.Fatal(err)
		}
		want := map[string]string{}
		for i := range rapid.IntRange(0, 40).Draw(rt, "files") {
			path := rapid.SampledFrom([]string{"", "a/", "a/b/", "c/", "c/d/e/"}).Draw(rt, "folder") + fmt.Sprintf("%d.json", i)
			want[path] = strings.Repeat("x", rapid.IntRange(0, 1000).Draw(rt, "size"))
			write(t, dir, path, want[path])
		}
		got := scanned(t, dir, rapid.IntRange(1, 4).Draw(rt, "workers"))
		if len(got) != len(want) {
			rt.Fatalf("%d files, want %d", len(got), len(want))
		}
		for path, content := range want {
			if got[path] != content {
				rt.Fatalf("%s: %q", path, got[path])
			}
		}
	})
}

// More files in one folder than are handed on at once, or may wait.
func TestAFlatFolder(t *testing.T) {
	dir := t.TempDir()
	const n = chunk*3 + 1
	for i := range n {
		write(t, dir, fmt.Sprintf("%d.JSON", i), "x")
	}
	if got := scanned(t, dir, 2); len(got) != n {
		t.Errorf("%d files, want %d", len(got), n)
	}
}

// What cannot be read is named with its reason; what is hidden or no visit by
// its name is passed over.
func TestNothingIsHidden(t *testing.T) {
	dir := t.TempDir()
	write(t, dir, "large.json", strings.Repeat("x", 1001))
	write(t, dir, "empty.json", "")
	for _, name := range []string{".hidden.json", "notes.txt", ".a.json.saving", ".git/x.json", ".json"} {
		write(t, dir, name, "x")
	}
	write(t, dir, "in/a.json", "x")
	if err := os.Symlink("gone.json", filepath.Join(dir, "broken.json")); err != nil {
		t.Skip("no links here:", err)
	}
	if err := errors.Join(os.Symlink("in", filepath.Join(dir, "loop")), os.Symlink("in/a.json", filepath.Join(dir, "link.json"))); err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"large.json": "!cannot be read: 1001 bytes: too large for a visit", "empty.json": "", "broken.json": "!cannot be read: file does not exist",
		"loop": "!cannot be read: a link to a folder, which is not followed", "link.json": "x", "in/a.json": "x"}
	got := scanned(t, dir, 2)
	for path, text := range want {
		if got[path] != text {
			t.Errorf("%s: %q, want %q", path, got[path], text)
		}
	}
	if len(got) != len(want) {
		t.Errorf("got %v", got)
	}
}

func TestUnreadableFolderIsNamed(t *testing.T) {
	if runtime.GOOS == "windows" || os.Getuid() == 0 {
		t.Skip("modes do not bind here")
	}
	dir := t.TempDir()
	write(t, dir, "in/a.json", "x")
	if err := os.Chmod(filepath.Join(dir, "in"), 0); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(filepath.Join(dir, "in"), 0o700)
	if got := scanned(t, dir, 2); !strings.Contains(got["in"], "permission") {
		t.Errorf("got %v", got)
	}
}

func TestMissingFolder(t *testing.T) {
	err := Run(context.Background(), filepath.Join(t.TempDir(), "no"), Options{Workers: 1}, func() Reader { return reader{} })
	if !errors.Is(err, os.ErrNotExist) {
		t.Errorf("got %v", err)
	}
}

// What is known is not read again, and an edit makes it unknown.
func TestKnownFilesAreNotRead(t *testing.T) {
	dir := t.TempDir()
	for i := range 5 {
		write(t, dir, fmt.Sprintf("%d.json", i), "x")
	}
	n := &notes{seen: map[string]string{}, known: map[string]Stamp{}}
	run := func() []string {
		n.seen = map[string]string{}
		if err := Run(context.Background(), dir, Options{Workers: 2, Most: 1000, Ask: true}, func() Reader { return reader{n} }); err != nil {
			t.Fatal(err)
		}
		var list []string
		for path := range n.seen {
			list = append(list, path)
		}
		return list
	}
	if got := run(); len(got) != 5 {
		t.Errorf("first: %v", got)
	}
	write(t, dir, "3.json", "longer")
	if got := run(); !slices.Equal(got, []string{"3.json"}) {
		t.Errorf("then: %v", got)
	}
}

// stopper ends the scan at its first file.
type stopper struct {
	stop context.CancelFunc
	n    *notes
}

func (s stopper) Known(*File) bool { return false }
func (s stopper) Take(f *File, data []byte) {
	s.stop()
	reader{s.n}.Take(f, data)
}

func TestAScanCanBeStopped(t *testing.T) {
	dir := t.TempDir()
	for i := range chunk * 2 {
		write(t, dir, fmt.Sprintf("%d/%d.json", i%7, i), "x")
	}
	ctx, stop := context.WithCancel(context.Background())
	n := &notes{seen: map[string]string{}}
	if err := Run(ctx, dir, Options{Workers: 2, Most: 1000}, func() Reader { return stopper{stop, n} }); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	if len(n.seen) > 4 {
		t.Errorf("%d files were read after the end", len(n.seen))
	}
}
