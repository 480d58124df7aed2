//go:build linux || darwin

package main

import (
	"bytes"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/assess/store"
)

// writing is a program that puts a file in place and is killed at it.
type writing struct {
	args  []string
	typed string
	home  string
	file  string
	reset func()             // what every third round begins with
	whole func(t *testing.T) // fails if what is there is neither the old nor the new
}

func (w *writing) command() *exec.Cmd {
	cmd := exec.Command("cutbrief", w.args...)
	cmd.Stdin = strings.NewReader(w.typed)
	cmd.Env = append(os.Environ(), "HOME="+w.home, "XDG_DATA_HOME="+w.home, "XDG_CONFIG_HOME="+w.home, "XDG_CACHE_HOME="+w.home)
	return cmd
}

// half reports whether the file is being written, or was left at it.
func (w *writing) half() bool {
	_, err := os.Lstat(filepath.Join(filepath.Dir(w.file), "."+filepath.Base(w.file)+".cutbrief"))
	return err == nil
}

// killed runs the program and kills it: as soon as its half is there, or after some
// time. It reports whether a half was left.
func (w *writing) killed(t *testing.T, after time.Duration) bool {
	t.Helper()
	cmd := w.command()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	over := make(chan struct{})
	go func() {
		cmd.Wait()
		close(over)
	}()
	for began := time.Now(); time.Since(began) < after && !w.half(); {
		select {
		case <-over: // it was faster
			return false
		default:
		}
	}
	cmd.Process.Kill()
	<-over
	return w.half()
}

// again runs the program once more, undisturbed; then the file is there, and
// nothing else is in the folder.
func (w *writing) again(t *testing.T) {
	t.Helper()
	if out, err := w.command().CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	if files, err := os.ReadDir(filepath.Dir(w.file)); err != nil || len(files) != 1 || files[0].Name() != filepath.Base(w.file) {
		t.Errorf("the folder holds %v, %v", files, err)
	}
}

// pagePrinted makes a page, also over one that is there. It is all there, or not at all.
func pagePrinted(t *testing.T, home string) *writing {
	visit := filepath.Join(t.TempDir(), "visit.json")
	put(t, visit, shown(t))
	w := &writing{args: []string{"brief", visit, "--out", home, "--force"}, file: filepath.Join(home, "visit.pdf")}
	var want []byte
	w.reset = func() { os.Remove(w.file) }
	w.whole = func(t *testing.T) {
		got, err := os.ReadFile(w.file)
		if want == nil {
			want = got
		}
		if err == nil && !bytes.Equal(got, want) {
			t.Errorf("a page of %d bytes is left, want %d", len(got), len(want))
		}
	}
	return w
}

// recorded notes a demonstration in a visit, which keeps what it held.
func recorded(t *testing.T, home string) *writing {
	w := &writing{args: []string{"record", filepath.Join(home, "visit.json"), "--date", "2026-12-01"}, file: filepath.Join(home, "visit.json")}
	w.typed = "good\nnew tip\n\n12\nfair\nits edge\n\n\n\n\n\n\nFine.\nDear\nsaves gas\n\nquote\nthe owner decides\nsend it\nJo\n2026-12-08\n"
	w.reset = func() { put(t, w.file, shown(t)) }
	w.whole = func(t *testing.T) {
		v, _, err := store.Load(w.file)
		if err != nil || saidOf(v, assess.FactCompany) == "" {
			t.Errorf("the visit: %v", err)
		}
	}
	w.reset()
	return w
}

// practised keeps the progress: what was there and at most one practice more.
func practised(t *testing.T, home string) *writing {
	w := &writing{args: []string{"practice", "--case", "bench-top", "--seed", "7"}, file: filepath.Join(home, "cutbrief", "practice.json")}
	w.typed = "ask\nmild steel\nnext\nask\nagain\n6 mm\nnext\ndone\n5\ndemo-45\neveryday-straight, own-piece\nquit\n"
	before := 0
	w.reset = func() { os.Remove(w.file); before = 0 }
	w.whole = func(t *testing.T) {
		p, err := casebook.LoadProgress(w.file)
		if n := len(p.Practices); err != nil || n < before || n > before+2 { // the last whole run, and the killed one
			t.Errorf("%d practices after %d: %v", n, before, err)
		}
		before = len(p.Practices)
	}
	return w
}

func put(t *testing.T, path string, data []byte) {
	t.Helper()
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
}

// TestKilledWriting kills the program while it puts a file in place: at random
// moments, and every second time as soon as it has begun to write. What is there is
// whole, be it the old or the new, and the next run leaves nothing else in the folder.
func TestKilledWriting(t *testing.T) {
	for name, begin := range map[string]func(*testing.T, string) *writing{"page": pagePrinted, "record": recorded, "practice": practised} {
		t.Run(name, func(t *testing.T) {
			home := t.TempDir()
			w := begin(t, home)
			w.home = home
			began := time.Now()
			w.again(t)
			usual := time.Since(began)
			w.whole(t)
			rounds, seed := kills()
			chance := rand.New(rand.NewPCG(seed, 1))
			inside := 0
			for n := range rounds {
				if n%3 == 0 {
					w.reset()
				}
				after := time.Minute // until the half is there
				if n%2 == 0 {
					after = time.Duration(chance.Int64N(int64(usual)))
				}
				if w.killed(t, after) {
					inside++
				}
				w.whole(t)
				w.again(t)
			}
			t.Logf("%d rounds: killed inside the writing in %d; seed %d", rounds, inside, seed)
			if rounds >= usualKills && inside == 0 {
				t.Error("no round was killed inside the writing")
			}
		})
	}
}

// TestKilledPrintingIsSwept: what is left of a page goes with the next page of
// any other visit, and with the next new visit.
func TestKilledPrintingIsSwept(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	half := filepath.Join(dir, ".other.pdf.cutbrief")
	if err := os.WriteFile("visit.json", shown(t), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"brief", "visit.json", "--force"}, {"followup", "visit.json", "--out", "letter.txt"}, {"sample"}, {"redact", "visit.json", "--out", "case.json"}} {
		if err := os.WriteFile(half, []byte("%PDF"), 0o600); err != nil {
			t.Fatal(err)
		}
		if status, _, said := ranWith(args...); status != exitDone {
			t.Errorf("%q: %s", args, said)
		}
		if _, err := os.Lstat(half); err == nil {
			t.Errorf("%q does not sweep the folder", args)
		}
	}
}
