package scan_test

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/sample"
	"cutbrief/assess/store/scan"
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

// BenchmarkScan compares, over the same files in one run: reading them plainly,
// reading them as the scan does, and reading and looking at each.
func BenchmarkScan(b *testing.B) {
	dir := tree(b)
	b.Run("plain-read", func(b *testing.B) {
		for b.Loop() {
			plainRead(b, dir)
		}
	})
	b.Run("scan-read", func(b *testing.B) {
		for b.Loop() {
			run(b, dir, false, func() scan.Reader { return nothing{} })
		}
	})
	b.Run("scan-look", func(b *testing.B) {
		for b.Loop() {
			run(b, dir, false, func() scan.Reader { return &looker{} })
		}
	})
	b.Run("scan-stamp", func(b *testing.B) {
		for b.Loop() {
			run(b, dir, true, func() scan.Reader { return nothing{} })
		}
	})
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

func run(b *testing.B, dir string, ask bool, reader func() scan.Reader) {
	if err := scan.Run(context.Background(), dir, scan.Options{Workers: 2, Most: assess.MaxSize, Ask: ask}, reader); err != nil {
		b.Fatal(err)
	}
}

type nothing struct{}

func (nothing) Known(*scan.File) bool   { return true }
func (nothing) Take(*scan.File, []byte) {}

type looker struct{ glance assess.Glance }

func (*looker) Known(*scan.File) bool { return false }

func (l *looker) Take(f *scan.File, data []byte) { _ = l.glance.Look(data) }
