package review

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules"
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

// tree writes invented visits, old enough for the index, some or all of them with
// answers of their own.
func tree(b *testing.B, distinct bool) string {
	b.Helper()
	dir, i := b.TempDir(), 0
	for path, data := range casebook.ManyVisits(records(b), 1) {
		if v, _, err := assess.Decode(data); distinct && err == nil {
			i++
			alone(b, v, i)
			if data, err = v.Encode(); err != nil {
				b.Fatal(err)
			}
		}
		write(b, dir, path, string(data), time.Now().Add(-time.Hour))
	}
	return dir
}

// alone makes the answers of a visit such that no other has the same: each has
// another breaker, hose and altitude.
func alone(b *testing.B, v *assess.Visit, i int) {
	for fact, said := range map[rules.Fact]string{rules.FactBreaker: fmt.Sprintf("%d A", 10+i%60), rules.FactHoseLength: fmt.Sprintf("%d.%d m", 3+i/60%20, i/1200%10), rules.FactAltitude: fmt.Sprintf("%d m", i/12000*10)} {
		q, _ := assess.Find(fact)
		a, _, err := v.Read(assess.Step{Question: q}, said)
		if err != nil {
			b.Fatal(err)
		}
		v.Set(a)
	}
}

// BenchmarkFolder holds what a review does to what the disk takes: every row has
// beside it, from the same run and turn by turn, the floor – os.Open, Read and
// Close of every file by two workers – and how many times as long it took. Both
// are the least of all turns.
//
//	decode       every visit decoded, no rule run
//	first        every visit judged, nothing kept before
//	distinct     the same, where no two visits have the same answers
//	index        nothing changed since
//	one-changed  one file did
//	remembered   what the index holds, no file looked at
//	measured     index, with the timed cuts
func BenchmarkFolder(b *testing.B) {
	dir := tree(b, false)
	index := filepath.Join(b.TempDir(), "x.index")
	paths := walked(b, dir)
	fill := func() { readAll(b, dir, Options{Index: index}) }
	b.Run("decode", func(b *testing.B) { against(b, paths, nil, func() { decodeAll(b, dir) }) })
	b.Run("first", func(b *testing.B) { against(b, paths, nil, func() { readAll(b, dir, Options{}) }) })
	b.Run("index", func(b *testing.B) { fill(); against(b, paths, nil, fill) })
	b.Run("one-changed", func(b *testing.B) {
		fill()
		turn := 0
		against(b, paths, func() {
			turn++
			at := time.Now().Add(-time.Hour + time.Duration(turn)*time.Second)
			if err := os.Chtimes(paths[0], at, at); err != nil {
				b.Fatal(err)
			}
		}, fill)
	})
	b.Run("remembered", func(b *testing.B) {
		fill()
		against(b, paths, nil, func() { readAll(b, dir, Options{Index: index, Remembered: true}) })
	})
	b.Run("measured", func(b *testing.B) {
		fill()
		against(b, paths, nil, func() { readAll(b, dir, Options{Index: index, Timings: &Timings{}}) })
	})
	b.Run("distinct", func(b *testing.B) {
		dir := tree(b, true)
		against(b, walked(b, dir), nil, func() { readAll(b, dir, Options{}) })
	})
}

// against times something and the floor, turn by turn, by the clock and by the time
// of the processor, which says more on a busy machine.
func against(b *testing.B, paths []string, before, do func()) {
	floor, least := newWatch(), newWatch()
	for b.Loop() {
		b.StopTimer()
		if before != nil {
			before()
		}
		floor.time(func() { plainRead(b, paths) })
		runtime.GC()
		b.StartTimer()
		least.time(do)
	}
	b.ReportMetric(floor.clock.Seconds()*1000, "floor-ms")
	b.ReportMetric(least.clock.Seconds()*1000, "ms")
	b.ReportMetric(float64(least.clock)/float64(floor.clock), "x-floor")
	b.ReportMetric(float64(least.processor)/float64(floor.processor), "x-floor-cpu")
	b.ReportMetric(float64(least.processor.Microseconds())/float64(len(paths)), "cpu-us/file")
	b.ReportMetric(0, "ns/op")
}

// watch keeps the least of all times.
type watch struct{ clock, processor time.Duration }

func newWatch() watch { return watch{1 << 62, 1 << 62} }

func (w *watch) time(do func()) {
	began, spent := time.Now(), processorTime()
	do()
	w.clock, w.processor = min(w.clock, time.Since(began)), min(w.processor, processorTime()-spent)
}

// plainRead is the floor.
func plainRead(b *testing.B, paths []string) {
	var wg sync.WaitGroup
	for part := range slices.Chunk(paths, (len(paths)+1)/2) {
		wg.Go(func() {
			buf := make([]byte, assess.MaxSize)
			for _, path := range part {
				f, err := os.Open(path)
				if err != nil {
					b.Error(err)
					return
				}
				_, _ = f.Read(buf) // some are empty
				f.Close()
			}
		})
	}
	wg.Wait()
}

// walked lists the files below a folder in the order of a walk.
func walked(b *testing.B, dir string) (paths []string) {
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(path, ".json") {
			paths = append(paths, path)
		}
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
	return paths
}

// decoding decodes every file and does nothing with it.
type decoding struct{ v *assess.Visit }

func (decoding) known(*file) bool            { return false }
func (d decoding) read(_ *file, data []byte) { _ = assess.DecodeInto(d.v, data) } // a few are damaged

func decodeAll(b *testing.B, dir string) {
	var takers []taker
	for range fewestWorkers {
		takers = append(takers, decoding{&assess.Visit{}})
	}
	if err := (&scanner{root: dir, most: assess.MaxSize}).run(context.Background(), takers); err != nil {
		b.Fatal(err)
	}
}

// readAll reads the folder into packed rows.
func readAll(b *testing.B, dir string, o Options) {
	o.Criteria, o.Program = NewCriteria(system.Demo(), today), "benchmark"
	o.Now = later
	rows := &Rows{}
	totals, err := Read(context.Background(), dir, o, func(list []*Row) { rows.Add(list...) })
	if n := records(b); err != nil || rows.Len() != n || totals.Files != n {
		b.Fatal(rows.Len(), totals, err)
	}
}

// BenchmarkJudge judges visits of which no two have the same answers.
func BenchmarkJudge(b *testing.B) {
	var visits []*assess.Visit
	for _, data := range casebook.ManyVisits(2*mostKnown, 1) {
		if v, _, err := assess.Decode(data); err == nil {
			alone(b, v, len(visits))
			visits = append(visits, v)
		}
	}
	c, room, i := NewCriteria(system.Demo(), today), room{}, 0
	b.ReportAllocs()
	before := processorTime()
	for b.Loop() {
		c.judge("a.json", visits[i%len(visits)], &room)
		i++
	}
	b.ReportMetric(float64((processorTime()-before).Nanoseconds())/1000/float64(i), "cpu-us/visit")
}

// BenchmarkArrange sorts and groups as many rows as the list shows.
func BenchmarkArrange(b *testing.B) {
	var rows Rows
	n := records(b)
	for i := range n {
		rows.Add(&Row{Path: fmt.Sprintf("2026/%02d/visit-%06d.json", i%12, i), Company: fmt.Sprintf("Company %d", i*7919%n), Rep: fmt.Sprint("Rep ", i%8),
			Date: fmt.Sprintf("2026-%02d-%02d", 1+i%12, 1+i%28), Stage: Judged})
	}
	all := func(*Row) bool { return true }
	for name, by := range map[string]string{"date": "-date", "company": "company", "rep-and-date": "rep,-date"} {
		order, err := ParseOrder(by)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Arrange(&rows, all, order, nil)
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
