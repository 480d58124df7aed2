package review_test

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/review"
	"cutbrief/assess/sample"
	"cutbrief/assess/store/scan"
	"cutbrief/rules/system"
)

const records = 10000

// tree writes invented visits.
func tree(b *testing.B) string {
	b.Helper()
	dir := b.TempDir()
	for path, data := range sample.Many(records, 1) {
		name := filepath.Join(dir, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
			b.Fatal(err)
		}
		if err := os.WriteFile(name, data, 0o600); err != nil {
			b.Fatal(err)
		}
	}
	return dir
}

// BenchmarkFolder compares, over the same files in one run: reading them plainly,
// which is the measure; only reading them as the scan does; a list of what each
// says, with nothing kept; the same with the index; and a list with the rules run
// on each visit, which fills the index.
func BenchmarkFolder(b *testing.B) {
	dir := tree(b)
	index := filepath.Join(b.TempDir(), "x.index")
	b.Run("plain-read", func(b *testing.B) {
		for b.Loop() {
			plainRead(b, dir)
		}
	})
	b.Run("scan-read", func(b *testing.B) {
		for b.Loop() {
			err := scan.Run(context.Background(), dir, scan.Options{Workers: 2, Most: assess.MaxSize}, func() scan.Reader { return nothing{} })
			if err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("list", func(b *testing.B) { list(b, dir, review.Options{Glance: true}) })
	b.Run("judge", func(b *testing.B) { list(b, dir, review.Options{}) })
	list(b, dir, review.Options{Index: index}) // fills it
	b.Run("list-with-index", func(b *testing.B) { list(b, dir, review.Options{Index: index}) })
}

func list(b *testing.B, dir string, o review.Options) {
	o.Bench = review.NewBench(system.Demo(), time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	o.Workers, o.Program = 2, "benchmark"
	o.Now = func() time.Time { return time.Now().Add(time.Hour) }
	read := func() {
		n := 0
		totals, err := review.Read(context.Background(), dir, o, func(rows []*review.Row) { n += len(rows) })
		if err != nil || n != records || totals.Files != records {
			b.Fatal(n, totals, err)
		}
	}
	if b.Name() == "BenchmarkFolder" {
		read()
		return
	}
	b.ReportAllocs()
	for b.Loop() {
		read()
	}
}

// plainRead is the baseline: a walk, and two workers who read whole files.
func plainRead(b *testing.B, dir string) {
	paths := make(chan string, 256)
	var wg sync.WaitGroup
	for range 2 {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for path := range paths {
				if _, err := os.ReadFile(path); err != nil {
					b.Error(err)
				}
			}
		}()
	}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(path, ".json") {
			paths <- path
		}
		return err
	})
	close(paths)
	wg.Wait()
	if err != nil {
		b.Fatal(err)
	}
}

// nothing takes files and does nothing with them.
type nothing struct{}

func (nothing) Known(*scan.File) bool   { return true }
func (nothing) Take(*scan.File, []byte) {}
