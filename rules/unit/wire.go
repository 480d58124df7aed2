package unit

import (
	"math"
	"strconv"
	"strings"
)

// The American wire gauge numbers read as conductor sizes: 4/0 to 30.
const (
	thickestWire = -3
	thinnestWire = 30
)

// AWG returns the copper section of a conductor of American wire gauge n:
// A = π/4·d² with d from astm-b258. 1/0 is n = 0, 4/0 is n = −3. Sizes outside
// 4/0 to 30 are not known. Check: AWG 10 is 5.26 mm².
func AWG(n int) (SquareMillimetre, bool) {
	if n < thickestWire || n > thinnestWire {
		return 0, false
	}
	d := wireDiameter(n)
	return SquareMillimetre(math.Pi / 4 * d * d), true
}

// wireNumber reads "10", "1/0" and "4/0".
func wireNumber(s string) (int, bool) {
	if zeros, ok := strings.CutSuffix(s, "/0"); ok {
		n, ok := natural(zeros)
		return 1 - n, ok && n >= 1 && n <= 4
	}
	return natural(s)
}

// wireName writes a gauge number as the trade does.
func wireName(n int) string {
	if n <= 0 {
		return "AWG " + strconv.Itoa(1-n) + "/0"
	}
	return "AWG " + strconv.Itoa(n)
}
