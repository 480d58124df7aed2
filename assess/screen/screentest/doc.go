// Package screentest drives the screens in tests, and is for tests only: no code of
// the program may import it. Driver sends keys to a model alone; Terminal runs a
// whole program in a terminal of its own.
package screentest
