package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"cutbrief/assess"
	"cutbrief/assess/review"
	screen "cutbrief/assess/screen/review"
	"cutbrief/assess/store"
	"cutbrief/report"
)

// reviewOnScreen shows the folder on a full screen.
func (a *app) reviewOnScreen(ctx context.Context, job reviewJob, o reviewOptions) error {
	offered, err := a.offered()
	if err != nil {
		return err
	}
	if _, err := os.ReadDir(job.dir); err != nil {
		return fail(fmt.Errorf("read %s: %w", job.dir, reason(err)), "%s", folderHint(err))
	}
	bench := review.NewBench(offered, a.now())
	a.leaves.Store(true)
	err = screen.Run(ctx, screen.Options{
		Dir: job.dir, Range: offered, Today: a.now(), Where: o.where, Sort: o.sort, Input: a.in, Output: a.out,
		Read: func(ctx context.Context, glance bool, emit func([]*review.Row)) (review.Totals, error) {
			how := a.reading(job.dir, bench)
			how.Unjudged = glance
			return readFolder(ctx, job.dir, how, emit)
		},
		Load: func(path string) (*assess.Visit, []byte, error) { return loadBelow(job.dir, path) },
		Measured: func(ctx context.Context, filter string) (string, error) {
			return a.measuredText(ctx, job, offered, filter)
		},
		Teller: teller{a, job, offered.Invented},
		Page: func(path string, v *assess.Visit) (string, error) {
			data, err := render(pdfFormat, []report.Brief{report.Build(v, offered, report.Options{})}, "a4")
			if err != nil {
				return "", err
			}
			return writeFree(nameAfter(filepath.Base(path), pdfFormat), data)
		},
	})
	if err != nil {
		return fail(fmt.Errorf("draw the review: %w", err), "try cutbrief review --format table")
	}
	return nil
}

// loadBelow reads a visit below a folder, and its bytes even where they are no
// visit.
func loadBelow(dir, path string) (*assess.Visit, []byte, error) {
	name := filepath.Join(dir, filepath.FromSlash(path))
	v, _, err := store.Load(name)
	info, statErr := os.Stat(name)
	if statErr != nil || !info.Mode().IsRegular() || info.Size() > assess.MaxSize {
		return v, nil, err
	}
	raw, readErr := os.ReadFile(name)
	if readErr != nil {
		return v, nil, err
	}
	return v, raw, err
}
