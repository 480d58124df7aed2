package warehouse

import "embed"

// queries are the documented queries.
//
//go:embed *.sql
var queries embed.FS
