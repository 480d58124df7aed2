// Package practice is the practice on a full screen: the question on top, what
// the customer said below it, a line for the note at the foot, and beside them
// the time and what the notes mean so far. What a key or a line does is decided
// in assess/screen/talk, so that both ways of practising are one.
package practice
