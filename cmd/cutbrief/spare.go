package main

import (
	"context"
	"runtime/debug"

	"cutbrief/assess/review"
)

// readFolder reads a folder as review.Read does, and holds garbage short while
// rows add up. What is kept of a row holds no pointers, so that collecting more
// often costs little; left alone, garbage would take as much memory as all rows.
func readFolder(ctx context.Context, dir string, o review.Options, emit func([]*review.Row)) (review.Totals, error) {
	n := 0
	return review.Read(ctx, dir, o, func(rows []*review.Row) {
		before := n
		n += len(rows)
		for _, s := range shares {
			if before < s.rows && s.rows <= n {
				debug.SetGCPercent(s.percent)
			}
		}
		emit(rows)
	})
}

// shares say how much garbage there may be from some number of rows on, in per
// cent of what is kept. A row takes about 100 bytes: 30 % of 50,000 rows is the
// garbage of some eight visits being judged.
var shares = [...]struct{ rows, percent int }{{25000, 50}, {50000, 30}}
