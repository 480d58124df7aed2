// Package rules sizes a cutting system to a customer's work: a Job goes in, a
// Result comes out, and every conclusion in it carries its rule, its inputs,
// its margin and its source. It knows no terminal, no file and no clock, and
// it refuses to take an unknown for a zero. The record of a visit and the
// report import it.
package rules

// Edition counts the rules. It is raised with every change to a rule, a factor
// or a formula that can change a result, so that a record can say which rules it
// was sized with.
const Edition = 3
