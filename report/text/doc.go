// Package text lays a brief out as plain text for a terminal or a mail, and as
// Markdown. It leaves nothing of the brief out, words nothing and writes no
// escape byte. Commands and screens import it.
package text
