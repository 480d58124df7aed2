package review

import (
	"context"
	"fmt"
	"path/filepath"
	"sync/atomic"
	"testing"
	"time"

	"cutbrief/rules/system"
)

// On a slow share each look at a file takes its time: what is remembered is there
// before the first look, and then one file that changed is all that is read.
func TestASlowShareShowsWhatIsRemembered(t *testing.T) {
	files := map[string]string{}
	for i := range 400 {
		files[fmt.Sprintf("%d/%d.json", i%5, i)] = encoded(t, visit(t, fmt.Sprintf("company: C %d", i)))
	}
	dir := folder(t, files)
	o := Options{Index: filepath.Join(t.TempDir(), "x.index"), Criteria: NewCriteria(system.Demo(), today), Now: later}
	read(t, dir, o)
	write(t, dir, "0/0.json", encoded(t, visit(t, "company: Changed")), time.Now().Add(-time.Hour))
	var looks atomic.Int64
	o.slow = func() { looks.Add(1) }
	var rows Rows
	take := func(batch []*Row) { rows.Set(batch...) }
	o.Remembered = true
	if _, err := Read(context.Background(), dir, o, take); err != nil || rows.Len() != len(files) {
		t.Fatal(rows.Len(), err)
	}
	if n := looks.Load(); n > 0 { // a slow share takes its time for each
		t.Errorf("%d files were looked at for what is remembered", n)
	}
	o.Remembered = false
	rows.Begin()
	totals, err := Read(context.Background(), dir, o, take)
	rows.End()
	if err != nil || totals.Known != len(files)-1 || rows.Len() != len(files) {
		t.Errorf("%+v, %d rows, %v", totals, rows.Len(), err)
	}
	changed := 0
	for r := range rows.All() {
		if r.Company == "Changed" {
			changed++
		}
	}
	if changed != 1 {
		t.Errorf("%d rows changed", changed)
	}
}
