// Package plain is the interview as plain lines: each question is printed, each
// answer is a line. It is for screen readers, for pipes and for terminals that
// can do no more; it writes no control sequences and links no terminal library.
// Questions, their order and their texts are those of the full-screen
// interview.
package plain
