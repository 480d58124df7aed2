package review

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
	"time"

	"pgregory.net/rapid"
)

// notes is what all readers of a scan saw.
type notes struct {
	mu     sync.Mutex
	seen   map[string]string // path to content, or "!" and the reason
	states map[string]stamp
}

type lister struct{ *notes }

func (r lister) known(f *file) bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.states[f.path] == f.stamp
}

func (r lister) read(f *file, data []byte) {
	r.mu.Lock()
	defer r.mu.Unlock()
	text := string(data)
	if f.err != nil {
		text = "!" + f.err.Error()
	}
	if _, twice := r.seen[f.path]; twice {
		text = "!twice"
	}
	r.seen[f.path] = text
	if r.states != nil {
		r.states[f.path] = f.stamp
	}
}

func scanned(t testing.TB, dir string, workers int) map[string]string {
	t.Helper()
	n := &notes{seen: map[string]string{}}
	if err := (&scanner{root: dir, most: 1000}).run(context.Background(), slices.Repeat([]taker{lister{n}}, workers)); err != nil {
		t.Fatal(err)
	}
	return n.seen
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
			write(t, dir, path, want[path], time.Now())
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
		write(t, dir, fmt.Sprintf("%d.JSON", i), "x", time.Now())
	}
	if got := scanned(t, dir, 2); len(got) != n {
		t.Errorf("%d files, want %d", len(got), n)
	}
}

// What cannot be read is named with its reason; what is hidden or no visit by
// its name is passed over.
func TestNothingIsHidden(t *testing.T) {
	dir := t.TempDir()
	write(t, dir, "large.json", strings.Repeat("x", 1001), time.Now())
	write(t, dir, "empty.json", "", time.Now())
	for _, name := range []string{".hidden.json", "notes.txt", ".a.json.saving", ".git/x.json", ".json"} {
		write(t, dir, name, "x", time.Now())
	}
	write(t, dir, "in/a.json", "x", time.Now())
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
	write(t, dir, "in/a.json", "x", time.Now())
	if err := os.Chmod(filepath.Join(dir, "in"), 0); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(filepath.Join(dir, "in"), 0o700)
	if got := scanned(t, dir, 2); !strings.Contains(got["in"], "permission") {
		t.Errorf("got %v", got)
	}
}

func TestMissingFolder(t *testing.T) {
	err := (&scanner{root: filepath.Join(t.TempDir(), "no")}).run(context.Background(), []taker{lister{}})
	if !errors.Is(err, os.ErrNotExist) {
		t.Errorf("got %v", err)
	}
}

// What is known is not read again, and an edit makes it unknown.
func TestKnownFilesAreNotRead(t *testing.T) {
	dir := t.TempDir()
	for i := range 5 {
		write(t, dir, fmt.Sprintf("%d.json", i), "x", time.Now())
	}
	n := &notes{seen: map[string]string{}, states: map[string]stamp{}}
	run := func() []string {
		n.seen = map[string]string{}
		if err := (&scanner{root: dir, most: 1000, ask: true}).run(context.Background(), []taker{lister{n}, lister{n}}); err != nil {
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
	write(t, dir, "3.json", "longer", time.Now())
	if got := run(); !slices.Equal(got, []string{"3.json"}) {
		t.Errorf("then: %v", got)
	}
}

// stopper ends the scan at its first file.
type stopper struct {
	stop context.CancelFunc
	n    *notes
}

func (s stopper) known(*file) bool { return false }
func (s stopper) read(f *file, data []byte) {
	s.stop()
	lister{s.n}.read(f, data)
}

func TestAScanCanBeStopped(t *testing.T) {
	dir := t.TempDir()
	for i := range chunk * 2 {
		write(t, dir, fmt.Sprintf("%d/%d.json", i%7, i), "x", time.Now())
	}
	ctx, stop := context.WithCancel(context.Background())
	n := &notes{seen: map[string]string{}}
	if err := (&scanner{root: dir, most: 1000}).run(ctx, []taker{stopper{stop, n}, stopper{stop, n}}); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	if len(n.seen) > 4 {
		t.Errorf("%d files were read after the end", len(n.seen))
	}
}
