package review

import (
	"fmt"
	"runtime"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules/system"
)

// By hand: a row is replaced by one of the same path, and a snapshot keeps the
// old one.
func TestSetReplacesAndASnapshotStays(t *testing.T) {
	var rows Rows
	for i := range 100 {
		rows.Set(&Row{Path: fmt.Sprint(i), Stage: Unread, Rep: "old"})
	}
	before := rows.Snapshot()
	rows.Set(&Row{Path: "7", Rep: "R", Stage: Judged}, &Row{Path: "100", Rep: "S"})
	if rows.Len() != 101 || rows.At(7).Rep != "R" || rows.At(100).Rep != "S" || rows.At(8).Rep != "old" {
		t.Errorf("%d rows; %+v", rows.Len(), rows.At(7))
	}
	if before.Len() != 100 || before.At(7).Rep != "old" {
		t.Errorf("the snapshot has %d rows; %+v", before.Len(), before.At(7))
	}
	n := 0
	for r := range rows.All() {
		if n++; r.Path == "50" {
			break
		}
	}
	if n != 51 {
		t.Errorf("went through %d rows up to the 51st", n)
	}
}

// A row of the invented visits says about 75 bytes: a path of 31, a customer of 27
// and some twenty numbers. With its place and what a block leaves empty that is
// less than 100; as a Row of its own it is over 250.
func TestRowsTakeLittleMemory(t *testing.T) {
	const n, mostBytes = 20000, 100
	var list []*Row
	criteria := NewCriteria(system.Demo(), today)
	for path, data := range casebook.ManyVisits(48, 1) {
		v, _, err := assess.Decode(data)
		if err != nil {
			continue // one in a thousand is damaged
		}
		row := criteria.Judge(path, v)
		row.Flags, row.Why, row.Unanswered = 0, "", ""
		list = append(list, &row)
	}
	var rows Rows
	before := inUse()
	for i := range n {
		row := *list[i%len(list)]
		row.Path = fmt.Sprintf("2026/11/rep-%d/visit-%06d.json", i%8, i)
		row.Company = fmt.Sprintf("%s %d", row.Company, i)
		row.Date = today.AddDate(0, 0, -i%700).Format(time.DateOnly)
		rows.Add(&row)
	}
	kept := inUse() - before
	runtime.KeepAlive(&rows)
	if each := kept / n; each > mostBytes {
		t.Errorf("a row takes %d bytes, want %d or fewer", each, mostBytes)
	}
}

// inUse is how much memory is in use once garbage is gone.
func inUse() int {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int(m.HeapAlloc)
}

// By hand: of three rows, one is set again, one is new since, two are gone.
func TestRowsThatAreGone(t *testing.T) {
	var rows Rows
	rows.Add(&Row{Path: "a"}, &Row{Path: "b"}, &Row{Path: "c"})
	rows.Begin()
	rows.Set(&Row{Path: "d"}, &Row{Path: "b", Rep: "R"})
	rows.End()
	if rows.Len() != 2 || rows.At(0).Rep != "R" || rows.Path(1) != "d" {
		t.Errorf("%d rows: %+v", rows.Len(), rows.At(0))
	}
	if rows.Set(&Row{Path: "d", Rep: "S"}); rows.Len() != 2 || rows.At(1).Rep != "S" {
		t.Errorf("%d rows: %+v", rows.Len(), rows.At(1))
	}
}
