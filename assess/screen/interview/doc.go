// Package interview is the full-screen interview: one question at a time, with
// what the answers already mean beside it, a list of all questions to jump
// about in, and the result at the end. The program decides the order of the
// questions (assess); the screen shows one form for each and stores what it is
// given. Every accepted answer is saved at once, and leaving by any way saves.
//
// It sizes nothing and touches no file: it is handed a Saver and a Pager.
package interview
