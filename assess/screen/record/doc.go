// Package record asks after a demonstration, line by line, what was shown and
// what came of it, and stores it in the visit. It works in a terminal, in a
// pipe, and after the rehearsal. It sizes nothing and touches no file: it is
// handed a Saver.
package record
