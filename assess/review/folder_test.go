package review

import (
	"context"
	"fmt"
	"path/filepath"
	"testing"
	"testing/synctest"
	"time"

	"cutbrief/rules/system"
)

// On a slow share each look at a file takes 2 ms, here of a clock that only such
// looks move: what is remembered is there before the first look, and then one file
// that changed is all that is read, while rows come some at a time.
func TestASlowShareShowsWhatIsRemembered(t *testing.T) {
	const look, screenful = 2 * time.Millisecond, 100 * time.Millisecond
	files := map[string]string{}
	for i := range 400 {
		files[fmt.Sprintf("%d/%d.json", i%5, i)] = encoded(t, visit(t, fmt.Sprintf("company: C %d", i)))
	}
	dir := folder(t, files)
	o := Options{Index: filepath.Join(t.TempDir(), "x.index"), Criteria: NewCriteria(system.Demo(), today), Now: later}
	read(t, dir, o)
	write(t, dir, "0/0.json", encoded(t, visit(t, "company: Changed")), time.Now().Add(-time.Hour))
	synctest.Test(t, func(t *testing.T) {
		started := time.Now()
		o.Look = func() { time.Sleep(look) }
		var rows Rows
		came := map[time.Duration]bool{} // when rows did
		take := func(batch []*Row) { rows.Set(batch...); came[time.Since(started)] = true }
		o.Remembered = true
		if _, err := Read(context.Background(), dir, o, take); err != nil || rows.Len() != len(files) {
			t.Fatal(rows.Len(), err)
		}
		if after := time.Since(started); after > screenful {
			t.Errorf("what is remembered is there after %v", after)
		}
		o.Remembered = false
		rows.Begin()
		clear(came)
		totals, err := Read(context.Background(), dir, o, take)
		rows.End()
		if err != nil || totals.Known != len(files)-1 || rows.Len() != len(files) {
			t.Errorf("%+v, %d rows, %v", totals, rows.Len(), err)
		}
		if after := time.Since(started); len(came) < 3 || after > time.Duration(len(files))*look/2 {
			t.Errorf("rows came %d times, all after %v", len(came), after)
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
	})
}
