//go:build unix

package review

import (
	"syscall"
	"time"
)

// processorTime is what the program has taken of the processor.
func processorTime() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
