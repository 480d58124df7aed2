// Command cutbrief sizes a hand-held air plasma cutting system to a customer's
// work: an interview in the terminal, a recommendation with its reasons, and a
// one-page brief with a plan for the demonstration.
//
// This package is the only one that reads flags, the environment, the home
// folder and the clock, the only one that prints errors and the only one that
// picks an exit status. Each command is a row: its words, its flags, its
// arguments and a function that makes one call into a library and prints. The
// command tree, the completion scripts, the manual pages and --help are made
// from the rows. No other package may import it.
package main
