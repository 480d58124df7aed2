package main

import (
	"context"
	"fmt"
	"io"

	"cutbrief/assess/screen/plain"
)

// holdPlain asks line by line. An interrupt ends the input, which leaves the
// interview like its end.
func (a *app) holdPlain(ctx context.Context, s *sitting) error {
	end, err := plain.Run(untilDone{ctx, a.in}, a.out, plain.Options{
		Visit: s.visit, Range: s.offered, Prices: s.prices, Path: s.keptAt(), Suggest: a.suggest(s.folder, isTerminal(a.in)), Saver: s, Pager: s, Words: s.words,
	})
	if err != nil {
		return fail(fmt.Errorf("read the answers: %w", err), "what was answered is kept; go on with cutbrief interview %s", shellWord(s.keptAt()))
	}
	if end.InputEnd && end.Unsaved == nil {
		_, on := farewell(s.words, end.Path, end.Open)
		return put(a.out, []byte(on)) // the rest was said when the input ended
	}
	// The prompt is still open where the answers come from a pipe.
	if err := put(a.out, []byte("\n")); err != nil {
		return err
	}
	return a.part(s, end.Open, nil, end.Unsaved)
}

// untilDone is a reader that ends when its context does, even while the reader
// below it waits for a person.
type untilDone struct {
	ctx context.Context
	in  io.Reader
}

type reading struct {
	data []byte
	err  error
}

func (u untilDone) Read(p []byte) (int, error) {
	got := make(chan reading, 1)
	go func() {
		own := make([]byte, len(p)) // p is the caller's again once we return
		n, err := u.in.Read(own)
		got <- reading{own[:n], err}
	}()
	select {
	case r := <-got:
		return copy(p, r.data), r.err
	case <-u.ctx.Done():
		return 0, io.EOF
	}
}
