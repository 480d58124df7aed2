package main

import (
	"context"
	"fmt"
	"strings"

	"cutbrief/assess/screen/interview"
	"cutbrief/rules/message"
)

// hold runs the interview in the way that fits, then says goodbye. Leaving,
// by a key or by a signal, ends it well.
func (a *app) hold(ctx context.Context, s *sitting, plainly bool) error {
	a.leaves.Store(true)
	if plainly {
		return a.holdPlain(ctx, s)
	}
	end, err := interview.Run(ctx, interview.Options{
		Visit: s.visit, Range: s.offered, Prices: s.prices, Path: s.keptAt(), Suggest: a.suggest(s.folder, true),
		Saver: s, Pager: s, Words: s.words, Input: a.in, Output: a.out,
	})
	if err != nil {
		return fail(fmt.Errorf("draw the interview: %w", err), "try cutbrief interview --plain")
	}
	return a.part(s, end.Open, end.Unkept, end.Unsaved)
}

// part says goodbye, and what could not be kept.
func (a *app) part(s *sitting, open int, unkept []string, unsaved error) error {
	text := ""
	if path := s.keptAt(); path != "" || unsaved == nil {
		where, on := farewell(s.words, path, open)
		text = where + on
	}
	if s.beside != "" {
		text += s.words.Say("Another program changed "+message.Keep(tidy(s.beside))+" meanwhile. Both are kept: compare them.") + "\n"
	}
	if len(unkept) > 0 {
		text += s.words.Say("Typed but not understood, and so not kept: "+message.Keep(tidy(strings.Join(unkept, "; ")))) + "\n"
	}
	if err := put(a.out, []byte(text)); err != nil || unsaved == nil {
		return err
	}
	return fail(fmt.Errorf("the last answers are not saved: %w", unsaved), "free the file or its folder, then answer them again")
}
