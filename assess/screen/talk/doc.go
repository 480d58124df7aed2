// Package talk is the practice as lines: each line the trainee types is an act,
// a note or a decision, and comes back as lines of text. It is for screen
// readers, for pipes and for terminals that can do no more; the full screen
// draws the same talk. It writes no control sequences and links no terminal
// library.
package talk
