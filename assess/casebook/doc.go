// Package casebook holds what is invented: six demo visits, very many made of them
// for measuring, and practice for a new rep: customers with a hidden
// situation and a way of speaking, what asking them costs in minutes, and an
// honest mark at the end. The hidden facts are the answers of an ordinary visit,
// so the real rules are the judge: the right answer is what they conclude from
// the facts, and a miss costs what they conclude without it. Screens import it;
// it draws nothing and reads no clock.
//
// Every customer, firm, person and figure in it is invented for the demo. What
// an action costs in minutes, and what a customer's patience is, is common
// practice, no source.
package casebook
