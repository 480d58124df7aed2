package cite

// metalSources are cited by the metal room.
var metalSources = []Source{}
