package system

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
)

// Fingerprint returns 12 hexadecimal digits that stand for what r holds, so
// that a saved visit can say which range it was sized with. Every figure of
// every system, their order, the currency and the mark "invented" count; the
// range's name does not, nor how its file was laid out: renaming a file,
// reordering columns or writing 1/2 in for 12.7 mm changes nothing. It tells
// ranges apart; it does not prove who wrote them.
func Fingerprint(r Range) string {
	h, cols := sha256.New(), columns()
	fmt.Fprintf(h, "range 1 %q %t\n", r.Currency, r.Invented)
	for i := range r.Systems {
		s := &r.Systems[i]
		for _, c := range cols {
			if c.write != nil {
				fmt.Fprintf(h, "%s %q\n", c.name, c.write(s))
			}
		}
	}
	return hex.EncodeToString(h.Sum(nil)[:6])
}
