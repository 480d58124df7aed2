package review

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/assess/review"
	"cutbrief/rules/system"

	tea "github.com/charmbracelet/bubbletea"
)

// On a slow share each look at a file takes 2 ms, here of a clock that only such
// looks move. The screen is full of what is remembered within 100 ms, before any
// file is looked at; the one that changed then takes its place, and the title says
// how far that is.
func TestASlowShareFillsTheScreenAtOnce(t *testing.T) {
	const look, screenful, visits = 2 * time.Millisecond, 100 * time.Millisecond, 160
	dir, old := t.TempDir(), time.Now().Add(-time.Hour)
	save := func(i int, company string) {
		v, _ := casebook.DemoVisit("farm-repair")
		v.Set(assess.Answer{Question: assess.FactCompany, Said: company, State: assess.Told})
		data, err := v.Encode()
		path := filepath.Join(dir, fmt.Sprint("m", i%4), fmt.Sprintf("%03d.json", i))
		if err != nil || os.MkdirAll(filepath.Dir(path), 0o755) != nil || os.WriteFile(path, data, 0o644) != nil || os.Chtimes(path, old, old) != nil {
			t.Fatal(path, err)
		}
	}
	for i := range visits {
		save(i, fmt.Sprintf("Kept %03d", i))
	}
	later := func() time.Time { return old.Add(2 * time.Hour) }
	o := review.Options{Criteria: review.NewCriteria(system.Demo(), today), Index: filepath.Join(t.TempDir(), "x.index"), Now: later}
	if _, err := review.Read(context.Background(), dir, o, func([]*review.Row) {}); err != nil {
		t.Fatal(err)
	}
	old = old.Add(time.Minute)
	save(0, "Changed since")
	synctest.Test(t, func(t *testing.T) {
		started := time.Now()
		var d *driver
		var once sync.Once
		var seen string // at the first look
		o.Look = func() {
			once.Do(func() {
				if seen = d.View(); time.Since(started) > screenful {
					t.Errorf("the first look is after %v", time.Since(started))
				}
			})
			time.Sleep(look)
		}
		d = start(t, func(ctx context.Context, remembered bool, emit func([]*review.Row)) (review.Totals, error) {
			o.Remembered = remembered
			return review.Read(ctx, dir, o, emit)
		}, 100, 24)
		d.m.next = func() tea.Msg { return nil } // the loop below takes them
		d.Run(d.m.read(looking))
		progress := map[string]bool{}
		for len(d.m.inbox) > 0 {
			d.Send(<-d.m.inbox)
			progress[regexp.MustCompile(`\d+ of \d+ judged`).FindString(d.View())] = true
		}
		for _, text := range []string{"0 of 160 judged", "160 shown", "Kept 000", "Kept 064"} {
			if !strings.Contains(seen, text) {
				t.Errorf("%q is not on the screen at the first look:\n%s", text, seen)
			}
		}
		if len(progress) < 4 {
			t.Errorf("the title says %v", progress)
		}
		d.keys("/", "changed", "<enter>").Sees(fmt.Sprintf("%d files", visits), "1 shown", "Changed since")
	})
}
