package review

import (
	"fmt"
	"testing"
)

// By hand: a row is replaced by one of the same path, and a snapshot keeps the
// old one.
func TestSetReplacesAndASnapshotStays(t *testing.T) {
	var rows Rows
	for i := range 100 {
		rows.Set(&Row{Path: fmt.Sprint(i), Stage: Glanced})
	}
	before := rows.Snapshot()
	rows.Set(&Row{Path: "7", Rep: "R", Stage: Judged}, &Row{Path: "100", Rep: "S"})
	if rows.Len() != 101 || rows.At(7).Rep != "R" || rows.At(100).Rep != "S" || rows.At(8).Stage != Glanced {
		t.Errorf("%d rows; %+v", rows.Len(), rows.At(7))
	}
	if before.Len() != 100 || before.At(7).Stage != Glanced {
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
