package cite

// metalSources are cited by the metal room; its factors rest on the general entry
// for common practice so far.
var metalSources = []Source{}
