package interview

import (
	"runtime"
	"testing"

	"cutbrief/rules"
)

// heapAfter is what the interview holds when all garbage is gone, in bytes.
func heapAfter(d *driver) uint64 {
	var m runtime.MemStats
	for range 2 { // the second takes what finalizers let go
		runtime.GC()
	}
	runtime.ReadMemStats(&m)
	runtime.KeepAlive(d)
	return m.HeapAlloc
}

// An interview of 10,000 keys, of answers given, taken back, corrected and looked up,
// holds no more memory than one of 1,000. 512 KiB are for the answers given meanwhile
// and what the runtime gathers; that is 58 bytes a key, and so less than any view,
// answer or undone state that would be kept for each.
func TestTenThousandKeysHoldMemoryFlat(t *testing.T) {
	d := drive(t, newVisit())
	d.throughTo(rules.FactMetals)
	d.keys("1", "<enter>")
	keys := 0
	script := []string{"1", "2", " ", "m", "m", "<enter>", "<up>", "<down>", "?", "<esc>", "<ctrl+u>", "6", "<enter>", "<tab>", "<tab>", "<ctrl+l>", "<esc>"}
	until := func(n int) {
		for ; keys < n; keys++ {
			d.keys(script[keys%len(script)])
		}
	}
	until(1000)
	early := heapAfter(d)
	until(10000)
	late := heapAfter(d)
	t.Logf("%d KiB after 1,000 keys, %d KiB after 10,000; %d answers, %d saves", early>>10, late>>10, len(d.m.Visit.Answers), d.disk.saves)
	if late > early+512<<10 {
		t.Errorf("%d bytes after 1,000 keys, %d after 10,000", early, late)
	}
	if d.disk.saves < 30 {
		t.Errorf("only %d saves: the keys did not do much", d.disk.saves)
	}
}
