// Package rehearse runs a demonstration at the bench: large and few words, one
// step at a time, with a clock. The time of a straight cut is taken by key and
// held against the prediction at once. It works for a trainee alone and in
// front of the customer.
//
// Record asks afterwards, line by line, what was shown and what came of it.
//
// It plans nothing, sizes nothing and touches no file: it is handed the bench
// and a clock, and gives back what was measured and how each cut went.
package rehearse
