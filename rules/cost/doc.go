// Package cost works out what a metre of cut costs today and what it would
// cost with a system, as ranges: labour, gas, electricity, air, consumables,
// blades, rental, work sent out. It says what a saving rests on, when a system
// pays for itself, and above which thickness oxy-fuel is cheaper. It refuses to
// compute what a process cannot do, and says so in a plain sentence; it formats
// nothing. The report and commands import it.
//
// How ranges are worked out: every uncertain input has a low, a likely and a
// high figure. The likely result takes the likely figure of each. Then one
// input at a time goes to its low and its high end, and the effects on either
// side are added as the root of the sum of their squares, as for inputs that do
// not depend on each other (gum, 5.1.2, from memory). The range is what is to
// be expected, not the worst that could be: that everything goes wrong at once
// lies outside. The test of samples says how often.
package cost
