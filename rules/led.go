package rules

import "cutbrief/rules/unit"

// LedAt is the fastest the torch is led at this job in mm/min: free hand until
// the customer says otherwise, which is the safe side.
func LedAt(j *Job) unit.MillimetrePerMinute { return ledAt(j) }
