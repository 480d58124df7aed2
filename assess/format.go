package assess

import (
	"errors"
	"fmt"
)

// The saved format and its limits. The limits are far above any honest visit;
// they keep a damaged or hostile file from costing more than a moment.
const (
	formatName    = "cutbrief-visit"
	formatVersion = 2

	// MaxSize is the largest file that is read or written, in bytes.
	MaxSize = 1 << 20

	maxDepth   = 32
	maxAnswers = 1000
	maxChosen  = 50
)

// Errors of Decode and Encode that a caller may want to tell apart.
var (
	ErrNewerFormat = errors.New("newer format")
	ErrForeign     = errors.New("not a visit")
	ErrTooLarge    = errors.New("too large for a visit")
	ErrTooMany     = fmt.Errorf("a record of demonstrations holds at most %d of each: days, cuts, objections", maxShown)
)
