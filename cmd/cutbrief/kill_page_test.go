//go:build linux || darwin

package main

import (
	"bytes"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// printing is one folder of pages that a program is killed in.
type printing struct {
	visit, dir string
	want       []byte // the whole page
}

func (p *printing) page() string { return filepath.Join(p.dir, "visit.pdf") }
func (p *printing) half() string { return filepath.Join(p.dir, ".visit.pdf.cutbrief") }

// command makes the page, also over one that is there.
func (p *printing) command() *exec.Cmd {
	return exec.Command("cutbrief", "brief", p.visit, "--out", p.dir, "--force")
}

// killed makes the page and kills the program: as soon as its half is there, or
// after some time. It reports whether a half was left.
func (p *printing) killed(t *testing.T, after time.Duration) bool {
	t.Helper()
	cmd := p.command()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	over := make(chan struct{})
	go func() {
		cmd.Wait()
		close(over)
	}()
	for began := time.Now(); time.Since(began) < after; {
		select {
		case <-over: // it was faster
			return false
		default:
		}
		if _, err := os.Lstat(p.half()); err == nil {
			break
		}
	}
	cmd.Process.Kill()
	<-over
	_, err := os.Lstat(p.half())
	return err == nil
}

// whole fails if there is a page that is not all there.
func (p *printing) whole(t *testing.T) {
	t.Helper()
	if got, err := os.ReadFile(p.page()); err == nil && !bytes.Equal(got, p.want) {
		t.Errorf("a page of %d bytes is left, want %d", len(got), len(p.want))
	}
}

// again makes the page once more, undisturbed; then it is there, and nothing
// else is in the folder.
func (p *printing) again(t *testing.T) {
	t.Helper()
	if out, err := p.command().CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	if files, err := os.ReadDir(p.dir); err != nil || len(files) != 1 || files[0].Name() != "visit.pdf" {
		t.Errorf("the folder holds %v, %v", files, err)
	}
}

// TestKilledPrinting kills the program while it writes a page: at random
// moments, and every second time as soon as it has begun to write. A page that
// is there is whole, be it the old one or the new, and the next run leaves
// nothing else in the folder.
func TestKilledPrinting(t *testing.T) {
	p := &printing{visit: filepath.Join(t.TempDir(), "visit.json"), dir: t.TempDir()}
	if err := os.WriteFile(p.visit, shown(t), 0o600); err != nil {
		t.Fatal(err)
	}
	began := time.Now()
	p.again(t)
	usual := time.Since(began)
	p.want, _ = os.ReadFile(p.page())
	rounds, seed := kills()
	chance := rand.New(rand.NewPCG(seed, 1))
	inside := 0
	for n := range rounds {
		if n%3 == 0 {
			os.Remove(p.page())
		}
		after := time.Minute // until the half is there
		if n%2 == 0 {
			after = time.Duration(chance.Int64N(int64(usual)))
		}
		if p.killed(t, after) {
			inside++
		}
		p.whole(t)
		p.again(t)
	}
	t.Logf("%d rounds: killed inside the writing of a page in %d; seed %d", rounds, inside, seed)
	if rounds >= usualKills && inside == 0 {
		t.Error("no round was killed inside the writing of a page")
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
