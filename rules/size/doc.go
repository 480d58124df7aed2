// Package size holds one function per formula: what a system can cut and how
// fast, how long it may cut, what it draws from the supply and the compressor,
// and what it does to the metal. Every function says its formula, units, valid
// range, source and a check value; outside its range it returns an error and
// never extrapolates. It reads no job and gives no verdict: rules does.
//
// Thickness handed to a function together with a system is the mild-steel
// equivalent, unless its comment says otherwise.
package size
