package review_test

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
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

// records is how many files are read; recordsVariable says another number, such as
// 100000.
const (
	usualRecords    = 10000
	recordsVariable = "CUTBRIEF_RECORDS"
)

func records(b *testing.B) int {
	said, set := os.LookupEnv(recordsVariable)
	if !set {
		return usualRecords
	}
	n, err := strconv.Atoi(said)
	if err != nil || n < 1 {
		b.Fatalf("%s=%q is no number of files", recordsVariable, said)
	}
	return n
}

// tree writes invented visits.
func tree(b *testing.B) string {
	b.Helper()
	dir := b.TempDir()
	for path, data := range sample.Many(records(b), 1) {
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
// says, with nothing kept; the same with the index, and with the timed cuts beside
// it; and a list with the rules run on each visit, which fills the index. Beside
// the time it tells how much memory the rows take, and how soon the first came.
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
	b.Run("list", func(b *testing.B) { list(b, dir, review.Options{Unjudged: true}) })
	b.Run("judge", func(b *testing.B) { list(b, dir, review.Options{Index: index}) })
	b.Run("list-with-index", func(b *testing.B) { list(b, dir, review.Options{Index: index}) })
	b.Run("measured-with-index", func(b *testing.B) { list(b, dir, review.Options{Index: index, Timings: &review.Timings{}}) })
}

// list reads the folder into packed rows.
func list(b *testing.B, dir string, o review.Options) {
	o.Bench = review.NewBench(system.Demo(), time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	o.Workers, o.Program = 2, "benchmark"
	o.Now = func() time.Time { return time.Now().Add(time.Hour) }
	n := records(b)
	var first, kept float64
	read := func() *review.Rows {
		rows, began := &review.Rows{}, time.Now()
		totals, err := review.Read(context.Background(), dir, o, func(list []*review.Row) {
			if rows.Len() == 0 {
				first = float64(time.Since(began).Microseconds()) / 1000
			}
			rows.Add(list...)
		})
		if err != nil || rows.Len() != n || totals.Files != n {
			b.Fatal(rows.Len(), totals, err)
		}
		return rows
	}
	filled := strings.HasSuffix(b.Name(), "with-index")
	if filled {
		read()
	}
	b.ReportAllocs()
	for b.Loop() {
		b.StopTimer()
		if !filled && o.Index != "" {
			_ = os.Remove(o.Index) // it may not be there
		}
		if o.Timings != nil {
			o.Timings = &review.Timings{}
		}
		before := held()
		b.StartTimer()
		rows := read()
		b.StopTimer()
		kept = held() - before
		runtime.KeepAlive(rows)
		runtime.KeepAlive(o.Timings)
		b.StartTimer()
	}
	b.ReportMetric(first, "ms-to-first-rows")
	b.ReportMetric(kept/float64(n), "B-kept/row")
}

// held is how much memory is in use once garbage is gone, in bytes.
func held() float64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return float64(m.HeapAlloc)
}

// BenchmarkArrange sorts and groups as many rows as the list shows.
func BenchmarkArrange(b *testing.B) {
	var rows review.Rows
	n := records(b)
	for i := range n {
		rows.Add(&review.Row{Path: fmt.Sprintf("2026/%02d/visit-%06d.json", i%12, i), Company: fmt.Sprintf("Company %d", i*7919%n), Rep: fmt.Sprint("Rep ", i%8),
			Date: fmt.Sprintf("2026-%02d-%02d", 1+i%12, 1+i%28), Stage: review.Judged})
	}
	all := func(*review.Row) bool { return true }
	for name, by := range map[string]string{"date": "-date", "company": "company", "rep-and-date": "rep,-date"} {
		order, err := review.ParseOrder(by)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				review.Arrange(&rows, all, order, nil)
			}
		})
	}
	b.Run("together", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			rows.Snapshot().Together()
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

// nothing takes files and does nothing with them.
type nothing struct{}

func (nothing) Known(*scan.File) bool   { return true }
func (nothing) Take(*scan.File, []byte) {}
