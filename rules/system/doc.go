// Package system is the range of cutting systems a rep can offer: one row a
// system, read from a plain CSV file and checked line by line. Every finding
// names its line and column, says what is wrong and what would be accepted;
// a damaged row is refused alone and never takes its neighbours along.
//
// The built-in range is invented for the demo. The package sizes nothing: rules
// does, and rules/size judges whether a row's cutting figures are physically
// possible; Range.Merge puts such findings from outside in place.
//
// It imports unit, cite, metal and the standard library only. rules, assess and
// cmd may import it.
package system
